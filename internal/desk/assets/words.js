// @ts-check
// Words on the drawings are as large as they must be to be read, so they may meet: the
// lesser of two that do stands aside until the view is nearer.

/** The words in the order of their weight: the picked hole's name first. */
const weight = [".hole-label", ".side-text, .zone-text", ".hole-note", ".glass-text", ".station-text"];

/** What stands aside on each drawing, by [key]; kept for words that are drawn anew while a hole moves. @type {WeakMap<Element, Set<string>>} */
const aside = new WeakMap();

/** What tells a word from others that read the same. @param {Element} text */
function key(text) {
  const of = text.closest("[data-hole], [data-window], [data-zone], [data-alternative]");
  return `${text.getAttribute("class")} ${of ? JSON.stringify({ ...(/** @type {HTMLElement} */ (of).dataset), station: "" }) : ""} ${text.textContent}`;
}

/** @param {HTMLElement} box a drawing */
export function tidyWords(box) {
  const hidden = new Set();
  /** @type {DOMRect[]} */
  const taken = [];
  const ranked = weight.flatMap((selector) => Array.from(box.querySelectorAll(selector)));
  const picked = ranked.filter((text) => text.closest("[data-hole]")?.querySelector(".picked"));
  const all = new Set([...picked, ...ranked]);
  const edge = (box.querySelector("svg") ?? box).getBoundingClientRect();
  const cut = (/** @type {DOMRect} */ r) => box.matches(".map") && (r.left < edge.left || r.right > edge.right);
  // Read all, then write all: one layout instead of many.
  for (const text of all) {
    const r = text.getBoundingClientRect();
    if (cut(r) || taken.some((t) => r.left < t.right && t.left < r.right && r.top < t.bottom - 2 && t.top < r.bottom - 2)) hidden.add(key(text));
    else taken.push(r);
  }
  aside.set(box, hidden);
  for (const text of all) text.classList.toggle("aside", hidden.has(key(text)));
}

/** Words of a part that was drawn anew stand where they stood. @param {Element} part */
export function keepAside(part) {
  const box = part.closest("[data-drawing]");
  const hidden = box && aside.get(box);
  if (!hidden || hidden.size === 0) return;
  for (const text of part.querySelectorAll("text")) text.classList.toggle("aside", hidden.has(key(text)));
}
