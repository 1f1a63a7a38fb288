// @ts-check
// The boards of a rink as a closed line: stations, places and what is nearest.
// Metres; x toward end B, y toward the box side; stations run counter-clockwise
// from the bench-side end of the red line.

/**
 * A place on the boards' rink face; (nx, ny) points into the rink.
 * @typedef {{ x: number, y: number, nx: number, ny: number }} Place
 */

export class Boards {
  /**
   * @param {number} length
   * @param {number} width
   * @param {number} radius of the corners
   */
  constructor(length, width, radius) {
    this.a = length / 2 - radius; // half of a long straight
    this.b = width / 2 - radius; // half of an end's straight
    this.r = radius;
    this.arc = (Math.PI * radius) / 2;
    this.perimeter = 4 * this.a + 4 * this.b + 4 * this.arc;
  }

  /** @param {number} s @returns {number} the station in [0, perimeter) */
  wrap(s) {
    return ((s % this.perimeter) + this.perimeter) % this.perimeter;
  }

  /** @param {number} from @param {number} to @returns {number} the shorter way, positive with rising station */
  way(from, to) {
    const d = this.wrap(to - from);
    return d > this.perimeter / 2 ? d - this.perimeter : d;
  }

  /** @param {number} station @returns {Place} */
  at(station) {
    let s = this.wrap(station + this.a); // from the left end of the bench side
    for (let quarter = 0; quarter < 4; quarter++) {
      const straight = quarter % 2 === 0 ? 2 * this.a : 2 * this.b;
      if (s <= straight) return this.turned(quarter, s - straight / 2, quarter % 2 === 0 ? this.b + this.r : this.a + this.r);
      s -= straight;
      if (s <= this.arc || quarter === 3) return this.onArc(quarter, s / this.r);
      s -= this.arc;
    }
    return this.turned(0, 0, this.b + this.r);
  }

  /** A place on a straight, so far along from its middle. @param {number} quarter @param {number} along @param {number} out @returns {Place} */
  turned(quarter, along, out) {
    const dirs = [[1, 0], [0, 1], [-1, 0], [0, -1]];
    const [tx, ty] = dirs[quarter];
    return { x: tx * along + ty * out, y: ty * along - tx * out, nx: -ty, ny: tx };
  }

  /** A place on the arc behind a straight, turned by an angle. @param {number} quarter @param {number} angle @returns {Place} */
  onArc(quarter, angle) {
    const cx = quarter === 0 || quarter === 1 ? this.a : -this.a;
    const cy = quarter === 1 || quarter === 2 ? this.b : -this.b;
    const phi = (quarter - 1) * (Math.PI / 2) + angle;
    return { x: cx + this.r * Math.cos(phi), y: cy + this.r * Math.sin(phi), nx: -Math.cos(phi), ny: -Math.sin(phi) };
  }

  /** @param {number} x @param {number} y @returns {number} the station nearest to a point */
  nearest(x, y) {
    const { a, b, r, arc } = this;
    const dx = Math.abs(x) - a;
    const dy = Math.abs(y) - b;
    if (dx > 0 && dy > 0) return this.cornerStation(x, y);
    const onSide = dx <= 0 && (dy > 0 || b + r - Math.abs(y) <= a + r - Math.abs(x));
    const along = onSide ? Math.min(Math.max(x, -a), a) : Math.min(Math.max(y, -b), b);
    if (onSide) return this.wrap(y < 0 ? along : 2 * a + 2 * arc + 2 * b - along);
    return this.wrap(x > 0 ? a + arc + b + along : 3 * a + 3 * arc + 3 * b - along);
  }

  /** @param {number} x @param {number} y */
  cornerStation(x, y) {
    const { a, b, r, arc } = this;
    const phi = Math.atan2(Math.abs(y) - b, Math.abs(x) - a) * r; // way from the end's straight
    if (x > 0) return this.wrap(y < 0 ? a + arc - phi : a + arc + 2 * b + phi);
    return this.wrap(y > 0 ? 3 * a + 3 * arc + 2 * b - phi : 3 * a + 3 * arc + 4 * b + phi);
  }
}
