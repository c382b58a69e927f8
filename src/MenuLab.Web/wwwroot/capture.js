// "Note it down": what is entered here goes into the outbox of this device (outbox.js). A half-typed field is kept as well,
// key by key, and stands there again after a reload.
(() => {
  const page = document.getElementById('capture');

  const time = (iso) => new Date(iso).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit', hour12: false });
  const element = (tag, classes, text) => {
    const made = document.createElement(tag);
    made.className = classes;
    made.textContent = text ?? '';
    return made;
  };

  // The band and the list are on every page for devices.
  const states = { kept: 'kept here', saved: 'saved', met: 'saved, and met another', refused: 'not taken' };

  const showBand = () => {
    const band = document.getElementById('net');
    if (!band) {
      return;
    }
    const waiting = outbox.waiting();
    band.dataset.state = waiting ? 'kept' : 'saved';
    document.getElementById('net-says').textContent =
      !waiting ? 'Everything is saved.'
      : !outbox.isKept() ? `${waiting} not saved, and this browser keeps nothing: stay on this page until they are.`
      : `Kept here, ${waiting} ${waiting === 1 ? 'waits' : 'wait'} for the network. They go by themselves, in this order, once.`;
  };

  const showLog = () => {
    const list = document.getElementById('log');
    const rows = outbox.log();
    if (!list || !rows.length) {
      return;
    }
    list.replaceChildren(...rows.slice(0, 40).map((row) => {
      const item = element('li', row.state);
      item.dataset.testid = 'logged';
      item.append(element('span', 'kept-mark'), element('span', 'grow', row.words));
      item.append(element('span', 'muted', `${states[row.state]} ${time(row.state === 'kept' ? row.at : row.saved ?? row.at)}`));
      if (row.problems?.length) {
        item.append(element('span', 'wrong', row.problems.map((p) => p.message).join(' ')));
      }
      return item;
    }));
  };

  // Both values are kept; a person says which one stands.
  const showMet = () => {
    const place = document.getElementById('met');
    if (!place) {
      return;
    }
    place.replaceChildren(...outbox.log().filter((row) => row.state === 'met').map((row) => {
      const met = row.met?.[0] ?? {};
      const box = element('section', 'two');
      box.dataset.testid = 'met';
      const who = document.querySelector(`#holder option[value="${met.by}"]`)?.textContent ?? 'Somebody';
      const theirs = met.their_text || met.theirs;
      const mine = met.mine ?? row.words;
      box.append(element('p', '', `${who} set this too${theirs === undefined ? '' : `: ${theirs}`}. You have ${mine}. Both are kept; yours stands now.`));
      const buttons = element('div', 'thr');
      const answer = (label, action) => {
        const button = element('button', 'btn', label);
        button.type = 'button';
        button.addEventListener('click', () => {
          action();
          outbox.put({ kind: 'answer', to: row.id }, `looked at: ${row.words}`);
          outbox.settle(row.id);
        });
        buttons.append(button);
      };
      // A figure can be set back from here; a text is set right on the bench.
      if (row.what?.kind === 'pour_cell') {
        answer(`Use their ${met.theirs ?? 'empty'}`, () => outbox.put({ ...row.what, amount: met.theirs, seen: row.what.amount }, `${row.words}, set back to theirs`));
      } else if (row.what?.kind === 'reading' && met.theirs !== undefined) {
        answer(`Use their ${met.theirs}`, () => outbox.put({ ...row.what, value: met.theirs, seen: row.id }, `${row.words}, set back to theirs`));
      }
      answer('Keep mine', () => {});
      box.append(buttons);
      return box;
    }));
  };

  document.addEventListener('outbox', () => {
    showBand();
    showLog();
    showMet();
  });

  if (!page) {
    return;
  }

  const forms = [...page.querySelectorAll('.entry-form')];
  const kinds = [...page.querySelectorAll('.kinds .kind')];

  const pressed = (form, attribute) => form.querySelector(`:scope [data-${attribute}][aria-pressed=true]:not([hidden] *)`)?.dataset[attribute];

  const choose = (kind) => {
    kinds.forEach((k) => k.setAttribute('aria-pressed', k.dataset.kind === kind ? 'true' : 'false'));
    forms.forEach((f) => (f.hidden = f.dataset.of !== kind));
    outbox.keepText('kind', kind);
  };

  const showRound = () => {
    const form = page.querySelector('[data-of=pour_cell]');
    const chosen = form.elements.round?.value;
    form.querySelectorAll('.of-round').forEach((set) => {
      set.hidden = set.dataset.round !== chosen;
      set.disabled = set.hidden;
    });
    const line = form.querySelector('.of-round:not([hidden]) [name=line]');
    form.querySelector('[data-unit-of]').textContent = line?.selectedOptions[0] ? ` ${line.selectedOptions[0].dataset.unit}` : '';
  };

  const ingredient = (form) => {
    const name = form.elements.of.value.trim();
    const found = [...document.querySelectorAll('#ingredients option')].find((o) => o.value.toLowerCase() === name.toLowerCase());
    return { name: found?.value ?? name, id: found?.dataset.id };
  };

  const amount = (form, field, mayBeEmpty) => {
    const typed = form.elements[field].value;
    return mayBeEmpty && !typed.trim() ? { value: undefined } : outbox.number(typed);
  };

  const named = (form) => {
    const what = ingredient(form);
    return what.id ? what : { problem: what.name ? `The pantry has no “${what.name}”: choose one of its names, or add it on the bench first.` : 'Say what.' };
  };

  // What each form comes to: an entry and its words, or a problem.
  const readForm = {
    line: (form) => {
      const text = form.elements.text.value.trim();
      return !text ? { problem: 'Type a line first.' }
        : !form.elements.draft.value ? { problem: 'No draft is in the works: start one on the bench.' }
        : { what: { kind: 'line', draft: form.elements.draft.value, line: outbox.newId(), text }, words: `${text}, in ${form.elements.draft.selectedOptions[0].textContent}` };
    },
    pour_cell: (form) => {
      const read = amount(form, 'amount');
      const set = form.querySelector('.of-round:not([hidden])');
      const line = set?.querySelector('[name=line]');
      const letter = pressed(set ?? form, 'letter');
      const seen = outbox.text(`seen.${form.elements.round.value}.${letter}.${line?.value}`);
      return read.problem ? read : {
        what: { kind: 'pour_cell', round: form.elements.round.value, letter, line: line.value, field: 'poured', amount: read.value, seen: seen === '' ? undefined : seen },
        words: `${letter.toUpperCase()}: poured ${read.value} ${line.selectedOptions[0].dataset.unit} ${line.selectedOptions[0].textContent}`,
      };
    },
    reading: (form) => {
      const read = amount(form, 'value');
      const what = ingredient(form);
      const button = form.querySelector('[data-what][aria-pressed=true]');
      return read.problem ? read : !what.name ? { problem: 'Say what was read.' } : {
        what: { kind: 'reading', ingredient: what.id, thing: what.id ? '' : what.name, what: button.dataset.what, value: read.value, unit: button.dataset.unit, day: page.dataset.day },
        words: `${button.textContent} ${read.value} ${what.name}`,
      };
    },
    batch_made: (form) => {
      const [what, read] = [named(form), amount(form, 'amount')];
      return what.problem ? what : read.problem ? read : {
        what: { kind: 'batch_made', prep: what.id, batch: outbox.newId(), amount: read.value, unit: pressed(form, 'unit'), day: page.dataset.day },
        words: `${read.value} ${form.querySelector('[data-unit][aria-pressed=true]').textContent} made, ${what.name}`,
      };
    },
    poured_away: (form) => {
      const [what, read] = [named(form), amount(form, 'amount', true)];
      return what.problem ? what : read.problem ? read : {
        what: { kind: 'poured_away', ingredient: what.id, amount: read.value, unit: pressed(form, 'unit'), why: form.elements.why.value.trim() },
        words: `poured away ${read.value === undefined ? 'all' : `${read.value} ${form.querySelector('[data-unit][aria-pressed=true]').textContent}`} ${what.name}`,
      };
    },
    out_of_stock: (form) => {
      const what = named(form);
      return what.problem ? what : { what: { kind: 'out_of_stock', ingredient: what.id, site: page.dataset.site }, words: `out of stock: ${what.name}` };
    },
  };

  const half = (field) => `${field.closest('form').dataset.of}.${field.name}`;

  page.addEventListener('input', (e) => {
    if (e.target.dataset.half !== undefined) {
      outbox.keepText(half(e.target), e.target.value);
    }
  });

  page.addEventListener('change', (e) => {
    if (e.target.id === 'holder') {
      outbox.setPerson(e.target.value);
    } else if (e.target.name === 'round' || e.target.name === 'line') {
      showRound();
    }
  });

  page.addEventListener('click', (e) => {
    const button = e.target.closest('button.kind');
    if (!button) {
      return;
    }
    if (button.dataset.kind) {
      choose(button.dataset.kind);
      return;
    }
    button.parentElement.querySelectorAll('.kind').forEach((k) => k.setAttribute('aria-pressed', k === button ? 'true' : 'false'));
    const unit = button.closest('form').querySelector('[data-unit-of]');
    if (button.dataset.what && unit) {
      unit.textContent = button.dataset.unit;
    }
  });

  page.addEventListener('submit', (e) => {
    const form = e.target;
    e.preventDefault();
    const read = readForm[form.dataset.of](form);
    const told = form.querySelector('.wrong');
    told.textContent = read.problem ?? '';
    told.hidden = !read.problem;
    if (read.problem) {
      return;
    }
    outbox.put(read.what, read.words);
    if (read.what.kind === 'pour_cell') {
      outbox.keepText(`seen.${read.what.round}.${read.what.letter}.${read.what.line}`, read.what.amount);
    }
    form.querySelectorAll('[data-half]').forEach((field) => {
      field.value = '';
      outbox.keepText(half(field), '');
    });
    form.querySelector('[data-half]')?.focus();
  });

  document.addEventListener('DOMContentLoaded', () => {
    page.querySelectorAll('[data-half]').forEach((field) => (field.value = outbox.text(half(field))));
    const holder = document.getElementById('holder');
    holder.value = outbox.person();
    choose(outbox.text('kind') || 'line');
    showRound();
  });
})();
