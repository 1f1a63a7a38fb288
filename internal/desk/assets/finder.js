// @ts-check
// Through the lens: while a control moves or the picture is dragged, small
// previews follow; when the hand rests, the sharp picture comes. One request is
// under way at a time, and only the latest wish is kept.

import { dragToTurn } from "./finder-drag.js";

const previewSide = 480;
const restAfter = 260; // ms
const foot = 0.3048; // m

/** @param {HTMLElement} view */
export function finder(view) {
  const form = /** @type {HTMLFormElement} */ (view.querySelector("[data-controls]"));
  const image = /** @type {HTMLImageElement} */ (view.querySelector("[data-image]"));
  const glass = /** @type {HTMLElement} */ (view.querySelector("[data-glass]"));
  const focus = form.elements.namedItem("focus-ft") ? "focus-ft" : "focus";
  const loose = ["pan", "tilt", focus]; // follow from the moment until somebody sets them
  const base = `/arena/${view.dataset.picture}/picture`;
  /** which of the loose controls somebody has set @type {Set<string>} */
  const set = new Set();
  for (const name of loose) if (!field(name).hasAttribute("data-loose")) set.add(name);
  let seen = { h: 60, v: 40 };
  let waiting = false;
  let busy = false;
  let rest = 0;
  let turn = 0;

  /** @param {string} name @returns {HTMLInputElement} */
  function field(name) {
    return /** @type {HTMLInputElement} */ (form.elements.namedItem(name));
  }

  function query() {
    const q = new URLSearchParams();
    for (const [name, value] of new FormData(form)) {
      if (loose.includes(name) && !set.has(name)) continue;
      q.set(name, String(value));
    }
    return q;
  }

  /** Something changed: follow with a preview, then with the sharp picture. */
  function changed() {
    history.replaceState(null, "", `${base}?${query()}`);
    const back = document.querySelector('.themes [name="back"]');
    if (back instanceof HTMLInputElement) back.value = location.pathname + location.search;
    clearTimeout(rest);
    rest = window.setTimeout(() => void sharp(), restAfter);
    turn++;
    if (busy) waiting = true;
    else void preview();
  }

  async function preview() {
    busy = true;
    do {
      waiting = false;
      const now = turn;
      const q = query();
      q.set("side", String(previewSide));
      const numbers = tell(now);
      await show(`${base}.jpg?${q}`, () => true);
      await numbers;
    } while (waiting);
    busy = false;
  }

  async function sharp() {
    const now = turn;
    const q = query();
    q.set("of", view.dataset.of ?? "");
    await show(`${base}.png?${q}`, () => now === turn);
    links();
  }

  /** Loads a picture whole before it takes the other's place, so that nothing flickers.
   * @param {string} url @param {() => boolean} wanted */
  async function show(url, wanted) {
    const next = new Image();
    next.src = url;
    try {
      await next.decode();
    } catch {
      return; // the numbers say what is wrong
    }
    if (!wanted()) return;
    image.width = next.naturalWidth;
    image.height = next.naturalHeight;
    image.src = url;
    image.hidden = false;
  }

  /** @param {number} now */
  async function tell(now) {
    const answer = await fetch(`${base}.json?${query()}`, { credentials: "same-origin" }).catch(() => null);
    if (!answer) return;
    const n = await answer.json().catch(() => ({ problem: "The desk does not answer as it should." }));
    if (now !== turn) return;
    problem(n.problem ?? "");
    if (n.problem) return;
    seen = { h: n.view_h_deg, v: n.view_v_deg };
    for (const fact of n.facts) {
      const place = view.querySelector(`[data-fact="${fact.id}"]`);
      if (place) place.textContent = fact.value;
    }
    const notes = view.querySelector("[data-notes]");
    const told = n.notes.join("");
    if (notes && notes.textContent !== told) notes.replaceChildren(...n.notes.map(line));
    adopt("pan", n.pan_deg);
    adopt("tilt", n.tilt_deg);
    adopt(focus, focus === "focus" ? n.focus_m : Math.round((n.focus_m / foot) * 100) / 100);
    adopt("focal", n.focal_mm);
    adopt("stop", n.stop);
  }

  /** @param {string} text */
  function line(text) {
    const li = document.createElement("li");
    li.textContent = text;
    return li;
  }

  /** @param {string} text */
  function problem(text) {
    const place = /** @type {HTMLElement} */ (view.querySelector("[data-problem]"));
    place.textContent = text;
    place.hidden = text === "";
  }

  /** Shows a value that followed from others, unless it is being typed.
   * @param {string} name @param {number} value */
  function adopt(name, value) {
    const number = field(name);
    const slide = /** @type {HTMLInputElement} */ (form.querySelector(`[data-slide="${name}"]`));
    if (document.activeElement !== number) number.value = String(value);
    if (document.activeElement !== slide) slide.value = String(value);
  }

  function links() {
    for (const kind of ["png", "svg"]) {
      const link = view.querySelector(`[data-save="${kind}"]`);
      const q = query();
      q.set("save", "1");
      if (kind === "png") q.set("side", "2400");
      link?.setAttribute("href", `${base}.${kind}?${q}`);
    }
  }

  /** @param {string} name @param {number} value */
  function put(name, value) {
    field(name).value = String(value);
    const slide = form.querySelector(`[data-slide="${name}"]`);
    if (slide instanceof HTMLInputElement) slide.value = String(value);
    if (loose.includes(name)) set.add(name);
    if (name === "pan") set.add("tilt");
    if (name === "tilt") set.add("pan");
  }

  form.addEventListener("input", (event) => {
    const at = event.target;
    if (!(at instanceof HTMLInputElement || at instanceof HTMLSelectElement)) return;
    if (at instanceof HTMLInputElement && at.dataset.slide) put(at.dataset.slide, at.valueAsNumber);
    else if (at instanceof HTMLInputElement && at.type === "number") {
      if (at.value === "" || !at.validity.valid) return;
      put(at.name, at.valueAsNumber);
    }
    if (at.name === "hole") for (const name of loose) set.delete(name);
    if (at.name === "lens" || at.name === "hole") {
      location.assign(`${base}?${query()}`); // other ranges, another title
      return;
    }
    changed();
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    changed();
  });
  // Links to other moments and units were written for the state the page came
  // with: take what is set now along.
  document.addEventListener("click", (event) => {
    const link = event.target instanceof Element ? event.target.closest("a[href]") : null;
    if (!(link instanceof HTMLAnchorElement) || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const to = new URL(link.href);
    if (to.pathname !== base) return;
    event.preventDefault();
    const q = query();
    if (link.closest(".finder-moments") || "aim" in link.dataset) for (const name of loose) q.delete(name);
    for (const name of ["moment", "units"]) {
      const value = to.searchParams.get(name);
      if (value !== null) q.set(name, value);
    }
    location.assign(`${base}?${q}`);
  });
  dragToTurn(glass, {
    start: () => ({ pan: Number(field("pan").value), tilt: Number(field("tilt").value) }),
    view: () => seen,
    turn: (pan, tilt) => {
      put("pan", Math.round(clamp(pan, -85, 85) * 10) / 10);
      put("tilt", Math.round(clamp(tilt, -60, 60) * 10) / 10);
      changed();
    },
  });
  void tell(turn);
}

/** @param {number} x @param {number} lo @param {number} hi */
function clamp(x, lo, hi) {
  return Math.min(hi, Math.max(lo, x));
}
