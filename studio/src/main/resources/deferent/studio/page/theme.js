// Dark or light, settled before anything is painted, so that nobody is dazzled by the wrong one for a moment.
(() => {
  let wanted = 'auto';
  try {
    wanted = localStorage.getItem('deferent.theme') || 'auto';
  } catch {
    // no memory here: as the system has it
  }
  const light = wanted === 'light' || (wanted === 'auto' && matchMedia('(prefers-color-scheme: light)').matches);
  document.documentElement.dataset.theme = light ? 'light' : 'dark';
})();
