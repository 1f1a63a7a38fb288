// @ts-check
// The service worker of the page at the glass and of the card: it opens the page without
// a network, at once. Marks are kept and sent by the page itself. What is kept is the page and its
// files; every answer of the desk about covers comes from the desk.

/** @type {any} */
const worker = self;

const pages = /^\/(phone|day|card)\/[^/]+$/;
const kept = "glass pages";

/** @param {string[]} files the page's files, whose addresses change with their content */
export function serve(files) {
  const name = "glass " + files[0];
  worker.addEventListener("install", (/** @type {any} */ e) => {
    e.waitUntil(caches.open(name).then((there) => there.addAll(files)));
    e.waitUntil(shortCut(e, name).catch(() => null));
    worker.skipWaiting();
  });
  worker.addEventListener("activate", (/** @type {any} */ e) => e.waitUntil(begin(name)));
  worker.addEventListener("message", (/** @type {any} */ e) => e.waitUntil(renewOpen(e.source)));
  worker.addEventListener("fetch", (/** @type {any} */ e) => {
    const { pathname } = new URL(e.request.url);
    if (e.request.method !== "GET") return;
    if (e.request.mode === "navigate" && pages.test(pathname)) e.respondWith(page(e.request, pathname));
    else if (files.includes(pathname)) e.respondWith(caches.match(e.request, { cacheName: name }).then((there) => there ?? fetch(e.request)));
  });
}

/** @param {string} name of what is kept now; what older workers kept goes, and their pages are fetched anew @returns {Promise<void>} */
async function begin(name) {
  await worker.clients.claim();
  const store = await caches.open(kept);
  const open = await worker.clients.matchAll({ type: "window" });
  const paths = [...(await store.keys()), ...open].map((r) => new URL(r.url).pathname);
  for (const path of new Set(paths)) if (pages.test(path)) await renew(store, path).catch(() => null);
  for (const other of await caches.keys()) if (other !== name && other.startsWith("glass /")) await caches.delete(other);
}

/** Fetches a page and keeps it; one that is no longer for this phone goes. @param {Cache} store @param {string} path */
async function renew(store, path) {
  const answer = await fetch(path, { credentials: "same-origin" });
  if (answer.ok && !answer.redirected) await store.put(path, answer);
  else if (answer.status === 403 || answer.status === 404) await store.delete(path);
}

/** A page is shown, and may be fetched anew for the next time. @param {{ url: string }} open */
async function renewOpen(open) {
  const { pathname } = new URL(open.url);
  if (pages.test(pathname)) await renew(await caches.open(kept), pathname).catch(() => null);
}

/** The kept page; without one the desk's. @param {Request} asked @param {string} path */
async function page(asked, path) {
  return (await caches.match(path, { cacheName: kept })) ?? fetch(asked);
}

/**
 * Where the browser can, it finds what is kept without starting this worker first.
 * @param {any} e @param {string} name
 */
async function shortCut(e, name) {
  const at = (/** @type {string} */ pathname) => ({ urlPattern: { pathname }, requestMethod: "GET" });
  await e.addRoutes?.([
    ...["/phone/:name", "/day/:name", "/card/:name"].map((path) => ({ condition: { ...at(path), requestMode: "navigate" }, source: { cacheName: kept } })),
    { condition: at("/assets/*"), source: { cacheName: name } },
  ]);
}
