// Light or dark, set before the first paint: the person's choice (a cookie, which the server has then written into the
// page already), else dark on a phone or a tablet behind the bar, else the machine's own setting.
(() => {
  const root = document.documentElement;
  if (!root.dataset.mode) {
    const behindTheBar = root.dataset.page === 'device' && matchMedia('(pointer: coarse)').matches;
    root.dataset.mode = behindTheBar || matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
  }
  window.house = {
    mode: () => root.dataset.mode,
    setMode: (mode) => {
      root.dataset.mode = mode;
      document.cookie = `mode=${mode}; path=/; max-age=31536000; samesite=lax`;
    },
  };
})();
