// @ts-check
// The two drawings of a plan: from a pointer to a place on the boards, and moving
// a hole's mark at once, ahead of the drawing that the server makes.

/** @typedef {import("./plan.js").Plan} Plan */

/** @param {string} name "map" or "strip" @returns {HTMLElement | null} */
export function drawing(name) {
  return document.querySelector(`[data-drawing="${name}"]`);
}

/** @param {HTMLElement} box @param {string} name */
function number(box, name) {
  return Number(box.dataset[name]);
}

/**
 * Where a point of the window lies on a drawing, in millimetres of the sheet.
 * @param {HTMLElement} box @param {number} clientX @param {number} clientY
 */
export function onSheet(box, clientX, clientY) {
  const svg = box.querySelector("svg");
  const grid = svg && svg.getScreenCTM();
  if (!grid) return { x: 0, y: 0 };
  return new DOMPoint(clientX, clientY).matrixTransform(grid.inverse());
}

/** @param {HTMLElement} box @returns {number} metres of boards for a pixel of the window */
export function metresPerPixel(box) {
  const svg = box.querySelector("svg");
  const grid = svg && svg.getScreenCTM();
  return grid ? 1 / (grid.a * number(box, "scale")) : 0.1;
}

/**
 * The mark of a hole that a press means: of those whose rings meet under a finger, the nearest.
 * @param {Element} target what was pressed @param {number} x @param {number} y
 * @returns {Element | null}
 */
export function markAt(target, x, y) {
  const mark = target.closest('[data-layer="holes"] [data-hole]');
  const box = mark?.closest("[data-drawing]");
  if (!mark || !box || !target.matches(".hit")) return mark;
  const away = (/** @type {Element} */ e) => {
    const r = (e.querySelector(".hit") ?? e).getBoundingClientRect();
    return Math.hypot(r.left + r.width / 2 - x, r.top + r.height / 2 - y);
  };
  return Array.from(box.querySelectorAll('[data-layer="holes"] [data-hole]')).reduce((best, e) => (away(e) < away(best) ? e : best), mark);
}

/**
 * The place on the boards that a pointer is at; on the map the height is not told.
 * @param {HTMLElement} box @param {Plan} plan @param {number} clientX @param {number} clientY
 * @returns {{ station: number, height: number | null }}
 */
export function placeAt(box, plan, clientX, clientY) {
  const p = onSheet(box, clientX, clientY);
  const scale = number(box, "scale");
  if (box.dataset.drawing === "strip") {
    const along = (p.x - number(box, "left")) / scale;
    return { station: plan.boards.wrap(Math.min(Math.max(along, 0), plan.boards.perimeter - 0.001)), height: (number(box, "ice") - p.y) / scale };
  }
  return { station: plan.boards.nearest((p.x - number(box, "x")) / scale, (number(box, "y") - p.y) / scale), height: null };
}

/**
 * Where a hole's mark stands on a drawing, in millimetres of the sheet.
 * @param {HTMLElement} box @param {Plan} plan @param {number} station @param {number} height
 */
export function spot(box, plan, station, height) {
  const scale = number(box, "scale");
  if (box.dataset.drawing === "strip") {
    return { x: number(box, "left") + scale * station, y: number(box, "ice") - scale * height, turn: 0 };
  }
  const at = plan.boards.at(station);
  const out = number(box, "out");
  return {
    x: number(box, "x") + scale * at.x - out * at.nx,
    y: number(box, "y") - scale * at.y + out * at.ny,
    turn: (Math.atan2(at.ny, -at.nx) * 180) / Math.PI,
  };
}

/**
 * Moves a hole's mark on both drawings to a place, from where it was drawn.
 * @param {Plan} plan @param {string} hole @param {number} station @param {number} height
 */
export function moveMark(plan, hole, station, height) {
  for (const name of ["map", "strip"]) {
    const box = drawing(name);
    const mark = box && box.querySelector(`[data-layer="holes"] [data-hole="${CSS.escape(hole)}"]`);
    if (!box || !mark) continue;
    const drawnAt = Number(mark.getAttribute("data-station"));
    const drawnHigh = Number(mark.getAttribute("data-height") ?? height);
    const from = spot(box, plan, drawnAt, drawnHigh);
    const to = spot(box, plan, station, height);
    mark.setAttribute("transform", `translate(${(to.x - from.x).toFixed(3)} ${(to.y - from.y).toFixed(3)})`);
  }
}

/**
 * Lays the guide at the place that a hole snaps to, or takes it away.
 * @param {Plan} plan @param {number | null} station
 */
export function showGuide(plan, station) {
  for (const name of ["map", "strip"]) {
    const box = drawing(name);
    const guide = box && box.querySelector("[data-guide]");
    if (!box || !guide) continue;
    guide.classList.toggle("on", station !== null);
    if (station === null) continue;
    const at = spot(box, plan, station, 0);
    guide.setAttribute("transform", name === "map" ? `translate(${at.x.toFixed(2)} ${at.y.toFixed(2)}) rotate(${at.turn.toFixed(2)})` : `translate(${at.x.toFixed(2)} 0)`);
  }
}
