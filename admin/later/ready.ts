// Makes ready for a network that goes: the service worker keeps the page, and the screens that are needed then are fetched before.

/** After the first answers have come, ms. */
const AT_LEISURE_MS = 3_000;

/** Without a secure context (https, or this machine itself) there is no worker: what waits is kept, but a reload needs a network. */
function keepPage(): void {
  if (!('serviceWorker' in navigator)) return;
  void navigator.serviceWorker.register('/worker.js', { updateViaCache: 'none' }).catch(() => {});
}

export function readyForNoNetwork(): void {
  setTimeout(() => {
    if (import.meta.env.PROD) keepPage();
    const screens = [import('../act/ActForm.svelte'), import('../act/DryForm.svelte')] as Promise<unknown>[];
    screens.push(import('../act/rarer.ts'));
    screens.push(import('./Later.svelte'), import('../expose/Container.svelte'));
    screens.push(
      import('../prepare/Sheet.svelte'),
      import('../prepare/kept.ts').then(({ keepSheets }) => keepSheets()),
    );
    void Promise.all(screens).catch(() => {});
  }, AT_LEISURE_MS);
}
