// @ts-check
// While a hole moves, the page asks what follows and puts the answer in place:
// one question at a time, always the latest.

import { inside } from "./become.js";
import { said } from "./plan.js";
import { keepAside } from "./words.js";

/**
 * @typedef {{ hole: string, station: number, height: number }} Held
 * @typedef {{ parts: Record<string, string>, layers: Record<string, string>, wrong: string }} Answer
 */

/** @type {Held | null} */
let waiting = null;
let busy = false;
let turn = 0;
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

/** Forgets what was to be asked; what is shown stays. */
export function quiet() {
  waiting = null;
  catchUp();
  were.clear();
}

/** Shows again what the page said before it first asked. */
export function asItWas() {
  waiting = null;
  turn++;
  later.clear();
  for (const [part, text] of were) {
    write(part, text);
    keepAside(part);
  }
  were.clear();
}

async function next() {
  busy = true;
  while (waiting) {
    const [held, asked] = [waiting, turn];
    waiting = null;
    try {
      const answer = await question(held);
      if (asked !== turn) continue;
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
/** Parts of the inspector that are out of sight wait until the hand rests. @type {Map<Element, string>} */
const later = new Map();
/** What stood in each part when a hole was taken into the hand. @type {Map<Element, string>} */
const were = new Map();

/** @param {Answer} answer */
function put(answer) {
  if (answer.wrong) return;
  // Look at all, then write all: one layout instead of many.
  const changed = Object.entries(answer.parts).flatMap(([name, html]) => {
    const part = document.querySelector(`[data-part="${name}"]`);
    return !part || (stands.get(part) === html && !later.has(part)) ? [] : [{ part, html, seen: part.checkVisibility({ contentVisibilityAuto: true }) }];
  });
  for (const { part, html, seen } of changed) seen ? write(part, html) : later.set(part, html);
  for (const [name, svg] of Object.entries(answer.layers)) {
    const [drawing, layer] = name.split("/");
    const group = document.querySelector(`[data-drawing="${drawing}"] [data-layer="${layer}"]`);
    if (!group || stands.get(group) === svg) continue;
    write(group, svg);
    keepAside(group);
  }
}

/** @param {Element} part @param {string} text */
function write(part, text) {
  later.delete(part);
  if (!were.has(part)) were.set(part, part.innerHTML);
  stands.set(part, text);
  const fresh = /** @type {Element} */ (part.cloneNode(false));
  fresh.innerHTML = text;
  inside(part, fresh);
}

/** Puts in place what waits out of sight. */
export function catchUp() {
  for (const [part, text] of later) write(part, text);
}
