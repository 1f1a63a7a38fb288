// @ts-check
// Going to another state of the page without loading it whole: the server's page
// is fetched and its content put in place, so that scroll, focus and the way back
// are kept. Links and forms work the same without this module.

import { said } from "./plan.js";
import { known, sayState } from "./say.js";
import { showPickedOnStrip } from "./strip.js";

let latest = 0;
known(verdict());
/** @type {(() => void)[]} */
const after = [];

/** @param {() => void} work done on the page now and after each change of its content */
export function onContent(work) {
  after.push(work);
  work();
}

/**
 * @param {string} url
 * @param {string} hole which hole the focus shall be on; ""
 * @param {boolean} remember whether the way back shall lead here
 */
export async function go(url, hole, remember) {
  await show(fetch(url, { credentials: "same-origin" }), hole, remember, () => location.assign(url)); // the browser shows what is wrong
}

/**
 * Puts the page that answers a question in place of this one.
 * @param {Promise<Response>} asked @param {string} hole @param {boolean} remember
 * @param {() => void} otherwise what to do when no page comes
 */
export async function show(asked, hole, remember, otherwise) {
  const turn = ++latest;
  const answer = await asked.catch(() => null);
  const text = answer && (answer.headers.get("Content-Type") ?? "").startsWith("text/html") ? await answer.text() : null;
  if (text === null) {
    otherwise();
    return;
  }
  if (turn !== latest) return; // a later change overtook this one
  replace(new DOMParser().parseFromString(text, "text/html"), hole);
  if (remember && answer && answer.ok) {
    const to = new URL(answer.url);
    const path = to.pathname + to.search;
    if (path === location.pathname + location.search) history.replaceState({ hole }, "", path);
    else history.pushState({ hole }, "", path);
  }
  tell();
}

function verdict() {
  return document.querySelector('[data-part="verdict"]')?.textContent?.trim() ?? "";
}

/** Says what the page shows now. */
function tell() {
  if (document.querySelector("[data-message], [data-conflict]")) return; // an alert speaks for itself
  sayState(document.querySelector('[data-part="readout"]')?.textContent?.trim() ?? "", verdict());
}

/** @param {Document} other @param {string} hole */
function replace(other, hole) {
  const page = document.querySelector("main");
  const next = other.querySelector("main");
  if (!page || !next) return;
  const focused = document.activeElement instanceof Element ? document.activeElement : null;
  const key = focused && page.contains(focused) ? keyOf(focused) : "";
  const left = page.querySelector('[data-drawing="strip"]')?.scrollLeft ?? 0;
  const open = page.querySelector("details[data-adding][open]") !== null;
  page.replaceChildren(...Array.from(next.childNodes, (node) => document.importNode(node, true)));
  const strip = page.querySelector('[data-drawing="strip"]');
  if (strip) strip.scrollLeft = left;
  if (open && page.querySelector("[data-message]")) page.querySelector("details[data-adding]")?.setAttribute("open", "");
  document.title = other.title;
  for (const work of after) work();
  refocus(page, key, hole || (new URLSearchParams(said("state")).get("hole") ?? ""));
  showPickedOnStrip(page);
}

/** @param {Element} e @returns {string} a selector that finds the same control on the next page */
function keyOf(e) {
  if (e.closest("[data-picks]")) return "[data-picks] [data-hole=HOLE]";
  const box = e.closest("[data-drawing]");
  if (box) return `[data-drawing="${box.getAttribute("data-drawing")}"]` + (e === box ? "" : ' [data-layer="holes"] [data-hole=HOLE]');
  if (e instanceof HTMLButtonElement && e.name === "act") return `button[name="act"][value="${e.value}"]`;
  if (e.hasAttribute("data-none")) return "[data-none]";
  if (e.closest("[data-go]")) return "[data-picks] [data-hole=HOLE]";
  if (e.hasAttribute("data-lens") || e.hasAttribute("data-heat-switch")) return e.hasAttribute("data-lens") ? "[data-lens][aria-current]" : "[data-heat-switch]";
  return e.tagName === "SUMMARY" ? "details[data-adding] summary" : e.closest(".units") ? ".units [aria-current]" : "";
}

/** @param {HTMLElement} page @param {string} key @param {string} hole */
function refocus(page, key, hole) {
  if (key === "") return;
  const found = page.querySelector(key.replace("HOLE", `"${CSS.escape(hole)}"`));
  const usable = found && !(found instanceof HTMLButtonElement && found.disabled) ? found : page.querySelector("[data-message], [data-conflict] ~ form button, [data-picks] [aria-current]");
  const target = usable && (usable.closest("a") ?? usable);
  if (target instanceof HTMLElement || target instanceof SVGElement) target.focus({ preventScroll: true });
}
