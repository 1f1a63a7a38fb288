// @ts-check
// The row of tools: what only works with a script is shown, a tap on the boards
// adds a hole while that box is open, and the paper page prints itself.

import { metresPerPixel, placeAt } from "./drawing.js";
import { snap } from "./fitting.js";
import { plan, said } from "./plan.js";
import { save } from "./save.js";
import { onContent } from "./swap.js";
import { panned } from "./view.js";

let fine = false; // kept from page to page

/** @param {HTMLElement} page */
export function tools(page) {
  onContent(() => {
    for (const e of page.querySelectorAll("[data-script-only]")) e.removeAttribute("hidden");
    const box = page.querySelector("[data-fine]");
    if (box instanceof HTMLInputElement) box.checked = fine;
  });
  page.addEventListener("change", (event) => {
    const box = event.target;
    if (box instanceof HTMLInputElement && box.hasAttribute("data-fine")) fine = box.checked;
  });
  page.addEventListener("click", (event) => {
    const at = event.target instanceof Element ? event.target : null;
    if (at && at.closest("[data-print]")) window.print();
    const part = at?.closest(".parts a[href^='#']");
    if (part) goTo(part, event);
    const box = at && at.closest("[data-drawing]");
    if (!at || !(box instanceof HTMLElement) || at.closest("a") || !page.querySelector("details[data-adding][open]") || panned()) return;
    void add(box, event.clientX, event.clientY, event.shiftKey);
  });
}

/** Shows a part of the inspector; where that scrolls by itself the page stays. @param {Element} link @param {Event} event */
function goTo(link, event) {
  const inspector = link.closest(".inspector");
  const part = inspector?.querySelector(link.getAttribute("href") ?? "");
  if (!inspector || !part || inspector.scrollHeight <= inspector.clientHeight) return;
  event.preventDefault();
  inspector.scrollTop += part.getBoundingClientRect().top - inspector.getBoundingClientRect().top - 48;
}

/** @param {HTMLElement} box @param {number} x @param {number} y @param {boolean} shift */
async function add(box, x, y, shift) {
  const now = await plan();
  const at = placeAt(box, now, x, y);
  const size = { id: "", station_m: 0, height_m: 1.5, hole_width_mm: 140, hole_height_mm: 115, state: "planned" };
  const near = fine || shift ? null : snap(now, size, at.station, Math.min(9 * metresPerPixel(box), 0.6));
  const name = document.querySelector('details[data-adding] input[name="as"]');
  await save({
    url: `/arena/${encodeURIComponent(said("arena"))}/holes`,
    hole: "",
    fields: new URLSearchParams({
      base: said("base"), back: said("state"), act: "add",
      station_m: (near ? near.station_m : at.station).toFixed(6),
      as: name instanceof HTMLInputElement ? name.value : "",
    }),
  });
}
