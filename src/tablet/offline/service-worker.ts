import type { OfflineList } from './list.ts';

declare const self: ServiceWorkerGlobalScope;
/** Put in by the build. */
declare const __OFFLINE_LIST__: OfflineList;

const list = __OFFLINE_LIST__;
const PAGE_CACHE = `first-fire-page-${list.version}`;
/** Large files that carry their version in their name: they outlive an update of the page. */
const LARGE_CACHE = 'first-fire-large';

/** Never from a cache: the server's own answers. */
const isServerTalk = (url: URL) => /^\/(?:api|trust)(?:\/|$)|^\/ws$/.test(url.pathname);
/** What is kept is the same file for whoever asks for it, though a server says that it varies. */
const whoeverAsks = { ignoreVary: true };
const isLarge = (url: URL) =>
  url.pathname.startsWith('/model/') || /\.bin$|\.wasm$|libsamplerate|vosk/.test(url.pathname);

async function keepMissing(cacheName: string, paths: readonly string[]): Promise<void> {
  const cache = await caches.open(cacheName);
  for (const path of paths) if (!(await cache.match(path, whoeverAsks))) await cache.add(path);
}

async function dropOldVersions(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter(name => name.startsWith('first-fire-page-') && name !== PAGE_CACHE);
  await Promise.all(old.map(name => caches.delete(name)));
  await self.clients.claim();
}

async function answer(request: Request, url: URL): Promise<Response> {
  // Every address of the page is the same page.
  const wanted = request.mode === 'navigate' ? '/' : request;
  const kept = await caches.match(wanted, { ...whoeverAsks, ignoreSearch: request.mode === 'navigate' });
  if (kept) return kept;
  // The recognizer also asks for files that its model does not have: the answer is the same without a network.
  if (url.pathname.startsWith('/model/') && !list.hearing.includes(url.pathname))
    return new Response(null, { status: 404 });
  const fresh = await fetch(request);
  if (fresh.ok && isLarge(url)) await (await caches.open(LARGE_CACHE)).put(request, fresh.clone());
  return fresh;
}

/** Under this name a page holds a lock while a session is open in it, as each record that is written has one. */
const isSession = ({ name }: LockInfo) => name === 'session' || name?.startsWith('record ') === true;

/**
 * Takes over from the version before, whose files are dropped: never while a session is open in any tab, which may need
 * some of them still.
 */
async function takeOver(): Promise<'taken' | 'inUse'> {
  const { held = [] } = await navigator.locks.query();
  if (held.some(isSession)) return 'inUse';
  await self.skipWaiting();
  return 'taken';
}

async function answerPage(asked: unknown): Promise<unknown> {
  switch (asked) {
    case 'take over':
      return takeOver();
    case 'vocabulary':
      return list.vocabulary;
    case 'keep hearing':
      return keepMissing(LARGE_CACHE, list.hearing).then(() => 'kept', String);
    default:
      return null;
  }
}

// Not before the page says so does a new version take over: it never pulls the page from under a session.
self.addEventListener('install', event => event.waitUntil(keepMissing(PAGE_CACHE, list.page)));
self.addEventListener('activate', event => event.waitUntil(dropOldVersions()));

self.addEventListener('fetch', event => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== self.location.origin || isServerTalk(url)) return;
  event.respondWith(answer(event.request, url));
});

self.addEventListener('message', event => {
  event.waitUntil(answerPage(event.data).then(answered => event.ports[0]?.postMessage(answered)));
});
