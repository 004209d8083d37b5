/** Keeps the listed files of the desk, so that it opens without a network after the first time. */
declare const __LISTED__: readonly string[];
declare const __CONTENT__: string;

interface Lasting extends Event {
  readonly waitUntil: (work: Promise<unknown>) => void;
}
interface Fetching extends Lasting {
  readonly request: Request;
  readonly respondWith: (answer: Promise<Response>) => void;
}
interface Scope {
  readonly registration: { readonly scope: string };
  readonly clients: { readonly claim: () => Promise<void> };
  addEventListener(type: 'install' | 'activate', listener: (event: Lasting) => void): void;
  addEventListener(type: 'fetch', listener: (event: Fetching) => void): void;
}

const scope = globalThis as unknown as Scope;
const PREFIX = 'gantrybook ';
const name = PREFIX + __CONTENT__;
const at = (file: string): string => new URL(file, scope.registration.scope).href;
const listed = new Set(__LISTED__.map(at));

/**
 * All or none: a desk that is kept in part would open and then fail. A newer one waits until no page of the older is open, which
 * may still fetch its later parts.
 */
const keep = async (): Promise<void> => {
  const cache = await caches.open(name);
  await cache.addAll(__LISTED__.map((file) => new Request(at(file), { cache: 'reload' })));
};

const tidy = async (): Promise<void> => {
  const old = (await caches.keys()).filter((one) => one.startsWith(PREFIX) && one !== name);
  await Promise.all(old.map((one) => caches.delete(one)));
  await scope.clients.claim();
};

const answer = async (request: Request, file: string): Promise<Response> =>
  (await (await caches.open(name)).match(file)) ?? fetch(request);

scope.addEventListener('install', (event) => event.waitUntil(keep()));
scope.addEventListener('activate', (event) => event.waitUntil(tidy()));
scope.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET') return;
  const url = new URL(request.url);
  const plain = url.origin + url.pathname;
  const file = plain === at('') ? at('index.html') : plain;
  if (listed.has(file)) event.respondWith(answer(request, file));
});
