// Keeps what is typed into any field with data-kept="name" in this browser's storage at every key, before the server has
// heard of it; a reload or a new connection loses nothing.
(() => {
  const key = (name) => `menulab.kept.${name}`;

  // Storage may be switched off or full; typing must go on all the same.
  const attempt = (action) => {
    try {
      return action();
    } catch {
      return null;
    }
  };

  const keep = (name, text) => attempt(() => localStorage.setItem(key(name), text));

  document.addEventListener('input', (e) => {
    const name = e.target.dataset?.kept;
    if (name) {
      keep(name, e.target.value);
    }
  });

  window.keptText = {
    read: (name) => attempt(() => localStorage.getItem(key(name))),
    keep,
    // After a pause without connection the server has not seen the last keys: tell it again.
    tellAgain: () => document.querySelectorAll('[data-kept]').forEach((field) => field.dispatchEvent(new Event('input', { bubbles: true }))),
  };
})();
