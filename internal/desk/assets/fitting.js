// @ts-check
// Where a hole can stand: wholly inside a pane; and what it likes to stand at.

/** @typedef {import("./plan.js").Plan} Plan */
/** @typedef {import("./plan.js").Hole} Hole */

/** A hole keeps this far from a pane's edge, in metres: the file refuses less than touching. */
const clearance = 0.004;

/**
 * The place nearest to the one wished for at which the hole lies inside a pane.
 * @param {Plan} plan
 * @param {Hole} hole
 * @param {number} station
 * @param {number} height
 * @returns {{ station: number, height: number }}
 */
export function inside(plan, hole, station, height) {
  const half = hole.hole_width_mm / 2000 + clearance;
  const tall = hole.hole_height_mm / 2000 + clearance;
  let best = { station, height };
  let least = Infinity;
  for (const pane of plan.panes) {
    const from = pane.from_m + half;
    const to = pane.to_m - half;
    if (to < from) continue;
    const off = plan.boards.way((from + to) / 2, station);
    const along = Math.min(Math.max(off, (from - to) / 2), (to - from) / 2);
    const cost = Math.abs(off - along);
    if (cost >= least) continue;
    least = cost;
    const low = plan.top + tall;
    const high = plan.top + pane.height_m - tall;
    best = { station: plan.boards.wrap((from + to) / 2 + along), height: high < low ? height : Math.min(Math.max(height, low), high) };
  }
  return best;
}

/**
 * The landmark or pane's middle that a station snaps to, or null.
 * @param {Plan} plan
 * @param {Hole} hole
 * @param {number} station
 * @param {number} reach metres
 */
export function snap(plan, hole, station, reach) {
  for (const kind of ["landmark", "pane"]) {
    let best = null;
    let least = reach;
    for (const s of plan.snaps) {
      if (s.kind !== kind) continue;
      const off = Math.abs(plan.boards.way(s.station_m, station));
      if (off > least) continue;
      const there = inside(plan, hole, s.station_m, hole.height_m);
      if (Math.abs(plan.boards.way(there.station, s.station_m)) > 0.001) continue; // an edge stands there
      best = s;
      least = off;
    }
    if (best) return best;
  }
  return null;
}

/** @param {import("./plan.js").Snap} s @returns {string} what it is, in words */
export function snapWords(s) {
  return s.kind === "pane" ? `at the middle of pane ${s.name}` : `at ${s.name.replace(/-(line|top|bottom)$/, " $1")}`;
}

/**
 * The middle of the next pane to one side.
 * @param {Plan} plan @param {Hole} hole @param {number} station @param {number} way 1 or -1
 */
export function nextPane(plan, hole, station, way) {
  let best = station;
  let least = Infinity;
  for (const pane of plan.panes) {
    if (pane.gate || (pane.to_m - pane.from_m) * 1000 <= hole.hole_width_mm) continue;
    const middle = plan.boards.wrap((pane.from_m + pane.to_m) / 2);
    const off = plan.boards.wrap((middle - station) * way);
    if (off > 0.01 && off < least) {
      least = off;
      best = middle;
    }
  }
  return best;
}
