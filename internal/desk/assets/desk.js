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

// What only some pages need comes when it is needed.
if (document.querySelector(".map:not([data-drawing])")) void import("./sized.js").then((m) => m.sizeWords());
if (document.querySelector("time")) void import("./times.js").then((m) => m.localTimes());
const live = document.querySelector("[data-live-board]");
if (live instanceof HTMLElement) void import("./board.js").then((m) => m.watchBoard(live));
for (const a of document.querySelectorAll("a[data-whole-link]")) if (a instanceof HTMLAnchorElement) a.textContent = a.href;
const choosing = document.querySelector("[data-choosing]");
if (choosing instanceof HTMLElement) void import("./choose.js").then((m) => m.watchChoice(choosing));
const board = document.querySelector("[data-marking]");
if (board instanceof HTMLElement) void import("./mark.js").then((m) => m.marking(board));
const wishMap = document.querySelector("[data-wish-map]");
if (wishMap instanceof HTMLElement) void import("./choose.js").then((m) => m.tapWishes(wishMap));
if (page && document.querySelector("[data-takes]")) void import("./take.js").then((m) => m.takes(page));
