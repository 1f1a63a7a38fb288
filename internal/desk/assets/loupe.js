// @ts-check
// The magnifier: the pixels round a place of a picture with a cross in their middle. It
// stands beside the pointer, and over a finger that would hide it. Who aims sees what is
// around; once it has come to rest the pixels are told apart.

/** @typedef {import("./seen.js").Place} Place */

const besideMouse = 28; // CSS pixels
const besideFinger = 48;
const atRest = 6; // CSS pixels for one of the picture
const aiming = 5; // times what the board shows

export class Loupe {
  /** @param {HTMLCanvasElement} glass @param {HTMLElement} board */
  constructor(glass, board) {
    this.glass = glass;
    this.board = board;
    glass.hidden = true;
  }

  hide() {
    this.glass.hidden = true;
  }

  /** @param {ImageBitmap} picture @param {Place} at @param {Place} on where that is on the board @param {number} scale CSS pixels for one of the picture's there
   * @param {boolean} finger @param {boolean} aims */
  show(picture, at, on, scale, finger, aims) {
    const { glass, board } = this;
    const magnified = aims ? Math.min(atRest, aiming * scale) : atRest;
    glass.hidden = scale >= atRest;
    if (glass.hidden) return;
    const size = glass.offsetWidth;
    const { x, y } = on;
    let left = x < board.clientWidth / 2 ? x + besideMouse : x - size - besideMouse;
    let top = Math.min(y - size / 2, board.clientHeight - size);
    if (finger || left < 0 || left + size > board.clientWidth) {
      left = x - size / 2;
      top = y - size - besideFinger;
      if (board.getBoundingClientRect().top + top < 0) top = y + besideFinger;
    }
    glass.style.left = `${Math.max(0, Math.min(board.clientWidth - size, left))}px`;
    glass.style.top = `${top}px`;
    const ink = /** @type {CanvasRenderingContext2D} */ (glass.getContext("2d"));
    const w = glass.width;
    const seen = size / magnified;
    ink.imageSmoothingEnabled = magnified < 2;
    ink.fillStyle = "#0b0e12";
    ink.fillRect(0, 0, w, w);
    ink.drawImage(picture, at.x - seen / 2, at.y - seen / 2, seen, seen, 0, 0, w, w);
    const path = new Path2D(`M${w / 2} 0V${w / 2 - 6}M${w / 2} ${w / 2 + 6}V${w}M0 ${w / 2}H${w / 2 - 6}M${w / 2 + 6} ${w / 2}H${w}`);
    for (const [width, colour] of /** @type {[number, string][]} */ ([[3, "#111"], [1, "#f2c230"]])) {
      ink.lineWidth = width;
      ink.strokeStyle = colour;
      ink.stroke(path);
    }
    glass.dataset.at = `${at.x.toFixed(1)} ${at.y.toFixed(1)}`;
  }
}
