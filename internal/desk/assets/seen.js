// @ts-check
// What a board shows of a picture: the whole, or a part of it nearer. Places are in pixels
// of the picture from its upper left corner, those of the board in CSS pixels from its own.

/** @typedef {{ x: number, y: number }} Place */

const nearest = 10; // CSS pixels for one of the picture

export class Seen {
  /** @param {number} [wide] @param {number} [high] */
  constructor(wide = 1, high = 1) {
    this.wide = wide;
    this.high = high;
    this.near = 1;
    /** what stands in the middle @type {Place} */
    this.middle = { x: wide / 2, y: high / 2 };
  }

  /** The part that is seen: its corner and its size. */
  part() {
    const w = this.wide / this.near;
    const h = this.high / this.near;
    return { x: this.middle.x - w / 2, y: this.middle.y - h / 2, w, h };
  }

  /** CSS pixels for a pixel of the picture, on a board so wide. @param {number} board */
  scale(board) {
    return (board * this.near) / this.wide;
  }

  /** Where a place lies on a board so wide. @param {Place} p @param {number} board @returns {Place} */
  on(p, board) {
    const { x, y } = this.part();
    const k = this.scale(board);
    return { x: (p.x - x) * k, y: (p.y - y) * k };
  }

  /** Which place is seen there on a board so wide. @param {Place} p @param {number} board @returns {Place} */
  at(p, board) {
    const { x, y } = this.part();
    const k = this.scale(board);
    return this.within({ x: x + p.x / k, y: y + p.y / k });
  }

  /** The place of the picture that is next to one. @param {Place} p @returns {Place} */
  within({ x, y }) {
    return { x: clamp(x, 0, this.wide), y: clamp(y, 0, this.high) };
  }

  /** Goes nearer by a factor; a place stays where it is seen. @param {number} by @param {Place} about @param {number} board */
  zoom(by, about, board) {
    const was = this.near;
    this.near = clamp(was * by, 1, Math.max(1, (nearest * this.wide) / board));
    const k = was / this.near;
    this.look({ x: about.x + (this.middle.x - about.x) * k, y: about.y + (this.middle.y - about.y) * k });
  }

  /** Takes a place to the middle, as far as the picture reaches. @param {Place} p */
  look(p) {
    const { w, h } = this.part();
    this.middle = { x: clamp(p.x, w / 2, this.wide - w / 2), y: clamp(p.y, h / 2, this.high - h / 2) };
  }

  /** Moves the picture under the board, pixels of the picture. @param {number} dx @param {number} dy */
  pan(dx, dy) {
    this.look({ x: this.middle.x + dx, y: this.middle.y + dy });
  }

  /** Has a place in sight. @param {Place} p */
  follow(p) {
    const { x, y, w, h } = this.part();
    if (p.x < x || p.x > x + w || p.y < y || p.y > y + h) this.look(p);
  }
}

/** @param {number} v @param {number} least @param {number} most */
const clamp = (v, least, most) => Math.max(least, Math.min(most, v));
