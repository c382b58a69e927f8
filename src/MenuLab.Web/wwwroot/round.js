// The page of a round: cells and notes by thumb. Each goes into the outbox of this device (outbox.js) before anything else, and
// shows at once; when the server has it, the live parts of the page are fetched anew and swapped in. Old figures stay meanwhile
// and say so.
(() => {
  const page = document.getElementById('round');
  if (!page) {
    return;
  }

  const id = page.dataset.round;
  const $ = (selector, within = page) => within.querySelector(selector);
  const all = (selector, within = page) => [...within.querySelectorAll(selector)];

  // What this page remembers on the device, under the round.
  const kept = (name, otherwise) => {
    try {
      return JSON.parse(outbox.text(`round.${id}.${name}`)) ?? otherwise;
    } catch {
      return otherwise;
    }
  };
  const keep = (name, value) => outbox.keepText(`round.${id}.${name}`, JSON.stringify(value));

  const tidy = (amount) => Math.round(amount * 1e9) / 1e9;
  const same = (a, b) => Math.abs(a - b) < 1e-9;
  const number = (text) => (text ? Number(text) : undefined);
  // An eighth of an ounce has three decimals.
  const shown = (amount) => String(Number(amount.toFixed(3))).replace('.', page.dataset.comma === 'true' ? ',' : '.');
  const eighths = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'];
  // As on a jigger, where it is in ounces.
  const onCell = (amount, row) => {
    const parts = Math.round(amount * 8);
    return row.unit !== 'fl oz' || !same(parts / 8, amount) || !parts ? shown(amount) : `${Math.floor(parts / 8) || ''} ${eighths[parts % 8]}`.trim();
  };
  const wrong = (text) => {
    $('#wrong').textContent = text;
    $('#wrong').hidden = !text;
    if (text) {
      $('#wrong').scrollIntoView({ block: 'nearest' });
    }
  };

  // ---- columns and cells

  let letter = kept('letter', null);
  const letters = () => all('.letter').map((b) => b.dataset.letter);
  const column = (l = letter) => $(`.letter[data-letter="${l}"]`);
  const cellOf = (line, l) => $(`tr[data-line="${line}"] .cell[data-letter="${l}"]`);

  const amounts = (cell) => {
    const row = cell.closest('tr').dataset;
    const specified = number(cell.dataset.specified) ?? Number(row.amount);
    return { row, specified, toPour: tidy(specified * Number(row.scale)), poured: number(cell.dataset.poured) };
  };

  const inUnit = (amount, row) => (row.unit === 'mL' ? shown(amount) : `${onCell(amount, row)} ${row.unit}`.trim());

  // A row as it stands now, before the server says how it writes it.
  const paint = (tr) => {
    const cells = all('.cell', tr);
    const read = cells.map(amounts);
    cells.forEach((cell, i) => {
      const { row, specified, toPour, poured } = read[i];
      const otherwise = poured !== undefined && !same(poured, toPour);
      const changed = !same(specified, Number(row.amount));
      const told = poured === undefined ? '' : otherwise ? `poured ${onCell(poured, row)}` : 'poured ✓';
      $('b', cell).textContent = onCell(toPour, row);
      $('small', cell).textContent = told;
      $('small', cell).classList.toggle('dif', otherwise);
      cell.parentElement.classList.toggle('new', changed);
      cell.setAttribute('aria-label', `${row.name} in ${cell.dataset.letter.toUpperCase()}: ${inUnit(toPour, row)}${changed ? ', changed' : ''}${told ? `, ${told}` : ''}`);
    });
    const differs = read.some((r) => !same(r.toPour, read[0].toPour) || (r.poured !== undefined && !same(r.poured, r.toPour)));
    tr.className = differs ? 'ch' : 'sh';
    $('.alike b', tr).textContent = inUnit(read[0].toPour, read[0].row);
  };

  // Set here, and not yet on the page that the server made; over a reload too.
  let pending = kept('pending', {});
  const outdate = () => $('#pours').classList.add('outdated');

  const apply = ({ line, letter: l, field, amount }) => {
    const cell = cellOf(line, l);
    if (cell) {
      cell.dataset[field] = amount === undefined ? '' : amount;
      paint(cell.closest('tr'));
      outdate();
    }
  };

  const put = (set, seen, words) => {
    const { line, letter: l, field, amount } = set;
    const entry = outbox.put({ kind: 'pour_cell', round: id, letter: l, line, field, amount, seen }, words);
    pending[entry.id] = set;
    keep('pending', pending);
    apply(set);
  };

  const setCell = (line, l, field, wanted) => {
    const cell = cellOf(line, l);
    const { row } = amounts(cell);
    // What is as the line says is not said again.
    const amount = field === 'specified' && wanted !== undefined && same(wanted, Number(row.amount)) ? undefined : wanted;
    const seen = number(cell.dataset[field]);
    if (amount === seen) {
      return;
    }
    const what = field === 'poured' ? 'poured' : 'to pour';
    put({ line, letter: l, field, amount }, seen, `${l.toUpperCase()}: ${what} ${amount === undefined ? 'as the line' : inUnit(amount, row)} ${row.name}`);
  };

  // ---- the server's page, swapped in

  // Where the focus stands, so that it stands there again.
  const placeOf = (el) => {
    const line = el.closest('tr')?.dataset.line;
    return el.id ? `#${el.id}`
      : line && el.dataset.letter ? `tr[data-line="${line}"] [data-letter="${el.dataset.letter}"]`
      : el.dataset.step ? `[data-step="${el.dataset.step}"]${el.dataset.letter ? `[data-letter="${el.dataset.letter}"]` : ''}`
      : el.dataset.letter ? `.letter[data-letter="${el.dataset.letter}"]`
      : el.matches('summary') ? `#${el.closest('details').id} > summary`
      : null;
  };

  const swap = (fresh) => {
    all('[data-live]').forEach((part) => {
      const made = fresh.getElementById(part.id);
      if (!made) {
        return;
      }
      const focus = part.contains(document.activeElement) ? placeOf(document.activeElement) : null;
      const left = part.scrollLeft;
      all('details[id]', part).forEach((old) => {
        const next = made.querySelector(`#${old.id}`);
        if (next) {
          next.open = old.open;
        }
      });
      const put = document.importNode(made, true);
      part.replaceWith(put);
      put.scrollLeft = left;
      if (focus) {
        $(focus)?.focus({ preventScroll: true });
      }
    });
    skew = Math.max(skew, Date.parse(fresh.getElementById('round').dataset.now) - Date.now());
    Object.values(pending).forEach(apply);
    choose(letter);
  };

  let fetching = false;
  let again = false;
  const refresh = async () => {
    again = true;
    if (fetching) {
      return;
    }
    fetching = true;
    try {
      while (again) {
        again = false;
        const response = await fetch(location.pathname, { cache: 'no-store', signal: AbortSignal.timeout(10000) });
        if (response.ok && !response.redirected) {
          swap(new DOMParser().parseFromString(await response.text(), 'text/html'));
        }
      }
    } catch {
      // No network: the old figures stay and say so; the next answer fetches again.
    } finally {
      fetching = false;
    }
  };

  document.addEventListener('captured', (e) => {
    const { answer, entry } = e.detail;
    const about = entry?.what.round ?? entry?.what.note?.round;
    delete pending[answer.id];
    keep('pending', pending);
    if (about !== id) {
      return;
    }
    if (answer.outcome === 'refused') {
      wrong(answer.problems.map((p) => p.message).join(' '));
    }
    refresh();
  });

  // ---- steps that need the server

  const made = {};
  const step = async (name, query) => {
    wrong('');
    try {
      const response = await fetch(`rounds/${id}/${name}?${new URLSearchParams(query)}`, { method: 'POST', headers: { 'X-Captured': '1' }, signal: AbortSignal.timeout(15000) });
      if (!response.ok) {
        wrong((response.headers.get('content-type') ?? '').startsWith('text/plain') ? await response.text() : 'That did not work; the cause is in the program’s log.');
        return false;
      }
      const answer = await response.json();
      if (answer.says) {
        wrong(`${answer.says} `);
        const on = document.createElement('a');
        on.href = answer.go;
        on.textContent = 'Go on';
        $('#wrong').append(on);
      } else if (answer.go) {
        location.href = answer.go;
      }
      return true;
    } catch {
      wrong('The server is not reached. This step needs it; cells and notes do not and are kept. Try again when it is back.');
      return false;
    }
  };

  // ---- the note of a pour: every tap is kept at once, as the same note said anew

  const restAfter = 10 * 60 * 1000;
  let notes = kept('notes', {});
  let axis = '';
  const faces = all('.face');
  const remembered = () => {
    try {
      return JSON.parse(outbox.text('tasters')) ?? [];
    } catch {
      return [];
    }
  };
  let tasters = remembered().filter((t) => faces.some((f) => f.dataset.person === t));
  if (!tasters.length && faces.some((f) => f.dataset.person === outbox.person())) {
    tasters = [outbox.person()];
  }

  const labels = {
    finish: ['shorter', 'right', 'longer'],
    cold: ['less cold', 'right', 'colder'],
  };
  const labelsOf = (a) => labels[a] ?? (a ? [`less ${a}`, 'right', `more ${a}`] : ['less', 'right', 'more']);
  const wishes = ['less', 'right', 'more'];

  const open = () => {
    const note = notes[letter];
    const goesOn = note && Date.now() - note.at < restAfter && note.moment === moment() && String(note.tasters) === String(tasters);
    return goesOn ? note : { wishes: {}, words: '', attachments: [], tasters: [...tasters], moment: moment() };
  };

  const inWords = (note) =>
    [...Object.entries(note.wishes).map(([a, w]) => (w === 'right' ? `${a} right` : labelsOf(a)[wishes.indexOf(w)])), note.verdict, note.words && `“${note.words}”`, note.attachments.length && `${note.attachments.length} attached`]
      .filter(Boolean).join(', ');

  const say = (change) => {
    const note = open();
    const after = { ...note, wishes: { ...note.wishes }, attachments: [...note.attachments] };
    change(after);
    if (!inWords(after)) {
      $('#kept-note').textContent = 'A note says at least one thing: choose another instead.';
      return;
    }
    const entry = outbox.put(
      {
        kind: 'note',
        note: {
          round: id, letter, wishes: Object.entries(after.wishes).map(([a, w]) => ({ axis: a, wish: w })), verdict: after.verdict, tasters: after.tasters,
          words: after.words, attachments: after.attachments, moment: after.moment || undefined, replaces: after.entry,
        },
      },
      `${letter.toUpperCase()}: ${inWords(after)}`);
    notes[letter] = { ...after, entry: entry.id, at: Date.now() };
    keep('notes', notes);
    showNote();
  };

  const showOffer = (note) => {
    const offer = $('#touch');
    const wish = note.wishes[axis];
    offer.replaceChildren();
    if (wish !== 'more' && wish !== 'less') {
      return;
    }
    const touch = JSON.parse(column().dataset.touches || '[]').find((t) => t.axis === axis && t.wish === wish);
    if (!touch) {
      offer.textContent = ['finish', 'cold', 'watery'].includes(axis) ? `No one line makes it ${axis === 'finish' ? 'last' : axis}: ice, time and all lines do.` : `No line is known to carry ${axis}; tap a cell to change one.`;
      return;
    }
    const next = $('#pours').dataset.next;
    const bold = document.createElement('b');
    bold.textContent = touch.says;
    const says = document.createElement('span');
    says.append(`A touch ${wish}: `, bold, `; ${touch.why}.`);
    offer.append(says);
    if (next) {
      const pour = document.createElement('button');
      pour.type = 'button';
      pour.className = 'btn';
      pour.textContent = `Pour it as ${next.toUpperCase()}`;
      pour.addEventListener('click', () => pourIt(touch, next));
      offer.append(pour);
    } else {
      says.append(' Six pours stand here already.');
    }
  };

  const pourIt = async (touch, next) => {
    const [like, seen] = [letter, number(cellOf(touch.line, letter).dataset.specified)];
    if (await step('pours', { letter: next, like })) {
      letter = next;
      put({ line: touch.line, letter: next, field: 'specified', amount: touch.amount }, seen, `${next.toUpperCase()}: ${touch.says}`);
      refresh();
    }
  };

  const stateOf = (entry) => {
    const row = outbox.log().find((r) => r.id === entry);
    return row ? { kept: 'kept here', refused: 'not taken' }[row.state] ?? 'saved' : 'saved';
  };

  const showNote = () => {
    const note = open();
    $('#note-letter').textContent = letter.toUpperCase();
    $('#note').setAttribute('aria-label', `Note on pour ${letter.toUpperCase()}`);
    faces.forEach((f) => f.setAttribute('aria-pressed', tasters.includes(f.dataset.person) ? 'true' : 'false'));
    all('.at').forEach((b) => {
      b.setAttribute('aria-pressed', b.dataset.axis === axis ? 'true' : 'false');
      b.dataset.said = note.wishes[b.dataset.axis] ?? '';
    });
    all('[data-wish]').forEach((b, i) => {
      b.disabled = !axis;
      b.textContent = labelsOf(axis)[i];
      b.setAttribute('aria-pressed', note.wishes[axis] === b.dataset.wish ? 'true' : 'false');
    });
    all('[data-verdict]').forEach((b) => b.setAttribute('aria-pressed', note.verdict === b.dataset.verdict ? 'true' : 'false'));
    $('#kept-note').textContent = note.entry ? `${inWords(note)} · ${stateOf(note.entry)}` : '';
    $('#next-taste').disabled = !note.entry;
    $('#tally').textContent = (note.entry ? ' ' : '') + (column()?.dataset.tally ?? '');
    if (document.activeElement !== $('#words')) {
      $('#words').value = note.words || outbox.text(`round.${id}.words.${letter}`);
    }
    showOffer(note);
  };

  const choose = (wanted) => {
    const l = letters().includes(wanted) ? wanted : letters()[0];
    if (l !== letter) {
      letter = l;
      axis = '';
    }
    keep('letter', letter);
    all('.letter').forEach((b) => b.setAttribute('aria-pressed', b.dataset.letter === letter ? 'true' : 'false'));
    all('[data-of]', $('#pours')).forEach((c) => c.classList.toggle('sel', c.dataset.of === letter));
    // Six pours do not fit a phone: the chosen one comes into sight beside the names.
    const [scroll, head, own] = [$('#pours'), $('thead th', $('#pours')), column().parentElement];
    const leftmost = own.offsetLeft - head.offsetWidth;
    if (scroll.scrollLeft > leftmost) {
      scroll.scrollLeft = leftmost;
    } else if (own.offsetLeft + own.offsetWidth > scroll.scrollLeft + scroll.clientWidth) {
      scroll.scrollLeft = own.offsetLeft + own.offsetWidth - scroll.clientWidth;
    }
    all('[data-sound]').forEach((b) => b.setAttribute('aria-pressed', outbox.text('sound') ? 'true' : 'false'));
    tick();
    showNote();
  };

  // ---- the clock of a pour

  // The server's clock counts; this device's may be wrong.
  // What took its time on the way makes it look later than it is: the shortest way counts.
  let skew = Date.parse(page.dataset.now) - Date.now();
  let byHand = null;
  const pouredAt = (l = letter) => Date.parse(column(l)?.dataset.pouredAt || kept(`poured.${l}`, '')) || null;
  const minutesOf = { minute0: 0, minute5: 5, minute10: 10 };
  const minutes = (l = letter) => (pouredAt(l) ? Math.max(0, (Date.now() + skew - pouredAt(l)) / 60000) : null);

  const ownMoment = () => {
    const passed = minutes();
    if (passed !== null && passed < 20) {
      return passed < 2.5 ? 'minute0' : passed < 7.5 ? 'minute5' : 'minute10';
    }
    return (column()?.dataset.bottle ?? '').split(' ').pop();
  };
  const moment = () => byHand ?? ownMoment();

  const remind = () => {
    if (!navigator.userActivation?.hasBeenActive) {
      return;   // the browser would refuse both
    }
    navigator.vibrate?.(200);
    if (outbox.text('sound')) {
      const sound = new AudioContext();
      const tone = sound.createOscillator();
      tone.frequency.value = 660;
      tone.connect(sound.destination);
      tone.start();
      tone.stop(sound.currentTime + 0.25);
      tone.onended = () => sound.close();
    }
  };

  let told = '';
  const tick = () => {
    const passed = minutes();
    const clock = $('#clock');
    clock.hidden = false;
    const text = passed === null ? 'Start clock' : passed >= 60 ? 'poured' : `${Math.floor(passed)}:${String(Math.floor((passed * 60) % 60)).padStart(2, '0')}`;
    if (clock.lastChild.textContent !== text) {
      const said = document.createElement('span');
      said.className = 'vh';
      said.textContent = passed === null ? '' : 'In the glass ';
      clock.replaceChildren(said, text);
    }
    if ($('#moment').value !== moment()) {
      $('#moment').value = moment();
    }
    // The last moment that has come, of each pour that was not tasted then.
    const due = letters().map((l) => {
      const own = minutes(l);
      const last = own !== null && own < 20 ? ['minute10', 'minute5'].find((m) => own >= minutesOf[m]) : null;
      const tasted = (column(l).dataset.tasted ?? '').split(' ').includes(last) || notes[l]?.moment === last;
      return last && !tasted ? [l.toUpperCase(), minutesOf[last]] : null;
    }).filter(Boolean);
    const says = due.length ? `${due[0][1]} minutes in the glass: taste ${due.filter((d) => d[1] === due[0][1]).map((d) => d[0]).join(', ')} again.` : '';
    if (says !== told) {
      $('#due').textContent = says;
      $('#due').hidden = !says;
      if (says && told === '') {
        remind();
      }
      told = says;
    }
  };
  setInterval(tick, 1000);

  const startClock = async () => {
    if (pouredAt() !== null) {
      return;
    }
    const at = new Date(Date.now() + skew).toISOString();
    letters().filter((l) => pouredAt(l) === null).forEach((l) => keep(`poured.${l}`, at));
    tick();
    if (await step('poured', {})) {
      refresh();
    } else {
      wrong('The server is not reached: the clock runs on this device alone. Notes are kept with their minute.');
    }
  };

  // ---- photos and sounds: in this browser's own store until the server has them

  const largest = 8 * 1024 * 1024;
  const states = {};
  const shelf = () => new Promise((resolve, reject) => {
    const opening = indexedDB.open('menulab', 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore('attachments', { keyPath: 'id' });
    opening.onsuccess = () => resolve(opening.result);
    opening.onerror = () => reject(opening.error);
  });
  const onShelf = async (mode, work) => {
    const db = await shelf();
    try {
      return await new Promise((resolve, reject) => {
        const change = db.transaction('attachments', mode);
        const asked = work(change.objectStore('attachments'));
        change.oncomplete = () => resolve(asked.result);
        change.onerror = () => reject(change.error);
        change.onabort = () => reject(change.error);
      });
    } finally {
      db.close();
    }
  };
  const showSends = () => $('#sends').replaceChildren(...Object.values(states).map(({ name, says }) => {
    const item = document.createElement('li');
    item.textContent = `${name}: ${says}`;
    return item;
  }));

  const sendOne = async (file) => {
    const response = await fetch(`capture/attachments/${file.id}`, { method: 'POST', headers: { 'X-Captured': '1', 'Content-Type': file.type }, body: file.blob });
    const refused = response.status === 422 || response.status === 413;
    if (!response.ok && !refused) {
      throw new Error(`answered ${response.status}`);
    }
    states[file.id] = { name: file.name, says: refused ? `not taken. ${await response.text()}` : 'saved' };
    await onShelf('readwrite', (s) => s.delete(file.id)).catch(() => {});
  };

  let sending = false;
  const sendFiles = async (loose = []) => {
    if (sending) {
      return;
    }
    sending = true;
    try {
      for (const file of [...(await onShelf('readonly', (s) => s.getAll()).catch(() => [])), ...loose]) {
        await sendOne(file);
      }
    } catch {
      // They stay on the shelf and go with the next attempt.
    } finally {
      sending = false;
      showSends();
    }
  };

  const attach = async (input) => {
    const [blob] = input.files;
    input.value = '';
    if (!blob) {
      return;
    }
    const file = { id: outbox.newId(), name: blob.name, type: blob.type, blob };
    if (blob.size > largest) {
      states[file.id] = { name: file.name, says: 'not taken: it is larger than 8 MB.' };
      showSends();
      return;
    }
    let loose = [];
    try {
      await onShelf('readwrite', (s) => s.put(file));
      states[file.id] = { name: file.name, says: 'kept here' };
    } catch {
      loose = [file];
      states[file.id] = { name: file.name, says: 'not kept yet: stay on this page until it is sent' };
    }
    showSends();
    say((note) => note.attachments.push(file.id));
    await sendFiles(loose);
  };
  addEventListener('online', () => sendFiles());
  document.addEventListener('captured', () => sendFiles());

  // ---- one cell, opened over the note row

  let edited = null;
  const showCell = () => {
    const cell = cellOf(edited.line, edited.letter);
    const { row, specified, toPour, poured } = amounts(cell);
    $('#cell-letter').textContent = edited.letter.toUpperCase();
    $('#cell-line').value = edited.line;
    $('#cell-letters').replaceChildren(...letters().map((l) => {
      const button = document.createElement('button');
      button.type = 'button';
      button.className = 'kind';
      button.textContent = l.toUpperCase();
      button.setAttribute('aria-pressed', l === edited.letter ? 'true' : 'false');
      button.addEventListener('click', () => openCell(edited.line, l));
      return button;
    }));
    $('#of-whole').textContent = same(Number(row.scale), 1) ? '' : ', whole drink';
    $('#specified').value = shown(specified);
    $('#poured').value = poured === undefined ? '' : shown(poured);
    $('#poured').placeholder = shown(toPour);
    $('#cell-unit').textContent = `In ${row.unit || 'pieces'}${row.step ? `; a touch is ${shown(Number(row.step))}` : ''}${same(Number(row.scale), 1) ? '' : `; ${inUnit(toPour, row)} into this glass`}.`;
    all('.step', $('#cell')).forEach((b) => (b.disabled = !row.step));
    $('#across').textContent = `Spread ${letters()[0].toUpperCase()} to ${letters().pop().toUpperCase()}`;
    $('#across').disabled = !row.step;
    cellWrong('');
  };
  const cellWrong = (text) => {
    $('#cell-wrong').textContent = text;
    $('#cell-wrong').hidden = !text;
  };
  const openCell = (line, l) => {
    edited = { line, letter: l };
    choose(l);
    $('#note').hidden = true;
    $('#cell').hidden = false;
    showCell();
  };
  const closeCell = () => {
    $('#cell').hidden = true;
    $('#note').hidden = false;
    const cell = edited && cellOf(edited.line, edited.letter);
    edited = null;
    (cell?.offsetParent ? cell : $('#any-cell')).focus({ preventScroll: true });
  };
  const commit = (field) => {
    const typed = $(`#${field}`).value;
    const read = typed.trim() ? outbox.number(typed) : { value: undefined };
    cellWrong(read.problem ?? '');
    if (!read.problem) {
      setCell(edited.line, edited.letter, field, read.value);
      showCell();
    }
  };
  const touchCell = (field, more) => {
    const { row, specified, toPour, poured } = amounts(cellOf(edited.line, edited.letter));
    const from = field === 'specified' ? specified : poured ?? toPour;
    const size = Number(row.step);
    setCell(edited.line, edited.letter, field, Math.max(0, tidy(Math.round((from + (more ? size : -size)) / size) * size)));
    showCell();
  };
  const spread = () => {
    const { row, specified } = amounts(cellOf(edited.line, edited.letter));
    const size = Number(row.step);
    const below = Math.floor((letters().length - 1) / 2);
    if (specified - below * size < 0) {
      cellWrong('The smallest amount would be below zero: take more in the middle.');
      return;
    }
    letters().forEach((l, i) => setCell(edited.line, l, 'specified', i === below ? specified : tidy(Math.round((specified + (i - below) * size) / size) * size)));
    showCell();
  };

  // ---- what is pressed

  const pressed = {
    '.letter': (b) => choose(b.dataset.letter),
    '.cell': (b) => openCell(b.closest('tr').dataset.line, b.dataset.letter),
    '#any-cell': () => openCell($('#cell-line').value, letter),
    '#cell-done': closeCell,
    '.step[data-touch]': (b) => touchCell(b.dataset.field, b.dataset.touch === 'more'),
    '#as-written': () => {
      setCell(edited.line, edited.letter, 'poured', amounts(cellOf(edited.line, edited.letter)).toPour);
      showCell();
    },
    '#as-line': () => {
      setCell(edited.line, edited.letter, 'specified', undefined);
      showCell();
    },
    '#across': spread,
    '.face': (b) => {
      const who = b.dataset.person;
      tasters = tasters.includes(who) ? tasters.filter((t) => t !== who) : [...tasters, who];
      outbox.keepText('tasters', JSON.stringify(tasters));
      // Another set of people is another taste: nobody's word is rewritten by who comes after.
      axis = '';
      showNote();
    },
    '.at': (b) => {
      axis = b.dataset.axis;
      showNote();
    },
    '[data-wish]': (b) => say((note) => {
      if (note.wishes[axis] === b.dataset.wish) {
        delete note.wishes[axis];
      } else {
        note.wishes[axis] = b.dataset.wish;
      }
    }),
    '[data-verdict]': (b) => say((note) => (note.verdict = note.verdict === b.dataset.verdict ? undefined : b.dataset.verdict)),
    '#words-open': (b) => {
      $('#words-part').hidden = !$('#words-part').hidden;
      b.setAttribute('aria-expanded', $('#words-part').hidden ? 'false' : 'true');
      if (!$('#words-part').hidden) {
        $('#words').focus();
      }
    },
    // What was typed before a reload has not changed since, so the field itself says nothing.
    '#words-keep': () => {
      const words = $('#words').value.trim();
      if (words !== open().words) {
        say((note) => (note.words = words));
        outbox.keepText(`round.${id}.words.${letter}`, '');
      }
    },
    '#next-taste': () => {
      delete notes[letter];
      keep('notes', notes);
      axis = '';
      $('#words').value = '';
      showNote();
    },
    '#clock': startClock,
    '[data-sound]': (b) => {
      outbox.keepText('sound', outbox.text('sound') ? '' : 'on');
      b.setAttribute('aria-pressed', outbox.text('sound') ? 'true' : 'false');
      remind();
    },
    '[data-print]': () => print(),
    '[data-step]': async (b) => {
      const query = b.dataset.letter ? { letter: b.dataset.letter } : {};
      if (b.dataset.makes) {
        query.id = made[b.dataset.step + b.dataset.letter] ??= outbox.newId();
      }
      if (await step(b.dataset.step, query)) {
        refresh();
      }
    },
  };

  page.addEventListener('click', (e) => {
    const button = e.target.closest('button');
    const [, act] = (button && Object.entries(pressed).find(([selector]) => button.matches(selector))) ?? [];
    act?.(button);
  });

  page.addEventListener('change', (e) => {
    const field = e.target;
    if (field.id === 'cell-line') {
      openCell(field.value, edited.letter);
    } else if (field.id === 'specified' || field.id === 'poured') {
      commit(field.id);
    } else if (field.id === 'moment') {
      byHand = field.value;
      showNote();
    } else if (field.id === 'photo' || field.id === 'sound') {
      attach(field);
    } else if (field.id === 'words') {
      say((note) => (note.words = field.value.trim()));
      outbox.keepText(`round.${id}.words.${letter}`, '');
    }
  });

  page.addEventListener('input', (e) => {
    if (e.target.id === 'words') {
      outbox.keepText(`round.${id}.words.${letter}`, e.target.value);
    }
  });

  page.addEventListener('keydown', (e) => {
    if (e.key === 'Escape' && edited) {
      closeCell();
    }
  });

  document.addEventListener('outbox', () => column() && showNote());

  document.addEventListener('DOMContentLoaded', () => {
    // What the server has meanwhile is on its page.
    const waiting = new Set(outbox.log().filter((r) => r.state === 'kept').map((r) => r.id));
    pending = Object.fromEntries(Object.entries(pending).filter(([entry]) => waiting.has(entry)));
    Object.values(pending).forEach(apply);
    choose(letter);
    if ($('#words').value && !open().words) {
      $('#words-part').hidden = false;
      $('#words-open').setAttribute('aria-expanded', 'true');
    }
    sendFiles();
  });
})();
