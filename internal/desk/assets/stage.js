// @ts-check
// A frame with its marks, and a magnifier beside the pointer or the mark that is moved.
// Places are in pixels of the picture from its upper left corner, the middle of the first
// pixel at 0.5, 0.5.

import { Loupe } from "./loupe.js";

/** @typedef {import("./framing.js").Mark} Mark */
/** @typedef {{ x: number, y: number }} Place */
/** @typedef {{ marks: () => Mark[], words: (m: Mark) => string, place: (x: number, y: number) => Mark, moved: () => void, remove: (m: Mark) => void, times: () => number }} Hands */

const arrows = /** @type {Record<string, [number, number]>} */ ({ ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] });
const drawnLonger = 10; // arrows, than what a mark is off by

export class Stage {
  /** @param {HTMLElement} box @param {Hands} hands */
  constructor(box, hands) {
    this.hands = hands;
    this.board = /** @type {HTMLElement} */ (box.querySelector("[data-board]"));
    this.view = /** @type {HTMLCanvasElement} */ (box.querySelector("[data-view]"));
    this.loupe = new Loupe(/** @type {HTMLCanvasElement} */ (box.querySelector("[data-loupe]")), this.board);
    /** @type {ImageBitmap | null} */
    this.bitmap = null;
    /** @type {Place} */
    this.cross = { x: 0, y: 0 };
    /** the mark that hands move @type {Mark | null} */
    this.held = null;
    /** @type {Map<string, HTMLButtonElement>} */
    this.pins = new Map();
    this.board.addEventListener("pointerdown", (e) => this.down(e));
    this.board.addEventListener("pointermove", (e) => this.move(e));
    this.board.addEventListener("pointerup", (e) => this.up(e));
    this.board.addEventListener("pointercancel", () => (this.pressed = false));
    this.board.addEventListener("pointerleave", () => this.leave());
    this.board.addEventListener("keydown", (e) => this.key(e));
    this.board.addEventListener("focusin", (e) => this.focused(e));
    this.board.addEventListener("focusout", () => this.loupe.hide());
    new ResizeObserver(() => this.draw()).observe(this.board);
    this.pressed = false;
  }

  /** @param {Blob} file */
  async open(file) {
    const next = await createImageBitmap(file);
    this.bitmap?.close();
    this.bitmap = next;
    this.held = null;
    this.cross = { x: next.width / 2, y: next.height / 2 };
    this.board.style.maxWidth = `calc(85vh * ${next.width / next.height})`;
  }

  focus() {
    this.board.focus();
  }

  /** CSS pixels for a pixel of the picture. */
  scale() {
    return this.bitmap ? this.view.clientWidth / this.bitmap.width : 1;
  }

  draw() {
    const bitmap = this.bitmap;
    if (!bitmap || this.board.clientWidth === 0) return;
    const dpr = Math.min(devicePixelRatio, 2);
    const wide = Math.round(this.board.clientWidth * dpr);
    const high = Math.round((wide * bitmap.height) / bitmap.width);
    if (this.view.width !== wide || this.view.height !== high) Object.assign(this.view, { width: wide, height: high });
    const ink = /** @type {CanvasRenderingContext2D} */ (this.view.getContext("2d"));
    ink.drawImage(bitmap, 0, 0, wide, high);
    const k = wide / bitmap.width;
    for (const m of this.hands.marks()) if (m.seen) arrow(ink, m.x * k, m.y * k, (m.seen[0] - m.x) * drawnLonger * k, (m.seen[1] - m.y) * drawnLonger * k, m.fits !== false);
    this.setPins();
  }

  /** One button a mark, so that Tab goes over them; those that are there stay. */
  setPins() {
    const marks = this.hands.marks();
    const k = this.scale();
    for (const [name, pin] of this.pins) {
      if (marks.some((m) => m.landmark === name)) continue;
      pin.remove();
      this.pins.delete(name);
    }
    for (const m of marks) {
      let pin = this.pins.get(m.landmark);
      if (!pin) {
        pin = this.board.appendChild(document.createElement("button"));
        pin.type = "button";
        pin.className = "pin";
        pin.dataset.pin = m.landmark;
        this.pins.set(m.landmark, pin);
      }
      pin.style.left = `${m.x * k}px`;
      pin.style.top = `${m.y * k}px`;
      pin.toggleAttribute("data-misfit", m.fits === false);
      pin.toggleAttribute("aria-current", false);
      if (m === this.held) pin.setAttribute("aria-current", "true");
      pin.setAttribute("aria-label", this.hands.words(m));
      pin.title = this.hands.words(m);
    }
  }

  /** @param {EventTarget | null} target */
  markOf(target) {
    const pin = target instanceof Element ? target.closest("[data-pin]") : null;
    const name = pin instanceof HTMLElement ? pin.dataset.pin : "";
    return this.hands.marks().find((m) => m.landmark === name) ?? null;
  }

  /** @param {PointerEvent} event @returns {Place} */
  at(event) {
    const seen = this.view.getBoundingClientRect();
    const k = this.scale();
    return this.within((event.clientX - seen.left) / k, (event.clientY - seen.top) / k);
  }

  /** @param {number} x @param {number} y @returns {Place} */
  within(x, y) {
    const b = this.bitmap;
    return b ? { x: Math.max(0, Math.min(b.width, x)), y: Math.max(0, Math.min(b.height, y)) } : { x, y };
  }

  /** @param {PointerEvent} event */
  down(event) {
    if (!this.bitmap || event.button !== 0) return;
    event.preventDefault();
    this.pressed = true;
    this.held = this.markOf(event.target);
    this.board.setPointerCapture(event.pointerId);
    this.move(event);
  }

  /** @param {PointerEvent} event */
  move(event) {
    if (!this.bitmap) return;
    this.cross = this.at(event);
    if (this.pressed && this.held) {
      Object.assign(this.held, this.cross);
      delete this.held.seen;
      this.draw();
    }
    this.look(this.cross, event.pointerType === "touch");
  }

  /** @param {PointerEvent} event */
  up(event) {
    if (!this.pressed) return;
    this.pressed = false;
    this.cross = this.at(event);
    if (this.held) this.hands.moved();
    else this.held = this.hands.place(this.cross.x, this.cross.y);
    this.draw();
    this.pins.get(this.held.landmark)?.focus();
    if (event.pointerType === "touch") this.look(this.held, true);
  }

  leave() {
    if (!this.pressed && !this.board.contains(document.activeElement)) this.loupe.hide();
  }

  /** @param {FocusEvent} event */
  focused(event) {
    if (!this.bitmap) return;
    const mark = this.markOf(event.target);
    this.held = mark;
    this.setPins();
    this.look(mark ?? this.cross, false);
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    const mark = this.markOf(event.target);
    const way = arrows[event.key];
    if (way) {
      const by = event.shiftKey ? 10 : event.altKey ? 0.1 : event.ctrlKey ? 200 : 1;
      this.held = mark;
      this.nudge(way[0] * by, way[1] * by);
    } else if (mark && (event.key === "Delete" || event.key === "Backspace")) {
      this.hands.remove(mark);
      this.held = null;
      this.focus();
    } else if (mark && (event.key === "Escape" || event.key === "Enter")) {
      this.cross = { x: mark.x, y: mark.y };
      this.focus();
    } else if (!mark && event.key === "Enter") {
      this.held = this.hands.place(this.cross.x, this.cross.y);
      this.pins.get(this.held.landmark)?.focus();
    } else return;
    event.preventDefault();
    event.stopPropagation();
  }

  /** Moves the mark that is held, else the cross. @param {number} dx @param {number} dy */
  nudge(dx, dy) {
    if (!this.bitmap) return;
    const from = this.held ?? this.cross;
    const to = this.within(from.x + dx, from.y + dy);
    if (this.held) {
      Object.assign(this.held, to);
      this.hands.moved();
    } else this.cross = to;
    this.look(to, false);
  }

  /** @param {Place} at @param {boolean} finger */
  look(at, finger) {
    if (this.bitmap) this.loupe.show(this.bitmap, at, this.scale(), this.hands.times(), finger);
  }
}

/** @param {CanvasRenderingContext2D} ink @param {number} x @param {number} y @param {number} dx @param {number} dy @param {boolean} fits */
function arrow(ink, x, y, dx, dy, fits) {
  const long = Math.hypot(dx, dy);
  if (long < 1) return;
  const head = Math.min(10, long / 2);
  const turn = Math.atan2(dy, dx);
  const path = new Path2D();
  path.moveTo(x, y);
  path.lineTo(x + dx, y + dy);
  for (const side of [-0.5, 0.5]) {
    path.moveTo(x + dx, y + dy);
    path.lineTo(x + dx - head * Math.cos(turn + side), y + dy - head * Math.sin(turn + side));
  }
  for (const [width, colour] of /** @type {[number, string][]} */ ([[5, "#111"], [2.5, fits ? "#f2c230" : "#ff5f57"]])) {
    ink.lineWidth = width;
    ink.strokeStyle = colour;
    ink.stroke(path);
  }
}
