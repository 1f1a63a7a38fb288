// @ts-check
// The desk's pages work without a script: every change is a link or a form. These
// modules make a plan one that is worked on with hands: drag, keys, in place.

import { dragging } from "./drag.js";
import { keys } from "./keys.js";
import { inPlace } from "./links.js";
import { outbox } from "./outbox.js";
import { plan } from "./plan.js";
import { watchSaves } from "./saves.js";
import { showPickedOnStrip } from "./strip.js";
import { tools } from "./tools.js";
import { tour } from "./tour.js";
import { viewing } from "./view.js";

const page = document.querySelector("main");
if (page) {
  inPlace(page);
  tools(page);
  if (page.querySelector("[data-plan]")) {
    tour(page);
    viewing(page);
    dragging(page);
    keys(page);
    showPickedOnStrip(page);
    setTimeout(() => void plan().catch(() => {}), 100); // at hand before a hole is, with or without the network
  }
  outbox();
  watchSaves();
}

// What only some pages need comes when it is needed. Once all of it is at work the page
// says so: until then a press does what the link or form does without a script.
for (const a of document.querySelectorAll("a[data-whole-link]")) if (a instanceof HTMLAnchorElement) a.textContent = a.href;
await Promise.allSettled([
  meets(".map:not([data-drawing])", async () => (await import("./sized.js")).sizeWords()),
  meets("time", async () => (await import("./times.js")).localTimes()),
  meets("[data-live-board]", async (live) => (await import("./board.js")).watchBoard(live)),
  meets("[data-choosing]", async (choosing) => (await import("./choose.js")).watchChoice(choosing)),
  meets("[data-jobs]", async (list) => void (await import("./jobs.js")).watchJobs(list)),
  meets("[data-marking]", async (board) => (await import("./mark.js")).marking(board)),
  meets("[data-framing]", async (form) => (await import("./framing.js")).framing(form)),
  meets("[data-wish-map]", async (map) => (await import("./choose.js")).tapWishes(map)),
  meets("main:has([data-takes])", async (page) => (await import("./take.js")).takes(page)),
]);
document.documentElement.dataset.scripts = "at work";

/** @param {string} selector @param {(box: HTMLElement) => Promise<void>} then */
async function meets(selector, then) {
  const box = document.querySelector(selector);
  if (box) await then(/** @type {HTMLElement} */ (box));
}
