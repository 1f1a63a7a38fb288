// @ts-check
// Keys. On a hole of a drawing: arrows move it the way they point, with Shift by a
// pane. On the row of holes: arrows walk from hole to hole. Anywhere: take back, do
// again, delete, zoom, Esc, and ? for the list of keys.

import { nextPane } from "./fitting.js";
import { holding, inHand, letGo, moveTo, putBack, take } from "./hold.js";
import { editable, said } from "./plan.js";
import { go } from "./swap.js";
import { zoomBy } from "./view.js";

/** How long after the last key a move is saved, in milliseconds. */
const pause = 700;
let saving = 0;

/** @param {HTMLElement} page */
export function keys(page) {
  page.addEventListener("keydown", (event) => {
    const at = event.target instanceof Element ? event.target : null;
    if (!at || event.altKey || event.ctrlKey || event.metaKey) return;
    const box = at.closest("[data-drawing]");
    const hole = at.closest("[data-drawing] a")?.querySelector("[data-hole]")?.getAttribute("data-hole");
    if (hole && editable() && box && moves(event.key)) {
      event.preventDefault();
      const onStrip = box.getAttribute("data-drawing") === "strip";
      queue = queue.then(() => nudge(hole, event.key, event.shiftKey, onStrip));
    } else if (at.closest(editable() ? "[data-picks] a" : "[data-picks] a, [data-drawing] a") && !event.shiftKey) {
      walk(event, page);
    }
  });
  page.addEventListener("focusout", (event) => {
    const to = event.relatedTarget;
    if (saving && !(to instanceof Element && to.closest("[data-drawing]"))) void save();
  });
  page.addEventListener("click", (event) => {
    if (event.target instanceof Element && event.target.closest("[data-keys]")) list();
  });
  addEventListener("keydown", anywhere);
}

/** @param {string} key */
function moves(key) {
  return key.startsWith("Arrow") || key === "PageUp" || key === "PageDown";
}

/** Keys that work wherever the focus is, but where somebody types. @param {KeyboardEvent} event */
function anywhere(event) {
  const at = event.target instanceof Element ? event.target : null;
  if (event.altKey || event.defaultPrevented || document.querySelector("dialog[open]") || !document.querySelector("[data-plan]")) return;
  if (event.key === "Escape") {
    escape();
    return;
  }
  if (at?.closest("input, textarea, select")) return;
  const act = command(event);
  if (!act) return;
  event.preventDefault();
  act();
}

/** @param {KeyboardEvent} event @returns {(() => void) | undefined} */
function command(event) {
  const key = event.key.toLowerCase();
  if (event.ctrlKey || event.metaKey) {
    const redo = key === "y" || (key === "z" && event.shiftKey);
    return redo ? () => void press("[data-redo]") : key === "z" ? () => void press("[data-undo]") : undefined;
  }
  /** @type {Record<string, () => void>} */
  const plain = {
    "?": list, delete: () => void press("[data-delete]"),
    "+": () => zoomBy("in"), "=": () => zoomBy("in"), "-": () => zoomBy("out"), 0: () => zoomBy("all"),
  };
  return plain[key];
}

function list() {
  const box = document.getElementById("keys");
  if (box instanceof HTMLDialogElement) box.showModal();
}

/** Puts back what is in the hand, else closes what is open, else picks nothing. */
function escape() {
  if (holding()) {
    clearTimeout(saving);
    saving = 0;
    putBack();
    return;
  }
  const open = document.querySelector("details.verdict[open], details.tool-box[open]");
  const none = document.querySelector("[data-none]:not([aria-current])");
  if (open) {
    open.removeAttribute("open");
    open.querySelector("summary")?.focus();
  } else if (none && !document.activeElement?.closest("[data-tour]")) void go(none.getAttribute("href") ?? "", "", true);
}

/** Keys come faster than a plan is read: they wait for one another. @type {Promise<void>} */
let queue = Promise.resolve();

/** @param {string} hole @param {string} key @param {boolean} byPane @param {boolean} onStrip */
async function nudge(hole, key, byPane, onStrip) {
  if (!(await take(hole))) return;
  const held = inHand();
  if (!held) return;
  const step = Number(said("step")) || 0.01;
  const { boards } = held.plan;
  let { station, height } = held;
  const way = onStrip ? (straight[key]?.[0] ?? 0) : along(boards.at(station), key);
  if (way) station = byPane ? nextPane(held.plan, held.hole, station, way) : boards.wrap(station + way * step);
  else height += step * upward(key, onStrip || Math.abs(boards.at(station).ny) > Math.SQRT1_2);
  moveTo(station, height, null);
  clearTimeout(saving);
  saving = window.setTimeout(save, pause);
}

/** Where arrows point on a drawing: right and up. @type {Record<string, [number, number]>} */
const straight = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
/** An arrow moves a hole along the boards where they run within 67 degrees of it. */
const alike = 0.38;

/**
 * The way along the boards that an arrow points on the map, with rising station or against it; 0 for none.
 * @param {import("./boards.js").Place} at @param {string} key
 */
export function along(at, key) {
  const to = straight[key];
  const dot = to ? to[0] * at.ny - to[1] * at.nx : 0; // the tangent of rising station is (ny, -nx)
  return Math.abs(dot) < alike ? 0 : Math.sign(dot);
}

/** @param {string} key @param {boolean} level the boards run across the view, so that up is free for the height */
function upward(key, level) {
  if (key === "PageUp" || (level && key === "ArrowUp")) return 1;
  return key === "PageDown" || (level && key === "ArrowDown") ? -1 : 0;
}

async function save() {
  clearTimeout(saving);
  saving = 0;
  await queue;
  await letGo();
}

/** Presses a button of the page. @param {string} selector */
async function press(selector) {
  if (saving) await save();
  const button = document.querySelector(selector);
  if (button instanceof HTMLButtonElement && !button.disabled) button.form?.requestSubmit(button);
}

/** Walks from hole to hole. @param {KeyboardEvent} event @param {HTMLElement} page */
function walk(event, page) {
  const links = Array.from(page.querySelectorAll("[data-picks] a[data-hole]"));
  const now = links.findIndex((link) => link.getAttribute("aria-current") === "true");
  const next = target(event.key, now, links.length);
  if (next === null) return;
  event.preventDefault();
  const url = links[next].getAttribute("href");
  if (next !== now && url) void go(url, links[next].getAttribute("data-hole") ?? "", true);
}

/** @type {Record<string, number>} */
const steps = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** @param {string} key @param {number} now @param {number} count */
function target(key, now, count) {
  if (key === "Home") return 0;
  if (key === "End") return count - 1;
  const step = steps[key];
  return step === undefined ? null : (now + step + count) % count;
}
