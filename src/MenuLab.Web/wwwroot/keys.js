// The keyboard. An element with data-keys="ctrl+s" is pressed (or, if it is a field, entered) by those keys; single letters
// count only outside fields. In a typed line Enter hands the line over and the arrows and Tab choose among what is offered.
(() => {
  const inField = (e) => e.target.closest('input:not([type=checkbox]):not([type=radio]), textarea, select') !== null;

  // A person who talks to the machine, or whose hand shakes, may switch single letters off (WCAG 2.1.4); kept in this browser.
  const lettersAre = () => {
    try {
      return localStorage.getItem('menulab.letters') !== 'off';
    } catch {
      return true;
    }
  };

  const combo = (e) =>
    [e.ctrlKey || e.metaKey ? 'ctrl+' : '', e.altKey ? 'alt+' : '', e.shiftKey && e.key.length > 1 ? 'shift+' : '', e.key.toLowerCase()].join('');

  const offered = (field) => [...(field.closest('.entry')?.querySelectorAll('[role=option]') ?? [])];

  const choose = (field, step) => {
    const options = offered(field);
    const now = options.findIndex((o) => o.getAttribute('aria-selected') === 'true');
    const next = now < 0 && step < 0 ? options.length - 1 : now + step;
    options.forEach((o, i) => o.setAttribute('aria-selected', i === next ? 'true' : 'false'));
    field.setAttribute('aria-activedescendant', options[next]?.id ?? '');
  };

  // Takes the first of what is offered for the text as it now stands; a list that is late is waited for, 25 ms at a time.
  const takeFirst = (field, attempts) => {
    if (offered(field)[0]?.parentElement.dataset.for === field.value) {
      offered(field)[0].click();
    } else if (attempts > 0) {
      setTimeout(takeFirst, 25, field, attempts - 1);
    }
  };

  const inTypedLine = (e, field) => {
    const options = offered(field);
    const chosen = options.find((o) => o.getAttribute('aria-selected') === 'true');
    if (e.key === 'Enter' && !e.shiftKey && !e.isComposing) {
      e.preventDefault();
      chosen ? chosen.click() : keptText.enter(field);
    } else if (options.length && (e.key === 'ArrowDown' || e.key === 'ArrowUp')) {
      e.preventDefault();
      choose(field, e.key === 'ArrowDown' ? 1 : -1);
    } else if (options.length && e.key === 'Tab' && !e.shiftKey) {
      e.preventDefault();
      chosen ? chosen.click() : takeFirst(field, 20);
    } else {
      return false;
    }
    return true;
  };

  // Up and down walk through the cells of a column.
  const walk = (e) => {
    const cells = [...document.querySelectorAll('.lines input.cell')];
    const next = cells[cells.indexOf(e.target) + (e.key === 'ArrowDown' ? 1 : -1)];
    if (next) {
      e.preventDefault();
      next.focus();
      next.select();
    }
  };

  document.addEventListener('keydown', (e) => {
    const field = e.target.closest?.('[data-entry]');
    if (field && inTypedLine(e, field)) {
      return;
    }
    if (e.target.matches?.('.lines input.cell') && !e.altKey && (e.key === 'ArrowDown' || e.key === 'ArrowUp')) {
      walk(e);
      return;
    }
    const pressed = combo(e);
    const typing = inField(e);
    // In a field Ctrl+Z is the field's own, as long as there is something in it.
    if (pressed.length === 1 && !lettersAre()) {
      return;
    }
    if (typing && (pressed.length === 1 || (pressed === 'ctrl+z' && e.target.value) || pressed === '?')) {
      return;
    }
    const target = [...document.querySelectorAll('[data-keys]')].find((t) => t.dataset.keys.split(' ').includes(pressed) && t.offsetParent !== null && !t.disabled);
    if (!target) {
      return;
    }
    e.preventDefault();
    if (target.matches('input, textarea, select')) {
      target.focus();
      target.select?.();
    } else {
      // What is being typed into a cell counts before what the key does.
      if (typing && pressed.startsWith('ctrl+')) {
        e.target.dispatchEvent(new Event('change', { bubbles: true }));
      }
      target.click();
    }
  });

  window.keys = {
    lettersAre,
    setLetters: (on) => {
      try {
        localStorage.setItem('menulab.letters', on ? 'on' : 'off');
      } catch {
        // A browser that keeps nothing keeps the letters on.
      }
    },
    focus: (selector) => {
      const field = document.querySelector(selector);
      field?.focus();
      field?.select?.();
    },
  };
})();
