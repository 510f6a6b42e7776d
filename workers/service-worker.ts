/*
 * Keeps the program's own files, so that it starts without a network; of a person it keeps nothing. A new version is
 * fetched whole beside the one in use and takes its place when the page says so, or once no page is open.
 */

export {};

interface BuiltFile {
  /** From the folder of the page. */
  readonly url: string;
  /** Null where the name itself changes with what is in the file. */
  readonly revision: string | null;
}

declare const self: ServiceWorkerGlobalScope & {
  /** All files of this version; put in at the build. */
  readonly __WB_MANIFEST: readonly BuiltFile[];
};

const FILES = self.__WB_MANIFEST;
const OURS = "drystead-files ";
const STORE = OURS + fingerprint(JSON.stringify(FILES));
const PAGE = "index.html";
/** This version and the one before: pages of that one that are still open take their parts from it. */
const VERSIONS_KEPT = 2;

self.addEventListener("install", (event) => event.waitUntil(keepAll()));
self.addEventListener("activate", (event) => event.waitUntil(takeOver()));
self.addEventListener("message", ({ data }) => {
  if (data === "take-over") void self.skipWaiting();
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  const isOurs = request.url.startsWith(self.registration.scope);
  if (isOurs && request.method === "GET" && !request.headers.has("range")) {
    event.respondWith(answer(request));
  }
});

/** Keeps every file of this version, or none. */
async function keepAll(): Promise<void> {
  const store = await caches.open(STORE);
  try {
    await Promise.all(FILES.map(async (file) => store.put(addressOf(file), await fresh(file))));
  } catch (thrown) {
    await caches.delete(STORE);
    throw thrown;
  }
}

/** A file as it is now: one whose name tells what is in it from an earlier version, else from the network. */
async function fresh(file: BuiltFile): Promise<Response> {
  const { revision } = file;
  const kept = revision === null ? await caches.match(addressOf(file)) : undefined;
  if (kept) return kept;
  const found = await fetch(addressOf(file), { cache: revision === null ? "default" : "reload" });
  if (!found.ok) throw new Error(`${file.url} answered ${found.status}.`);
  const { status, headers } = found;
  return found.redirected ? new Response(await found.blob(), { status, headers }) : found;
}

async function takeOver(): Promise<void> {
  const stores = (await caches.keys()).filter((name) => name.startsWith(OURS));
  const old = stores.filter((name) => name !== STORE).slice(0, -(VERSIONS_KEPT - 1));
  await Promise.all(old.map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function answer(request: Request): Promise<Response> {
  const { origin, pathname } = new URL(request.url);
  const address = origin + pathname;
  const isPage = address === self.registration.scope;
  const store = await caches.open(STORE);
  const kept = await store.match(isPage ? address + PAGE : address);
  return kept ?? (await caches.match(address)) ?? fetch(request);
}

function addressOf({ url }: BuiltFile): string {
  return new URL(url, self.registration.scope).href;
}

/** A short name for a text: FNV-1a, 32 bits. Source: RFC 9923. */
function fingerprint(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  }
  return (hash >>> 0).toString(16);
}
