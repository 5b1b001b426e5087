// The service worker: the page opens without a network, as it was built last. The newest build is always asked for first, so
// that none is kept for ever; each build has a cache of its own under its version. It never touches /graphql, /files or /health.
// A script of its own at the root, without imports. https://www.w3.org/TR/service-workers/

declare const __BUILD__: { version: string; entry: string; files: string[] };

interface Waits extends Event {
  waitUntil: (until: Promise<unknown>) => void;
}
interface Fetches extends Waits {
  request: Request;
  respondWith: (response: Promise<Response>) => void;
}
interface Worker {
  location: Location;
  clients: { claim: () => Promise<void> };
  skipWaiting: () => Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: Waits) => void): void;
  addEventListener(type: 'fetch', listener: (event: Fetches) => void): void;
}

const worker = self as unknown as Worker;
const { version, entry, files } = __BUILD__;
const PREFIX = 'drumkeep-';
const mine = `${PREFIX}${version}`;
/** The page is waited for so long before the one that is kept is shown, ms. */
const PATIENCE_MS = 4_000;

async function keepBuild(): Promise<void> {
  const cache = await caches.open(mine);
  const page = await fetch('/', { cache: 'no-cache' });
  // A server that was replaced meanwhile hands out another build's page: that one brings its own worker.
  if (!page.ok || !(await page.clone().text()).includes(entry)) throw new Error('the page is of another build');
  await cache.addAll(files);
  await cache.put('/', page);
}

/** Drops the builds before the last one: a tab may still show that one and ask for its parts. */
async function dropOld(): Promise<void> {
  const all = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== mine);
  await Promise.all(all.slice(0, -1).map((name) => caches.delete(name)));
}

async function pageFor(request: Request): Promise<Response> {
  try {
    return await fetch(request, { signal: AbortSignal.timeout(PATIENCE_MS) });
  } catch (error) {
    const kept = await (await caches.open(mine)).match('/');
    if (kept) return kept;
    throw error;
  }
}

/** Files under assets/ are named by their content: what is kept is right for ever. */
async function partFor(request: Request): Promise<Response> {
  const kept = await caches.match(request, { ignoreVary: true });
  if (kept) return kept;
  const answer = await fetch(request);
  if (answer.ok) await (await caches.open(mine)).put(request, answer.clone());
  return answer;
}

worker.addEventListener('install', (event) => event.waitUntil(keepBuild().then(() => worker.skipWaiting())));
worker.addEventListener('activate', (event) => event.waitUntil(dropOld().then(() => worker.clients.claim())));
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== worker.location.origin) return;
  if (pathname.startsWith('/assets/')) event.respondWith(partFor(request));
  else if (request.mode === 'navigate' && !/^\/(graphql|files|health)(\/|$)/.test(pathname))
    event.respondWith(pageFor(request));
});
