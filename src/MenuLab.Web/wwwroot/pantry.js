// The pantry's keys: / goes to the search field, arrows walk the rows, Enter opens one (it is a link). In the browser, since a
// walk through the rows must not wait for the server; by delegation, since the list comes and goes.
(() => {
  const rows = () => [...document.querySelectorAll('[data-list] [data-row]')];

  document.addEventListener('keydown', (e) => {
    const find = document.getElementById('find');
    if (!find || e.ctrlKey || e.metaKey || e.altKey) {
      return;
    }
    const writes = e.target.closest('input, textarea, select, [contenteditable]');
    if (e.key === '/' && !writes) {
      e.preventDefault();
      find.focus();
      find.select();
      return;
    }
    if ((e.key !== 'ArrowDown' && e.key !== 'ArrowUp') || (writes && e.target !== find)) {
      return;
    }
    const all = rows();
    const at = all.indexOf(e.target);
    const step = e.key === 'ArrowDown' ? 1 : -1;
    const next = at < 0 ? (step > 0 && e.target === find ? 0 : -1) : at + step;
    if (at >= 0 && next < 0) {
      e.preventDefault();
      find.focus();
    } else if (all[next]) {
      e.preventDefault();
      all[next].focus();
      all[next].scrollIntoView({ block: 'nearest' });
    }
  });
})();
