// @ts-check
// While a hole moves, the page asks what follows and puts the answer in place:
// one question at a time, always the latest.

import { said } from "./plan.js";
import { keepAside } from "./words.js";

/**
 * @typedef {{ hole: string, station: number, height: number }} Held
 * @typedef {{ parts: Record<string, string>, layers: Record<string, string>, wrong: string }} Answer
 */

/** @type {Held | null} */
let waiting = null;
let busy = false;
/** @type {((held: Held, answer: Answer) => void) | null} */
let heard = null;

/** @param {(held: Held, answer: Answer) => void} listener called after each answer is in place */
export function whenAnswered(listener) {
  heard = listener;
}

/** @param {Held} held asks what follows when the hole stands there */
export function ask(held) {
  waiting = { ...held };
  if (!busy) void next();
}

/** Forgets what was to be asked. */
export function quiet() {
  waiting = null;
}

async function next() {
  busy = true;
  while (waiting) {
    const held = waiting;
    waiting = null;
    try {
      const answer = await question(held);
      put(answer);
      if (heard) heard(held, answer);
    } catch {
      // the desk does not answer: the save will say so, in words
    }
  }
  busy = false;
}

/** @param {Held} held @returns {Promise<Answer>} */
async function question(held) {
  const state = new URLSearchParams(said("state"));
  state.set("hole", held.hole);
  const answer = await fetch(`/arena/${encodeURIComponent(said("arena"))}/live`, {
    method: "POST",
    credentials: "same-origin",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify({
      base: Number(said("base")),
      state: state.toString(),
      edits: [{ do: "move", hole: held.hole, to: { station_m: held.station, height_m: held.height } }],
    }),
  });
  if (!answer.ok) throw new Error(String(answer.status));
  return answer.json();
}

/** What stands in each part now, so that what did not change is left alone. @type {WeakMap<Element, string>} */
const stands = new WeakMap();

/** @param {Answer} answer */
function put(answer) {
  if (answer.wrong) return;
  for (const [name, html] of Object.entries(answer.parts)) {
    const part = document.querySelector(`[data-part="${name}"]`);
    if (!part || stands.get(part) === html) continue;
    stands.set(part, html);
    part.innerHTML = html;
  }
  for (const [name, svg] of Object.entries(answer.layers)) {
    const [drawing, layer] = name.split("/");
    const group = document.querySelector(`[data-drawing="${drawing}"] [data-layer="${layer}"]`);
    if (!group || stands.get(group) === svg) continue;
    stands.set(group, svg);
    layer === "holes" ? putMarks(group, svg) : (group.innerHTML = svg);
    keepAside(group);
  }
}

/**
 * Puts new marks in place without taking the old links out, so that a link that
 * has the focus keeps it.
 * @param {Element} group @param {string} svg
 */
function putMarks(group, svg) {
  const fresh = document.createElementNS("http://www.w3.org/2000/svg", "g");
  fresh.innerHTML = svg;
  const links = Array.from(group.children);
  const next = Array.from(fresh.children);
  const same = links.length === next.length && links.every((link, i) => holeIn(link) === holeIn(next[i]));
  if (!same) {
    group.replaceChildren(...next);
    return;
  }
  links.forEach((link, i) => {
    const href = next[i].getAttribute("href");
    if (href) link.setAttribute("href", href);
    link.replaceChildren(...Array.from(next[i].childNodes));
  });
}

/** @param {Element} link */
function holeIn(link) {
  return link.querySelector("[data-hole]")?.getAttribute("data-hole") ?? link.getAttribute("data-hole") ?? "";
}
