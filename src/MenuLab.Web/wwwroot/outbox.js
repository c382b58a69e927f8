// The outbox of this device: whatever is captured is kept here before anything else, sent until the server has answered for
// it, and shown as "kept here" or "saved". Each entry has an id of its own, made here, so that sending it twice does nothing
// twice; and a counter, since this device's clock may be wrong. Nothing leaves the outbox unanswered.
(() => {
  const address = 'capture/entries';
  const largestParcel = 20;
  const pause = 4000;
  const longestLog = 200;

  // Storage may be switched off or full: then an entry lives in this page only, and the page says so.
  const inPage = new Map();
  const read = (key) => {
    try {
      return JSON.parse(inPage.get(key) ?? localStorage.getItem(`menulab.${key}`));
    } catch {
      return null;
    }
  };
  const write = (key, value) => {
    const text = JSON.stringify(value);
    try {
      localStorage.setItem(`menulab.${key}`, text);
      inPage.delete(key);
    } catch {
      inPage.set(key, text);
    }
  };
  const drop = (key) => {
    inPage.delete(key);
    try {
      localStorage.removeItem(`menulab.${key}`);
    } catch {
      // It was never there.
    }
  };
  const keys = (prefix) => {
    let stored = [];
    try {
      stored = Object.keys(localStorage).filter((k) => k.startsWith(`menulab.${prefix}`)).map((k) => k.slice('menulab.'.length));
    } catch {
      // Switched off.
    }
    return [...new Set([...stored, ...[...inPage.keys()].filter((k) => k.startsWith(prefix))])];
  };

  // A UUID of version 7 (RFC 9562): later ones sort later. randomUUID() is not there on a plain http address of the house.
  const newId = () => {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    let time = Date.now();
    for (let i = 5; i >= 0; i--) {
      bytes[i] = time % 256;
      time = Math.floor(time / 256);
    }
    bytes[6] = 0x70 | (bytes[6] & 0x0f);
    bytes[8] = 0x80 | (bytes[8] & 0x3f);
    return [...bytes].map((b, i) => ([4, 6, 8, 10].includes(i) ? '-' : '') + b.toString(16).padStart(2, '0')).join('');
  };

  const device = () => {
    if (!read('device')) {
      write('device', newId());
    }
    return read('device');
  };

  const next = () => {
    write('counter', (read('counter') ?? 0) + 1);
    return read('counter');
  };

  // Who holds the device: chosen on it among the people of this house, else whom the page was made for.
  const person = () => {
    const chosen = read('person');
    return document.querySelector(`#holder option[value="${chosen}"]`) ? chosen : document.querySelector('[data-person]')?.dataset.person;
  };

  const waiting = () => keys('outbox.').map(read).filter(Boolean).sort((a, b) => a.entry.counter - b.entry.counter);

  const log = () => read('log') ?? [];
  // What a person has yet to look at never falls off the end of the list.
  const shortened = (rows) => rows.filter((row, i) => i < longestLog || row.state === 'met' || row.state === 'refused');
  const note = (id, said) => write('log', log().map((row) => (row.id === id ? { ...row, ...said } : row)));

  const tell = () => document.dispatchEvent(new CustomEvent('outbox'));

  // Keeps what was captured. `words` say it in the list of the day.
  const put = (what, words) => {
    const entry = { id: newId(), device: device(), counter: next(), by: person(), at: new Date().toISOString(), what };
    write(`outbox.${entry.id}`, { entry, words });
    write('log', shortened([{ id: entry.id, words, at: entry.at, state: 'kept' }, ...log()]));
    tell();
    flush();
    return entry;
  };

  const answered = (answer) => {
    const sent = read(`outbox.${answer.id}`);
    const state = answer.outcome === 'refused' ? 'refused' : answer.outcome === 'collided' ? 'met' : 'saved';
    note(answer.id, { state, saved: new Date().toISOString(), met: answer.met, problems: answer.problems, what: state === 'saved' ? undefined : sent?.entry.what });
    drop(`outbox.${answer.id}`);
    document.dispatchEvent(new CustomEvent('captured', { detail: { answer, entry: sent?.entry } }));
  };

  let busy = false;

  // A request that is to outlive its page may carry 64 kB in all, so only the last one is of that sort.
  const flush = async ({ leaving = false } = {}) => {
    if (busy) {
      return;
    }
    busy = true;
    try {
      for (let parcel = waiting().slice(0, largestParcel); parcel.length; parcel = waiting().slice(0, largestParcel)) {
        const response = await fetch(address, {
          method: 'POST',
          keepalive: leaving,
          headers: { 'Content-Type': 'application/json', 'X-Captured': '1' },
          body: JSON.stringify(parcel.map((p) => p.entry)),
          signal: AbortSignal.timeout(10000),
        });
        if (!response.ok || response.redirected) {
          throw new Error(`answered ${response.status}`);
        }
        (await response.json()).forEach(answered);
        tell();
      }
    } catch {
      // No network, or the server is down: all is kept, and the next attempt comes by itself.
    } finally {
      busy = false;
      tell();
    }
  };

  addEventListener('online', () => flush());
  addEventListener('pagehide', () => flush({ leaving: true }));
  document.addEventListener('visibilitychange', () => !document.hidden && flush());
  setInterval(() => waiting().length && flush(), pause);

  // "22,5" and "22.5" are one number; "1,500" may be two, and is asked back.
  const number = (text) => {
    const typed = text.trim();
    if (/^\d{1,3}[.,]\d{3}$/.test(typed) && !/^0[.,]/.test(typed)) {
      return { problem: `Is “${typed}” ${typed.replace(/[.,]/, '.').replace(/0+$/, '').replace(/\.$/, '')} or ${typed.replace(/[.,]/, '')}? Write it without a mark for thousands.` };
    }
    return /^\d+([.,]\d+)?$|^[.,]\d+$/.test(typed) ? { value: Number(typed.replace(',', '.')) } : { problem: typed ? `“${typed}” is no amount: write a number, zero or more.` : 'Write a number.' };
  };

  window.outbox = {
    put, flush, newId, number, person, log,
    waiting: () => waiting().length,
    isKept: () => ![...inPage.keys()].some((k) => k.startsWith('outbox.')),
    setPerson: (id) => write('person', id),
    // Half-typed text, by the name of its field.
    keepText: (name, text) => (text ? write(`half.${name}`, text) : drop(`half.${name}`)),
    text: (name) => read(`half.${name}`) ?? '',
    settle: (id) => {
      note(id, { state: 'saved', met: undefined });
      tell();
    },
  };

  document.addEventListener('DOMContentLoaded', () => {
    tell();
    flush();
  });
})();
