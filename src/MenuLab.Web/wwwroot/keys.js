// A key pressed outside a field presses what carries it in data-key, or puts the cursor there if it is a field.
addEventListener('keydown', (e) => {
  const typing = e.target.closest?.('textarea, select, [contenteditable], input:not([type=radio], [type=checkbox])');
  if (e.ctrlKey || e.metaKey || e.altKey || typing) {
    return;
  }
  const target = [...document.querySelectorAll('[data-key]')].find((t) => t.dataset.key === e.key.toLowerCase());
  if (target) {
    e.preventDefault();
    target.matches('input, textarea') ? target.focus() : target.click();
  }
});
