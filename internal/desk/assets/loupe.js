// @ts-check
// The magnifier: the pixels round a place of a picture with a cross in their middle. It
// stands beside the pointer, and over a finger that would hide it.

const besideMouse = 28; // CSS pixels
const besideFinger = 48;

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

  /** @param {ImageBitmap} picture @param {{ x: number, y: number }} at @param {number} scale CSS pixels for one of the picture's
   * @param {number} times how often magnified @param {boolean} finger */
  show(picture, at, scale, times, finger) {
    const { glass, board } = this;
    glass.hidden = false;
    const size = glass.offsetWidth;
    const x = at.x * scale;
    const y = at.y * scale;
    let left = x < board.clientWidth / 2 ? x + besideMouse : x - size - besideMouse;
    let top = y - size / 2;
    if (finger || left < 0 || left + size > board.clientWidth) {
      left = x - size / 2;
      top = y - size - besideFinger;
      if (board.getBoundingClientRect().top + top < 0) top = y + besideFinger;
    }
    glass.style.left = `${Math.max(0, Math.min(board.clientWidth - size, left))}px`;
    glass.style.top = `${top}px`;
    const ink = /** @type {CanvasRenderingContext2D} */ (glass.getContext("2d"));
    const w = glass.width;
    const seen = w / times;
    ink.imageSmoothingEnabled = false;
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
