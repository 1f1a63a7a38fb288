// @ts-check
// Marking on the map of the survey: a tap, or a cross moved by the arrow keys, tells
// a place on the boards or on the ice, which goes into the form below as text. The
// form is saved as any other; without this module its places are typed.

import { Boards } from "./boards.js";
import { onSheet } from "./drawing.js";

const svgNS = "http://www.w3.org/2000/svg";

/** @param {HTMLElement} root the element with the map and both forms */
export function marking(root) {
  const board = root.querySelector("[data-board]");
  const svg = board && board.querySelector("svg");
  if (!(board instanceof HTMLElement) || !svg) return;
  /** @param {string} name */
  const number = (name) => Number(root.dataset[name]);
  const boards = new Boards(number("length"), number("wide"), number("radius"));
  const imperial = "imperial" in root.dataset;
  const layer = svg.appendChild(document.createElementNS(svgNS, "g"));
  layer.setAttribute("class", "marked");
  const said = root.querySelector("[data-said]");
  /** @type {{ x: number, y: number } | null} */
  let cross = null;
  /** @type {number[]} */
  let ends = [];

  /** @param {string} name @param {Record<string, number | string>} values */
  const draw = (name, values) => {
    const e = document.createElementNS(svgNS, name);
    for (const [key, v] of Object.entries(values)) e.setAttribute(key, String(v));
    return layer.appendChild(e);
  };
  /** @param {number} x @param {number} y */
  const onMap = (x, y) => ({ x: number("x") + x * number("scale"), y: number("y") - y * number("scale") });
  const mode = () => root.querySelector('[name="mode"]:checked')?.getAttribute("value") ?? "zone";
  /** @param {string} form @param {string} field @param {string} text */
  const fill = (form, field, text) => {
    const input = root.querySelector(`[data-for="${form}"] [name="${field}"]`);
    if (input instanceof HTMLInputElement) input.value = text;
  };
  /** @param {string} text */
  const say = (text) => {
    if (said) said.textContent = text;
  };

  const redraw = () => {
    layer.replaceChildren();
    for (const [x, y, lux] of JSON.parse(root.dataset.readings ?? "[]")) {
      const at = onMap(x, y);
      const dot = draw("circle", { cx: at.x, cy: at.y, r: 1.3, class: "marked-light" });
      dot.appendChild(document.createElementNS(svgNS, "title")).textContent = `${lux} lx`;
    }
    for (const s of ends) {
      const p = boards.at(s);
      const at = onMap(p.x, p.y);
      draw("circle", { cx: at.x, cy: at.y, r: 1.8, class: "marked-end" });
    }
    if (ends.length === 2) {
      const way = boards.wrap(ends[1] - ends[0]);
      const points = Array.from({ length: 61 }, (_, k) => boards.at(ends[0] + (way * k) / 60)).map((p) => onMap(p.x, p.y));
      draw("polyline", { points: points.map((p) => `${p.x},${p.y}`).join(" "), class: "marked-way" });
    }
    if (cross) {
      const at = onMap(cross.x, cross.y);
      draw("path", { d: `M${at.x - 3} ${at.y}h6M${at.x} ${at.y - 3}v6`, class: "marked-cross" });
    }
  };

  const zone = () => {
    fill("zone", "from", ends.length > 0 ? length(ends[0], imperial) : "");
    fill("zone", "to", ends.length > 1 ? length(ends[1], imperial) : "");
    if (ends.length === 1) return say(`From station ${length(ends[0], imperial)}. Mark where the zone ends, along rising stations.`);
    say(`From station ${length(ends[0], imperial)} to ${length(ends[1], imperial)}, ${length(boards.wrap(ends[1] - ends[0]), imperial)} of boards. Say what it is used for, and save it.`);
  };

  /** @param {number} x @param {number} y */
  const mark = (x, y) => {
    cross = { x, y };
    if (mode() === "light") {
      fill("light", "x", length(x, imperial));
      fill("light", "y", length(y, imperial));
      say(`${length(x, imperial)} along, ${length(y, imperial)} across. Write what the meter said, and save it.`);
    } else {
      ends = ends.length === 1 ? [ends[0], boards.nearest(x, y)] : [boards.nearest(x, y)];
      zone();
    }
    redraw();
  };

  const show = () => {
    for (const form of root.querySelectorAll("[data-for]")) form.toggleAttribute("hidden", form.getAttribute("data-for") !== mode());
  };
  root.addEventListener("change", show);
  board.addEventListener("click", (event) => {
    const p = onSheet(board, event.clientX, event.clientY);
    mark((p.x - number("x")) / number("scale"), (number("y") - p.y) / number("scale"));
  });
  board.addEventListener("keydown", (event) => {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
    if (event.key === "Enter" && cross) mark(cross.x, cross.y);
    else if (way) {
      const step = (imperial ? 0.3048 : 0.25) * (event.shiftKey ? 10 : 1);
      const at = cross ?? { x: 0, y: 0 };
      cross = { x: clamp(at.x + way[0] * step, number("length") / 2), y: clamp(at.y + way[1] * step, number("wide") / 2) };
      say(`Cross at ${length(cross.x, imperial)} along, ${length(cross.y, imperial)} across, station ${length(boards.nearest(cross.x, cross.y), imperial)}.`);
      redraw();
    } else return;
    event.preventDefault();
  });
  const swap = root.querySelector("[data-swap]");
  swap?.removeAttribute("hidden");
  swap?.addEventListener("click", () => {
    if (ends.length < 2) return say("Mark both ends of the zone first.");
    ends.reverse();
    zone();
    redraw();
  });
  show();
  redraw();
}

/** @param {number} v @param {number} most */
function clamp(v, most) {
  return Math.min(Math.max(v, -most), most);
}

/**
 * A length as a document takes it, to the inch or the centimetre.
 * @param {number} metres @param {boolean} imperial
 */
function length(metres, imperial) {
  if (!imperial) return `${(Math.round(metres * 100) / 100).toString()} m`;
  const inches = Math.round(Math.abs(metres) / 0.0254);
  const sign = metres < 0 && inches > 0 ? "-" : "";
  const feet = Math.floor(inches / 12);
  return `${sign}${feet ? `${feet} ft ` : ""}${inches % 12 || !feet ? `${inches % 12} in` : ""}`.trim();
}
