// @ts-check
// Maps to be looked at only: their words are as large as they must be to be read, at
// any width of the map, and the lesser of two that meet stands aside.

import { onContent } from "./swap.js";
import { tidyWords } from "./words.js";

/** How much wider than drawn a map may be shown, so that no word is cut at its ends. */
const widest = 1 / 4;

/** @param {Element} box a map */
function size(box) {
  const svg = box.querySelector("svg");
  if (!(box instanceof HTMLElement) || !svg) return;
  const [x, y, w, h] = (svg.dataset.whole ??= svg.getAttribute("viewBox") ?? "").split(" ").map(Number);
  let more = 0;
  for (let turn = 0; turn < 4; turn++) { // words grow with the room that is made for them
    svg.setAttribute("viewBox", `${x - more} ${y} ${w + 2 * more} ${h}`);
    const seen = svg.getBoundingClientRect();
    if (!seen.width) return;
    const mm = Math.max((w + 2 * more) / seen.width, h / seen.height);
    box.style.setProperty("--mm", mm.toFixed(4));
    const cut = Math.max(0, ...Array.from(svg.querySelectorAll("text"), (text) => text.getBoundingClientRect()).map((r) => Math.max(seen.left - r.left, r.right - seen.right)));
    if (!cut || turn === 3) break;
    more += 1.1 * mm * cut;
    if (2 * more > widest * w) more = 0;
  }
  tidyWords(box);
}

export function sizeWords() {
  const resized = new ResizeObserver((entries) => entries.forEach((e) => size(e.target)));
  onContent(() => document.querySelectorAll(".map:not([data-drawing])").forEach((box) => resized.observe(box)));
  void document.fonts.ready.then(() => document.querySelectorAll(".map:not([data-drawing])").forEach(size));
}
