// @ts-check
// Keys. On a hole of a drawing: arrows move it, with Shift by a pane, up and down
// its height. On the row of holes: arrows walk from hole to hole. Anywhere: Ctrl+Z
// takes back, Ctrl+Shift+Z does it again.

import { nextPane } from "./fitting.js";
import { inHand, letGo, moveTo, take } from "./hold.js";
import { editable, said } from "./plan.js";
import { go } from "./swap.js";

/** How long after the last key a move is saved, in milliseconds. */
const pause = 700;
let saving = 0;

/** @param {HTMLElement} page */
export function keys(page) {
  page.addEventListener("keydown", (event) => {
    const at = event.target instanceof Element ? event.target : null;
    if (!at || event.altKey) return;
    const undo = undoKey(event, at);
    if (undo) {
      event.preventDefault();
      void press(undo);
      return;
    }
    if (event.ctrlKey || event.metaKey) return;
    const mark = at.closest("[data-drawing] a");
    const hole = mark?.querySelector("[data-hole]")?.getAttribute("data-hole");
    if (hole && editable() && event.key.startsWith("Arrow")) {
      event.preventDefault();
      queue = queue.then(() => nudge(hole, event.key, event.shiftKey));
    } else if (at.closest(editable() ? "[data-picks] a" : "[data-picks] a, [data-drawing] a") && !event.shiftKey) {
      walk(event, page);
    }
  });
  page.addEventListener("focusout", (event) => {
    const to = event.relatedTarget;
    if (saving && !(to instanceof Element && to.closest("[data-drawing]"))) void save();
  });
}

/** Keys come faster than a plan is read: they wait for one another. @type {Promise<void>} */
let queue = Promise.resolve();

/** @param {string} hole @param {string} key @param {boolean} byPane */
async function nudge(hole, key, byPane) {
  if (!(await take(hole))) return;
  const held = inHand();
  if (!held) return;
  const step = Number(said("step")) || 0.01;
  const { boards } = held.plan;
  let { station, height } = held;
  if (key === "ArrowUp") height += step;
  else if (key === "ArrowDown") height -= step;
  else {
    const way = key === "ArrowRight" ? 1 : -1;
    station = byPane ? nextPane(held.plan, held.hole, station, way) : boards.wrap(station + way * step);
  }
  moveTo(station, height, null);
  clearTimeout(saving);
  saving = window.setTimeout(save, pause);
}

async function save() {
  clearTimeout(saving);
  saving = 0;
  await queue;
  await letGo();
}

/** @param {KeyboardEvent} event @param {Element} at @returns {string} "undo", "redo" or "" */
function undoKey(event, at) {
  if (!(event.ctrlKey || event.metaKey) || at.closest("input, textarea, select")) return "";
  const key = event.key.toLowerCase();
  if (key === "z") return event.shiftKey ? "redo" : "undo";
  return key === "y" ? "redo" : "";
}

/** @param {string} act */
async function press(act) {
  if (saving) await save();
  const button = document.querySelector(`[data-${act}]`);
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
