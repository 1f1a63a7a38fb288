// @ts-check
// The boards strip is wider than most screens: bring the picked hole into view.

/** @param {HTMLElement} page */
export function showPickedOnStrip(page) {
  const strip = page.querySelector('[data-drawing="strip"]');
  const picked = strip && strip.querySelector(".picked, [aria-current]");
  if (!(strip instanceof HTMLElement) || !picked) return;
  const frame = strip.getBoundingClientRect();
  const mark = picked.getBoundingClientRect();
  const off = mark.left + mark.width / 2 - (frame.left + frame.width / 2);
  if (Math.abs(off) < frame.width / 3) return; // in view already: do not move what is looked at
  strip.scrollLeft += off;
}
