// @ts-check
// The service worker of the page at the glass and of the card: it opens the page without
// a network, at once. Marks are kept and sent by the page itself. What is kept is the page and its
// files; every answer of the desk about covers comes from the desk.

/** @type {any} */
const worker = self;

const pages = /^\/(phone|day|card)\/[^/]+$/;

/** @param {string[]} files the page's files, whose addresses change with their content */
export function serve(files) {
  const name = "glass " + files[0];
  worker.addEventListener("install", (/** @type {any} */ e) => {
    e.waitUntil(caches.open(name).then((kept) => kept.addAll(files)));
    worker.skipWaiting();
  });
  worker.addEventListener("activate", (/** @type {any} */ e) => e.waitUntil(begin(name)));
  worker.addEventListener("fetch", (/** @type {any} */ e) => {
    const { pathname } = new URL(e.request.url);
    if (e.request.method !== "GET") return;
    if (e.request.mode === "navigate" && pages.test(pathname)) e.respondWith(page(e, pathname));
    else if (files.includes(pathname)) e.respondWith(caches.match(e.request, { cacheName: name }).then((kept) => kept ?? fetch(e.request)));
  });
}

/** @param {string} name of what is kept now; what older workers kept goes, and their pages are fetched anew @returns {Promise<void>} */
async function begin(name) {
  await worker.clients.claim();
  const kept = await caches.open("glass pages");
  const open = await worker.clients.matchAll({ type: "window" });
  const paths = [...(await kept.keys()), ...open].map((r) => new URL(r.url).pathname);
  for (const path of new Set(paths)) if (pages.test(path)) await renew(kept, path).catch(() => null);
  for (const other of await caches.keys()) if (other !== name && other.startsWith("glass /")) await caches.delete(other);
}

/** Fetches a page and keeps it; one that is no longer for this phone goes. @param {Cache} kept @param {string} path */
async function renew(kept, path) {
  const answer = await fetch(path, { credentials: "same-origin" });
  if (answer.ok && !answer.redirected) await kept.put(path, answer.clone());
  else if (answer.status === 403 || answer.status === 404) await kept.delete(path);
  return answer;
}

/** The kept page at once, and a fresh one for the next time; without a kept one the desk's. @param {any} e @param {string} path */
async function page(e, path) {
  const kept = await caches.open("glass pages");
  const there = await kept.match(path);
  if (!there) return fetch(e.request);
  e.waitUntil(renew(kept, path).catch(() => null));
  return there;
}
