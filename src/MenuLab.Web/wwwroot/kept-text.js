// Keeps what is typed into any field with data-kept="name" in this browser's storage at every key, before the server has
// heard of it; a reload or a new connection loses nothing. A field with data-entry="draft" is a typed line: Enter hands it
// over under an id of its own, and it waits here until the server has answered for that id.
(() => {
  const key = (name) => `menulab.kept.${name}`;
  const waitingKey = (draft) => `menulab.waiting.${draft}`;

  // Storage may be switched off or full; typing must go on all the same.
  const attempt = (action) => {
    try {
      return action();
    } catch {
      return null;
    }
  };

  const keep = (name, text) => attempt(() => (text ? localStorage.setItem(key(name), text) : localStorage.removeItem(key(name))));

  const waiting = (draft) => attempt(() => JSON.parse(localStorage.getItem(waitingKey(draft)) ?? '[]')) ?? [];
  const setWaiting = (draft, list) =>
    attempt(() => (list.length ? localStorage.setItem(waitingKey(draft), JSON.stringify(list)) : localStorage.removeItem(waitingKey(draft))));

  // While nobody listens an amount of something goes into the outbox of this device, which needs no open page to arrive;
  // what may be a method, a glass or a whole recipe waits for the page, which reads it in its place.
  const isOneLine = (text) => /^\s*[\d¼½¾⅓⅔⅛⅜⅝⅞.,][^\n]*$/.test(text);
  const isAlone = () => document.getElementById('components-reconnect-modal')?.hidden === false;

  const showWaiting = () => {
    const said = document.getElementById('waiting-says');
    const field = document.querySelector('[data-entry]');
    const count = outbox.waiting() + (field ? waiting(field.dataset.entry).length : 0);
    if (said) {
      said.textContent = count ? ` ${count} ${count === 1 ? 'line waits' : 'lines wait'}.` : '';
    }
  };
  document.addEventListener('outbox', showWaiting);

  const hand = (field, entry) => field.dispatchEvent(new CustomEvent('entered', { bubbles: true, detail: entry }));

  const enter = (field) => {
    const draft = field.dataset.entry;
    const entry = { id: outbox.newId(), text: field.value };
    if (!entry.text.trim()) {
      return;
    }
    field.value = '';
    keep(field.dataset.kept, '');
    if (isAlone() && isOneLine(entry.text)) {
      outbox.put({ kind: 'line', draft, line: entry.id, text: entry.text.trim() }, entry.text.trim());
      return;
    }
    setWaiting(draft, [...waiting(draft), entry]);
    hand(field, entry);
    showWaiting();
  };

  document.addEventListener('input', (e) => {
    const name = e.target.dataset?.kept;
    if (name) {
      keep(name, e.target.value);
    }
  });

  Blazor.registerCustomEventType('entered', { createEventArgs: (e) => e.detail });

  window.keptText = {
    read: (name) => attempt(() => localStorage.getItem(key(name))),
    keep,
    enter,
    // The typed line is completed: the whole text is put in, and typing goes on at its end.
    fill: (name, text) => {
      keep(name, text);
      const field = document.querySelector(`[data-kept="${name}"]`);
      if (field) {
        field.value = text;
        field.focus();
        field.setSelectionRange(text.length, text.length);
      }
    },
    drop: (name) => keep(name, ''),
    // What was typed into fields whose names begin so and never answered for.
    left: (prefix) =>
      attempt(() =>
        Object.keys(localStorage)
          .filter((k) => k.startsWith(key(prefix)))
          .map((k) => ({ name: k.slice(key('').length), text: localStorage.getItem(k) }))) ?? [],
    waiting,
    arrived: (draft, id) => setWaiting(draft, waiting(draft).filter((entry) => entry.id !== id)),
    // After a pause without connection the server has not seen the last keys and lines: tell it again. A line that it did
    // see changes nothing, since its id is known.
    tellAgain: () => {
      document.querySelectorAll('[data-kept]').forEach((field) => field.dispatchEvent(new Event('input', { bubbles: true })));
      document.querySelectorAll('[data-entry]').forEach((field) => waiting(field.dataset.entry).forEach((entry) => hand(field, entry)));
    },
  };
})();
