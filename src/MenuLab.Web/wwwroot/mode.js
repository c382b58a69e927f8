// Light or dark, set before the first paint: the person's choice (a cookie, which the server has then written into the
// page already), else the machine's own setting.
(() => {
  const root = document.documentElement;
  if (!root.dataset.mode) {
    root.dataset.mode = matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
  }
  window.house = {
    mode: () => root.dataset.mode,
    setMode: (mode) => {
      root.dataset.mode = mode;
      document.cookie = `mode=${mode}; path=/; max-age=31536000; samesite=lax`;
    },
  };
})();
