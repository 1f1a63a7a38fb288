// @ts-check
// Picking a hole without loading the whole page: fetch the hole's own address
// and put its content in place, so that scroll, focus and the way back are kept.

import { showPickedOnStrip } from "./strip.js";

/**
 * Makes links to a hole of this arena change the page in place.
 * @param {HTMLElement} page the page's main element
 * @returns {(url: string, hole: string) => Promise<void>} picks a hole
 */
export function pickInPlace(page) {
  let latest = 0;

  /**
   * @param {string} url
   * @param {string} hole
   * @param {boolean} remember whether the way back shall lead here
   */
  async function show(url, hole, remember) {
    const turn = ++latest;
    const answer = await fetch(url, { credentials: "same-origin" }).catch(() => null);
    if (!answer || !answer.ok) {
      location.assign(url); // the browser shows what is wrong
      return;
    }
    const text = await answer.text();
    if (turn !== latest) return; // a later pick overtook this one
    replace(page, new DOMParser().parseFromString(text, "text/html"), hole);
    if (remember) history.pushState({ hole }, "", url);
  }

  page.addEventListener("click", (event) => {
    if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    const link = event.target instanceof Element ? event.target.closest("a[href]") : null;
    const url = link && link.getAttribute("href");
    const hole = url && holeOf(url);
    if (!url || !hole) return;
    event.preventDefault();
    void show(url, hole, true);
  });

  addEventListener("popstate", () => {
    const here = location.pathname + location.search;
    void show(here, holeOf(here) ?? "", false);
  });

  return (url, hole) => show(url, hole, true);
}

/**
 * The hole that an address of this page picks, or null when it leads elsewhere.
 * @param {string} url
 * @returns {string | null}
 */
function holeOf(url) {
  const to = new URL(url, location.href);
  const here = new URL(location.href);
  if (to.origin !== here.origin || to.pathname !== here.pathname) return null;
  if ((to.searchParams.get("units") ?? "") !== (here.searchParams.get("units") ?? "")) return null;
  return to.searchParams.get("hole");
}

/**
 * Puts another page's content into this one and keeps scroll and focus.
 * @param {HTMLElement} page
 * @param {Document} other
 * @param {string} hole
 */
function replace(page, other, hole) {
  const next = other.querySelector("main");
  if (!next) return;
  const focused = document.activeElement;
  const kept = focused instanceof Element ? keyOf(focused) : "";
  const strip = page.querySelector('[data-drawing="strip"]');
  const left = strip ? strip.scrollLeft : 0;
  page.replaceChildren(...Array.from(next.childNodes, (node) => document.importNode(node, true)));
  const strip2 = page.querySelector('[data-drawing="strip"]');
  if (strip2) strip2.scrollLeft = left;
  document.title = other.title;
  refocus(page, kept, hole);
  showPickedOnStrip(page);
  announce(hole);
}

/** @param {Element} element @returns {string} in which part of the page it lies */
function keyOf(element) {
  if (element.closest("[data-picks]")) return "[data-picks]";
  const drawing = element.closest("[data-drawing]");
  if (!drawing) return "";
  return element === drawing ? "strip itself" : `[data-drawing="${drawing.getAttribute("data-drawing")}"]`;
}

/**
 * @param {HTMLElement} page
 * @param {string} where
 * @param {string} hole
 */
function refocus(page, where, hole) {
  if (where === "") return;
  const to = where === "strip itself"
    ? page.querySelector('[data-drawing="strip"]')
    : page.querySelector(`${where} [data-hole="${CSS.escape(hole)}"]`);
  const target = to && (to.closest("a") ?? to);
  if (target instanceof HTMLElement || target instanceof SVGElement) target.focus({ preventScroll: true });
}

/** Tells a screen reader what is shown now. @param {string} hole */
function announce(hole) {
  let live = document.getElementById("said");
  if (!live) {
    live = document.createElement("p");
    live.id = "said";
    live.className = "hidden";
    live.setAttribute("role", "status");
    document.body.append(live);
  }
  live.textContent = `Hole ${hole} is shown`;
}
