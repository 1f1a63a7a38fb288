// @ts-check
// Arrow keys walk from hole to hole while the focus is on a hole of the map, the
// strip or the row of holes.

/** @type {Record<string, number>} */
const steps = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/**
 * @param {HTMLElement} page
 * @param {(url: string, hole: string) => Promise<void>} pick
 */
export function arrowKeys(page, pick) {
  page.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const at = event.target instanceof Element ? event.target : null;
    if (!at || !at.closest("[data-picks] a, [data-drawing] a")) return;
    const links = Array.from(page.querySelectorAll("[data-picks] a[data-hole]"));
    const now = links.findIndex((link) => link.getAttribute("aria-current") === "true");
    const next = target(event.key, now, links.length);
    if (next === null) return;
    event.preventDefault();
    const link = links[next];
    const url = link.getAttribute("href");
    const hole = link.getAttribute("data-hole");
    if (next !== now && url && hole) void pick(url, hole);
  });
}

/**
 * The place in the row that a key leads to, or null for another key.
 * @param {string} key
 * @param {number} now
 * @param {number} count
 */
function target(key, now, count) {
  if (key === "Home") return 0;
  if (key === "End") return count - 1;
  const step = steps[key];
  return step === undefined ? null : (now + step + count) % count;
}
