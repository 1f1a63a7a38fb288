// @ts-check
// A newcomer's three steps, one at a time. They stand in the page, cover nothing
// and hold no focus; without this module all three are shown at once.

import { onContent } from "./swap.js";

let step = 0; // kept while the page's content changes

/** @param {HTMLElement} page */
export function tour(page) {
  onContent(() => show(page));
  page.addEventListener("click", (event) => {
    const at = event.target instanceof Element ? event.target : null;
    const by = at?.closest("[data-tour-next]") ? 1 : at?.closest("[data-tour-back]") ? -1 : 0;
    if (!by) return;
    step += by;
    show(page);
  });
  page.addEventListener("keydown", (event) => {
    const box = event.target instanceof Element ? event.target.closest("[data-tour]") : null;
    if (event.key === "Escape" && box) box.querySelector("form")?.requestSubmit();
  });
}

/** @param {HTMLElement} page */
function show(page) {
  for (const e of page.querySelectorAll(".tour-here")) e.classList.remove("tour-here");
  const box = page.querySelector("[data-tour]");
  if (!box) return;
  const steps = Array.from(box.querySelectorAll("[data-step-part]"));
  step = Math.min(Math.max(step, 0), steps.length - 1);
  box.classList.add("stepping");
  steps.forEach((li, i) => {
    li.classList.toggle("now", i === step);
    if (i === step) li.setAttribute("aria-current", "step");
    else li.removeAttribute("aria-current");
  });
  page.querySelector(`#${steps[step].getAttribute("data-step-part")}`)?.classList.add("tour-here");
  const back = box.querySelector("[data-tour-back]");
  const next = box.querySelector("[data-tour-next]");
  if (!(back instanceof HTMLButtonElement && next instanceof HTMLButtonElement)) return;
  const held = [back, next].find((button) => button === document.activeElement);
  back.disabled = step === 0;
  next.disabled = step === steps.length - 1;
  if (held?.disabled) (held === next ? back : next).focus(); // the focus must not fall off the page
}
