// Starts the page's connection to the server, and says when it is gone. Shorter time-outs than usual: a network that went
// away should be noticed while somebody still looks.
(() => {
  const notice = document.getElementById('components-reconnect-modal');

  const again = async () => {
    try {
      // false: the server is there but has forgotten this page; what was typed is kept in the browser.
      if (!(await Blazor.reconnect()) && !(await Blazor.resumeCircuit())) {
        location.reload();
      }
    } catch {
      // Still no network: the notice stays, the next attempt comes by itself or by the button.
    }
  };

  notice.addEventListener('components-reconnect-state-changed', ({ detail: { state } }) => {
    if (state === 'rejected' || state === 'resume-failed') {
      location.reload();
    } else if (state === 'hide') {
      notice.hidden = true;
      keptText.tellAgain();
    } else {
      notice.hidden = false;
    }
  });
  document.getElementById('connect-again').addEventListener('click', again);
  addEventListener('online', () => !notice.hidden && again());
  document.addEventListener('visibilitychange', () => !document.hidden && !notice.hidden && again());

  Blazor.start({
    circuit: {
      configureSignalR: (hub) => hub.withServerTimeout(15000).withKeepAliveInterval(5000),
      reconnectionOptions: { maxRetries: 1000, retryIntervalMilliseconds: 3000 },
    },
  });
})();
