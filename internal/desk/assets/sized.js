// @ts-check
// Maps to be looked at only: their words are as large as they must be to be read, at
// any width of the map, and the lesser of two that meet stands aside.

import { onContent } from "./swap.js";
import { tidyWords } from "./words.js";

/** @param {Element} box a map */
function size(box) {
  const svg = box.querySelector("svg");
  const seen = svg?.getBoundingClientRect();
  if (!(box instanceof HTMLElement) || !svg || !seen?.width) return;
  box.style.setProperty("--mm", Math.max(svg.viewBox.baseVal.width / seen.width, svg.viewBox.baseVal.height / seen.height).toFixed(4));
  tidyWords(box);
}

export function sizeWords() {
  const resized = new ResizeObserver((entries) => entries.forEach((e) => size(e.target)));
  onContent(() => document.querySelectorAll(".map:not([data-drawing])").forEach((box) => resized.observe(box)));
  void document.fonts.ready.then(() => document.querySelectorAll(".map:not([data-drawing])").forEach(size));
}
