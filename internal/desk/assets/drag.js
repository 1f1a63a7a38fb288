// @ts-check
// Dragging a hole on the plan map or on the boards strip, by mouse, pen or finger.

import { markAt, metresPerPixel, placeAt } from "./drawing.js";
import { snap } from "./fitting.js";
import { inHand, letGo, moveTo, putBack, take } from "./hold.js";
import { editable, plan } from "./plan.js";
import { onContent } from "./swap.js";

/** A press becomes a drag after so many pixels: a hand trembles. */
const tremble = 4;
/** How near in pixels a landmark or pane's middle catches a hole, and at most in metres. */
const catches = 7;
const catchesMost = 0.5;
/** A fine move goes so many times less far than the pointer. */
const fineness = 8;

/** @type {{ id: number, box: HTMLElement, hole: string, x: number, y: number, dragging: boolean, grabX: number, grabY: number } | null} */
let press = null;

/** @param {HTMLElement} page */
export function dragging(page) {
  page.addEventListener("pointerdown", (event) => {
    const mark = event.target instanceof Element ? markAt(event.target, event.clientX, event.clientY) : null;
    const box = mark && mark.closest("[data-drawing]");
    if (!mark || !(box instanceof HTMLElement) || event.button !== 0 || !event.isPrimary || !editable()) return;
    press = { id: event.pointerId, box, hole: mark.getAttribute("data-hole") ?? "", x: event.clientX, y: event.clientY, dragging: false, grabX: 0, grabY: 0 };
    event.target?.addEventListener("touchmove", still, { passive: false });
    void plan().catch(() => {}); // have it ready; take says when it cannot be had
  });
  // touch-action does not reach the parts of a drawing, so a finger on a hole is kept from panning
  // the page here; and by the part touched itself, which may be drawn anew meanwhile (below).
  onContent(() => {
    for (const box of page.querySelectorAll("[data-drawing]")) {
      box.addEventListener("touchmove", (event) => press && event.preventDefault(), { passive: false });
    }
  });
  // On the window: what was pressed may be drawn anew while the pointer is down.
  addEventListener("pointermove", (event) => {
    if (press && event.pointerId === press.id) void moved(event);
  });
  addEventListener("pointerup", (event) => {
    if (press && event.pointerId === press.id) void released(true);
  });
  addEventListener("pointercancel", (event) => {
    if (press && event.pointerId === press.id) void released(false);
  });
  page.addEventListener("dragstart", (event) => {
    if (event.target instanceof Element && event.target.closest("[data-drawing]")) event.preventDefault(); // no ghost of a link
  });
  page.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || !press?.dragging) return;
    event.preventDefault();
    void released(false);
  });
}

/** @param {Event} event */
function still(event) {
  event.preventDefault();
}

/** @param {PointerEvent} event */
async function moved(event) {
  const now = press;
  if (!now) return;
  if (!now.dragging) {
    if (Math.hypot(event.clientX - now.x, event.clientY - now.y) < tremble) return;
    now.dragging = true;
    now.box.setPointerCapture(now.id);
    swallowClick();
    if (!(await take(now.hole)) || press !== now) return;
    grab(now);
  }
  const held = inHand();
  if (!held || held.hole.id !== now.hole) return;
  event.preventDefault();
  follow(now, event.clientX, event.clientY, event.shiftKey);
}

/** Keeps the way from the pointer to the mark, so that the mark does not jump. @param {NonNullable<typeof press>} now */
function grab(now) {
  const mark = now.box.querySelector(`[data-layer="holes"] [data-hole="${CSS.escape(now.hole)}"] .hit`);
  if (!mark) return;
  const r = mark.getBoundingClientRect();
  now.grabX = r.left + r.width / 2 - now.x;
  now.grabY = r.top + r.height / 2 - now.y;
}

/** @param {NonNullable<typeof press>} now @param {number} x @param {number} y @param {boolean} shift */
function follow(now, x, y, shift) {
  const held = inHand();
  if (!held) return;
  scrollAlong(now.box, x);
  const fine = document.querySelector("[data-fine]:checked") !== null;
  if (fine) [x, y] = [now.x + (x - now.x) / fineness, now.y + (y - now.y) / fineness];
  const at = placeAt(now.box, held.plan, x + now.grabX, y + now.grabY);
  const free = shift || fine;
  const reach = Math.min(catches * metresPerPixel(now.box), catchesMost);
  const near = free ? null : snap(held.plan, held.hole, at.station, reach);
  moveTo(near ? near.station_m : at.station, at.height ?? held.height, near);
}

/** Scrolls the strip on when the pointer is at its edge. @param {HTMLElement} box @param {number} x */
function scrollAlong(box, x) {
  if (box.dataset.drawing !== "strip") return;
  const edge = 36;
  const r = box.getBoundingClientRect();
  if (x > r.right - edge) box.scrollLeft += 14;
  else if (x < r.left + edge) box.scrollLeft -= 14;
}

/** @param {boolean} keep */
async function released(keep) {
  const now = press;
  press = null;
  if (!now || !now.dragging) return; // a plain press picks the hole, by its link
  if (keep) await letGo();
  else putBack();
}

/** The click that ends a drag must not follow the link. */
function swallowClick() {
  const stop = (/** @type {Event} */ event) => {
    event.preventDefault();
    event.stopPropagation();
  };
  addEventListener("click", stop, { capture: true, once: true });
  addEventListener("pointerup", () => setTimeout(() => removeEventListener("click", stop, { capture: true }), 60), { once: true });
}
