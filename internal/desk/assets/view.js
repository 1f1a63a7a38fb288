// @ts-check
// The view of the plan map: nearer and farther by wheel, pinch, buttons and keys, and
// moved by a drag beside the holes. What is seen is kept when the page's content changes.

import { drawing } from "./drawing.js";
import { onContent } from "./swap.js";
import { tidyWords } from "./words.js";

const nearest = 12;
const step = 1.5;

/** How many times nearer than the whole rink, and what stands in the middle, in millimetres of the sheet. */
const view = { near: 1, x: 0, y: 0 };

/**
 * @typedef {{ box: HTMLElement, svg: SVGSVGElement, left: number, top: number, w: number, h: number,
 *   width: number, height: number, mm: number }} Frame
 */

/** The largest words, in pixels, and in millimetres as the sheet has room for them. */
const largest = { pixels: 13, mm: 3.2 };

/** The map's frame: its sheet with room for words, the pixels it has, millimetres for a pixel when all is seen. @returns {Frame | null} */
function frame() {
  const box = drawing("map");
  const svg = box?.querySelector("svg");
  if (!box || !svg) return null;
  const [, , w, h] = (svg.dataset.whole ??= svg.getAttribute("viewBox") ?? "").split(" ").map(Number);
  const { width, height } = svg.getBoundingClientRect();
  const room = Math.max(0, largest.pixels * (w / width) - largest.mm); // words stand outside the boards
  const all = { left: -room, top: -room, w: w + 2 * room, h: h + 2 * room };
  return { box, svg, ...all, width, height, mm: Math.max(all.w / width, all.h / height) };
}

/** Shows the view. @param {Frame | null} f */
function show(f) {
  if (!f || !f.width || !f.height) return;
  const mm = f.mm / view.near;
  const [w, h] = [f.width * mm, f.height * mm];
  view.x = within(view.x, w, f.left, f.w);
  view.y = within(view.y, h, f.top, f.h);
  const seen = view.near === 1 ? [f.left, f.top, f.w, f.h] : [view.x - w / 2, view.y - h / 2, w, h];
  f.svg.setAttribute("viewBox", seen.map((v) => v.toFixed(3)).join(" "));
  f.box.classList.toggle("near", view.near > 1);
  f.box.style.setProperty("--mm", mm.toFixed(4));
  tidyWords(f.box);
}

/** Keeps the middle such that the window stays on the sheet. @param {number} at @param {number} seen @param {number} from @param {number} all */
function within(at, seen, from, all) {
  return seen >= all ? from + all / 2 : Math.min(Math.max(at, from + seen / 2), from + all - seen / 2);
}

/** Goes nearer by a factor, what is under a point of the window staying there. @param {number} by @param {number} [x] @param {number} [y] */
export function zoom(by, x, y) {
  const f = frame();
  if (!f) return;
  const r = f.svg.getBoundingClientRect();
  const dx = (x ?? r.left + r.width / 2) - (r.left + r.width / 2);
  const dy = (y ?? r.top + r.height / 2) - (r.top + r.height / 2);
  const was = f.mm / view.near;
  view.near = Math.min(Math.max(view.near * by, 1), nearest);
  const now = f.mm / view.near;
  view.x += dx * (was - now);
  view.y += dy * (was - now);
  show(f);
}

/** @param {string} how "in", "out" or "all" */
export function zoomBy(how) {
  if (how === "all") view.near = 1;
  const at = pickedAt();
  zoom(how === "in" ? step : how === "out" ? 1 / step : 1, at?.x, at?.y);
}

/** Where the hole that is picked is seen: a step nearer keeps it there. Null while it is out of sight. */
function pickedAt() {
  const box = drawing("map");
  const r = box?.querySelector(".hole-mark .picked")?.getBoundingClientRect();
  const all = box?.getBoundingClientRect();
  if (!r || !all || r.left < all.left || r.right > all.right || r.top < all.top || r.bottom > all.bottom) return null;
  return { x: r.left + r.width / 2, y: r.top + r.height / 2 };
}

/** @param {number} dx pixels @param {number} dy */
function pan(dx, dy) {
  const f = frame();
  if (!f) return;
  view.x -= (dx * f.mm) / view.near;
  view.y -= (dy * f.mm) / view.near;
  show(f);
}

/** Fingers, or the mouse, that are down beside the holes. @type {Map<number, { x: number, y: number }>} */
const down = new Map();
let moved = 0;

/** @param {HTMLElement} page */
export function viewing(page) {
  const resized = new ResizeObserver((entries) => {
    for (const e of entries) e.target === drawing("map") ? show(frame()) : fitStrip();
  });
  onContent(() => {
    const [map, strip] = [drawing("map"), drawing("strip")];
    for (const box of [map, strip]) if (box) resized.observe(box);
    if (!map) return;
    map.addEventListener("wheel", wheel, { passive: false });
    map.addEventListener("pointerdown", pressed);
    map.addEventListener("touchmove", pinched, { passive: false });
    show(frame());
  });
  addEventListener("pointermove", dragged);
  for (const name of ["pointerup", "pointercancel"]) addEventListener(name, (e) => e instanceof PointerEvent && lifted(e));
  page.addEventListener("click", (event) => {
    const button = event.target instanceof Element ? event.target.closest("[data-zoom]") : null;
    if (button) zoomBy(button.getAttribute("data-zoom") ?? "");
  });
  void document.fonts.ready.then(() => {
    show(frame());
    fitStrip();
  });
}

function fitStrip() {
  const box = drawing("strip");
  const svg = box?.querySelector("svg");
  if (!box || !svg) return;
  const { width } = svg.getBoundingClientRect();
  box.style.setProperty("--mm", (Number(box.dataset.width) / width).toFixed(4));
  tidyWords(box);
}

/** Where map and page have one wheel, the page scrolls; a pinch on a touchpad comes as a wheel with Ctrl. @param {WheelEvent} event */
function wheel(event) {
  if (!event.ctrlKey && !matchMedia("(min-width: 64rem) and (min-height: 40rem)").matches) return;
  event.preventDefault();
  zoom(Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0015)), event.clientX, event.clientY);
}

/** Two fingers are the map's, not the page's to scroll by. @param {TouchEvent} event */
function pinched(event) {
  if (event.touches.length > 1 && event.cancelable) event.preventDefault();
}

/** @param {PointerEvent} event */
function pressed(event) {
  if (event.button !== 0 || event.target instanceof Element && event.target.closest("a") && down.size === 0) return;
  down.set(event.pointerId, { x: event.clientX, y: event.clientY });
  moved = 0;
}

/** @param {PointerEvent} event */
function dragged(event) {
  const was = down.get(event.pointerId);
  if (!was) return;
  const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
  const [dx, dy] = [event.clientX - was.x, event.clientY - was.y];
  if (other) {
    const far = (/** @type {{x: number, y: number}} */ p) => Math.hypot(p.x - other.x, p.y - other.y);
    const by = far({ x: event.clientX, y: event.clientY }) / Math.max(far(was), 1);
    zoom(by, (was.x + other.x) / 2, (was.y + other.y) / 2);
    pan(dx / 2, dy / 2);
  } else if (view.near > 1) {
    drawing("map")?.classList.add("panning");
    pan(dx, dy);
  }
  moved += Math.hypot(dx, dy);
  down.set(event.pointerId, { x: event.clientX, y: event.clientY });
}

/** @param {PointerEvent} event */
function lifted(event) {
  if (!down.delete(event.pointerId) || down.size > 0) return;
  drawing("map")?.classList.remove("panning");
}

/** Whether the press that ends now moved the map, so that it is no tap. */
export function panned() {
  return view.near > 1 && moved > 4;
}
