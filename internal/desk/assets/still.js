// @ts-check
// While a hole is in the hand nothing on the page may jump: what follows the hole
// keeps the height that it had.

/** @returns {HTMLElement[]} */
function parts() {
  return Array.from(document.querySelectorAll("[data-part]"));
}

export function freeze() {
  // Read all, then write all: one layout instead of many.
  const heights = parts().map((part) => /** @type {const} */ ([part, part.getBoundingClientRect().height]));
  for (const [part, height] of heights) {
    if (getComputedStyle(part).display === "inline") continue;
    part.style.height = `${height}px`;
    part.style.overflow = "auto";
  }
}

export function thaw() {
  for (const part of parts()) {
    part.style.height = "";
    part.style.overflow = "";
  }
}
