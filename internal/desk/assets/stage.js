// @ts-check
// A frame with its marks, seen whole or nearer, and a magnifier beside the pointer or the
// mark that is moved. Places are in pixels of the picture from its upper left corner, the
// middle of the first pixel at 0.5, 0.5.

import { Loupe } from "./loupe.js";
import { Seen } from "./seen.js";

/** @typedef {import("./framing.js").Mark} Mark */
/** @typedef {import("./seen.js").Place} Place */
/** @typedef {{ marks: () => Mark[], words: (m: Mark) => string, place: (x: number, y: number) => Mark, moved: () => void, remove: (m: Mark) => void }} Hands */

const arrows = /** @type {Record<string, [number, number]>} */ ({ ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] });
const steps = /** @type {Record<string, number>} */ ({ "+": 2, "=": 2, "-": 0.5, 0: 0 }); // of nearness; 0 for the whole
const drawnLonger = 10; // arrows, than what a mark is off by
const still = 3; // CSS pixels that a press may wander before it drags a mark

export class Stage {
  /** @param {HTMLElement} box @param {Hands} hands */
  constructor(box, hands) {
    this.hands = hands;
    this.board = /** @type {HTMLElement} */ (box.querySelector("[data-board]"));
    this.view = /** @type {HTMLCanvasElement} */ (box.querySelector("[data-view]"));
    this.loupe = new Loupe(/** @type {HTMLCanvasElement} */ (box.querySelector("[data-loupe]")), this.board);
    this.seen = new Seen();
    /** @type {ImageBitmap | null} */
    this.bitmap = null;
    /** @type {Place} */
    this.cross = { x: 0, y: 0 };
    /** the mark that hands move @type {Mark | null} */
    this.held = null;
    /** pointers that are down, where on the board @type {Map<number, Place>} */
    this.down = new Map();
    /** the press that sets, drags or picks a mark: where it began, from it to the mark that it drags, whether
     * it has moved, and on which mark it began @type {{ from: Place, grip: Place, drags: boolean, on: Mark | null } | null} */
    this.press = null;
    /** @type {Map<string, HTMLButtonElement>} */
    this.pins = new Map();
    this.board.addEventListener("pointerdown", (e) => this.pressed(e));
    this.board.addEventListener("pointermove", (e) => this.moved(e));
    this.board.addEventListener("pointerup", (e) => this.lifted(e));
    this.board.addEventListener("pointercancel", (e) => this.cancelled(e));
    this.board.addEventListener("pointerleave", () => this.leave());
    this.board.addEventListener("wheel", (e) => this.wheel(e), { passive: false });
    this.board.addEventListener("keydown", (e) => this.key(e));
    this.board.addEventListener("focusin", (e) => this.focused(e));
    this.board.addEventListener("focusout", () => this.loupe.hide());
    new ResizeObserver(() => this.draw()).observe(this.board);
  }

  /** @param {Blob} file */
  async open(file) {
    const next = await createImageBitmap(file);
    this.bitmap?.close();
    this.bitmap = next;
    this.held = null;
    this.cross = { x: next.width / 2, y: next.height / 2 };
    this.seen = new Seen(next.width, next.height);
    this.board.style.maxWidth = `calc(85vh * ${next.width / next.height})`;
    this.board.style.aspectRatio = `${next.width} / ${next.height}`;
  }

  /** Takes the cross to a place, for keys to begin from. @param {Place} p */
  aim(p) {
    this.held = null;
    this.cross = this.seen.within(p);
    this.board.focus();
  }

  draw() {
    const bitmap = this.bitmap;
    const board = this.view.clientWidth;
    if (!bitmap || board === 0) return;
    const wide = Math.round(board * Math.min(devicePixelRatio, 2));
    const high = Math.round((wide * bitmap.height) / bitmap.width);
    if (this.view.width !== wide || this.view.height !== high) Object.assign(this.view, { width: wide, height: high });
    const ink = /** @type {CanvasRenderingContext2D} */ (this.view.getContext("2d"));
    const { x, y, w, h } = this.seen.part();
    ink.imageSmoothingEnabled = wide < 3 * w; // pixels are told apart once they are large
    ink.drawImage(bitmap, x, y, w, h, 0, 0, wide, high);
    const k = wide / w;
    for (const m of this.hands.marks()) if (m.seen) arrow(ink, (m.x - x) * k, (m.y - y) * k, (m.seen[0] - m.x) * drawnLonger * k, (m.seen[1] - m.y) * drawnLonger * k, m.fits !== false);
    this.setPins();
  }

  /** One button a mark, so that Tab goes over them; those that are there stay. */
  setPins() {
    const marks = this.hands.marks();
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
      const { x, y } = this.seen.on(m, this.view.clientWidth);
      pin.style.left = `${x}px`;
      pin.style.top = `${y}px`;
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

  /** Where on the board. @param {MouseEvent} event @returns {Place} */
  on(event) {
    const box = this.view.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  }

  /** @param {Place} on the board @returns {Place} */
  at(on) {
    return this.seen.at(on, this.view.clientWidth);
  }

  /** @param {PointerEvent} event */
  pressed(event) {
    if (!this.bitmap || event.button !== 0) return;
    event.preventDefault();
    const from = this.on(event);
    this.down.set(event.pointerId, from);
    this.board.setPointerCapture(event.pointerId);
    this.press = null;
    if (this.down.size > 1) return this.loupe.hide(); // two fingers move the picture
    const on = this.markOf(event.target);
    const mine = on && (event.pointerType !== "touch" || on === this.held); // a finger covers neighbours: it drags what it picked before
    this.held = mine ? on : null;
    const mark = this.held && this.seen.on(this.held, this.view.clientWidth);
    this.press = { from, grip: mark ? { x: mark.x - from.x, y: mark.y - from.y } : { x: 0, y: 0 }, drags: false, on };
    this.moved(event);
  }

  /** @param {PointerEvent} event */
  moved(event) {
    if (!this.bitmap) return;
    const on = this.on(event);
    const was = this.down.get(event.pointerId);
    if (was && this.down.size > 1) return this.pinch(event.pointerId, was, on);
    if (was) this.down.set(event.pointerId, on);
    else if (event.pointerType === "touch") return;
    const { press } = this;
    if (press) press.drags ||= Math.hypot(on.x - press.from.x, on.y - press.from.y) > still;
    this.cross = this.at(press ? { x: on.x + press.grip.x, y: on.y + press.grip.y } : on);
    if (press?.drags && this.held) {
      Object.assign(this.held, this.cross);
      delete this.held.seen;
      this.draw();
    }
    this.look(this.held && press ? this.held : this.cross, event.pointerType === "touch", true);
  }

  /** Two fingers: nearer as they part, moved as they go. @param {number} id @param {Place} was @param {Place} on */
  pinch(id, was, on) {
    this.down.set(id, on);
    const other = [...this.down].find(([i]) => i !== id)?.[1];
    if (!other) return;
    const far = (/** @type {Place} */ p) => Math.max(1, Math.hypot(p.x - other.x, p.y - other.y));
    const mid = { x: (was.x + other.x) / 2, y: (was.y + other.y) / 2 };
    this.seen.zoom(far(on) / far(was), this.at(mid), this.view.clientWidth);
    const k = this.seen.scale(this.view.clientWidth);
    this.seen.pan((was.x - on.x) / 2 / k, (was.y - on.y) / 2 / k);
    this.draw();
  }

  /** @param {PointerEvent} event */
  lifted(event) {
    this.down.delete(event.pointerId);
    const { press } = this;
    this.press = null;
    if (!press || !this.bitmap) return;
    if (!press.drags && press.on) this.held = press.on;
    else if (!this.held) this.held = this.hands.place(this.cross.x, this.cross.y);
    else this.hands.moved();
    this.draw();
    this.pins.get(this.held.landmark)?.focus({ preventScroll: true });
    this.look(this.held, false, false);
  }

  /** @param {PointerEvent} event */
  cancelled(event) {
    this.down.delete(event.pointerId);
    this.press = null;
  }

  leave() {
    if (!this.press && !this.board.contains(document.activeElement)) this.loupe.hide();
  }

  /** With Ctrl, and by a touchpad's pinch, nearer; of a frame that is near, to and fro. @param {WheelEvent} event */
  wheel(event) {
    if (!this.bitmap || (!event.ctrlKey && this.seen.near === 1)) return;
    event.preventDefault();
    const board = this.view.clientWidth;
    const k = this.seen.scale(board);
    if (event.ctrlKey) this.seen.zoom(Math.exp(-event.deltaY * 0.005), this.at(this.on(event)), board);
    else this.seen.pan(event.deltaX / k, event.deltaY / k);
    this.draw();
  }

  /** @param {FocusEvent} event */
  focused(event) {
    if (!this.bitmap || this.press) return;
    const mark = this.markOf(event.target);
    this.held = mark;
    this.seen.follow(mark ?? this.cross);
    this.draw();
    this.look(mark ?? this.cross, false, false);
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    const mark = this.markOf(event.target);
    const way = arrows[event.key];
    if (way) {
      const by = event.shiftKey ? 10 : event.altKey ? 0.1 : event.ctrlKey ? 200 : 1;
      this.held = mark;
      this.nudge(way[0] * by, way[1] * by);
    } else if (event.key in steps && !event.ctrlKey && !event.metaKey) {
      this.zoom(steps[event.key]);
    } else if (mark && (event.key === "Delete" || event.key === "Backspace")) {
      this.hands.remove(mark);
      this.held = null;
      this.board.focus({ preventScroll: true });
    } else if (mark && (event.key === "Escape" || event.key === "Enter")) {
      this.cross = { x: mark.x, y: mark.y };
      this.board.focus({ preventScroll: true });
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
    const to = this.seen.within({ x: from.x + dx, y: from.y + dy });
    this.seen.follow(to);
    if (this.held) {
      Object.assign(this.held, to);
      this.hands.moved();
    } else {
      this.cross = to;
      this.draw();
    }
    this.look(to, false, false);
  }

  /** Nearer about the mark that is held, else the cross of who works by keys, else the middle; by 0 the whole. @param {number} by */
  zoom(by) {
    if (!this.bitmap) return;
    const about = this.held ?? (document.activeElement === this.board ? this.cross : this.seen.middle);
    if (by === 0) this.seen = new Seen(this.bitmap.width, this.bitmap.height);
    else {
      if (by > 1) this.seen.follow(about);
      this.seen.zoom(by, about, this.view.clientWidth);
    }
    this.draw();
    if (!this.loupe.glass.hidden) this.look(about, false, false);
  }

  /** @param {Place} at @param {boolean} finger @param {boolean} aims it has not come to rest */
  look(at, finger, aims) {
    if (this.bitmap) this.loupe.show(this.bitmap, at, this.seen.on(at, this.view.clientWidth), this.seen.scale(this.view.clientWidth), finger, aims);
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
