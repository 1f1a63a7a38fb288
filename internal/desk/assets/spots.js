// @ts-check
// Landmarks as dots on the map of the rink: a tap chooses the nearest one in the list.

const svgNS = "http://www.w3.org/2000/svg";

/** @param {Element} box the map @param {HTMLSelectElement} list the landmarks with their places on it
 * @returns {(marked: Set<string>) => void} shows which are marked, and which is chosen */
export function spots(box, list) {
  const svg = box.querySelector("svg");
  if (!svg) return () => {};
  /** each with its words @type {Map<string, { dot: SVGElement, words: Element }>} */
  const dots = new Map();
  /** @param {HTMLOptionElement} o */
  const place = (o) => ({ x: Number(o.dataset.x), y: Number(o.dataset.y) });
  for (const o of list.options) {
    const dot = svg.appendChild(document.createElementNS(svgNS, "circle"));
    const at = place(o);
    for (const [name, v] of Object.entries({ cx: at.x, cy: at.y, r: 1.1, class: "spot-dot" })) dot.setAttribute(name, String(v));
    dots.set(o.value, { dot, words: dot.appendChild(document.createElementNS(svgNS, "title")) });
  }
  svg.addEventListener("click", (event) => {
    const way = svg.getScreenCTM();
    if (!way) return;
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(way.inverse());
    const off = (/** @type {HTMLOptionElement} */ o) => Math.hypot(place(o).x - at.x, place(o).y - at.y);
    const nearest = Array.from(list.options).reduce((a, b) => (off(b) < off(a) ? b : a));
    list.value = nearest.value;
    list.dispatchEvent(new Event("change", { bubbles: true }));
  });
  return (marked) => {
    for (const o of list.options) {
      const of = dots.get(o.value);
      if (of) of.words.textContent = o.text;
    }
    for (const [name, { dot }] of dots) {
      dot.classList.toggle("marked", marked.has(name));
      dot.classList.toggle("chosen", name === list.value);
      dot.setAttribute("r", name === list.value ? "2.4" : "1.1");
    }
  };
}
