// @ts-check
// A hole in somebody's hand, by pointer or by keys: its mark moves at once, what
// follows is asked for, and when it is let go the move is saved as a version.

import { moveMark, showGuide } from "./drawing.js";
import { freeze, thaw } from "./still.js";
import { inside, snapWords } from "./fitting.js";
import { freshHeat, restHeat, staleHeat } from "./heat.js";
import { note } from "./notes.js";
import { asItWas, ask, catchUp, quiet, whenAnswered } from "./live.js";
import { plan as planNow, said } from "./plan.js";
import { say, sayState } from "./say.js";
import { save } from "./save.js";

/** @typedef {import("./plan.js").Plan} Plan */
/** @typedef {import("./plan.js").Hole} Hole */
/** @typedef {import("./plan.js").Snap} Snap */

/** @type {{ plan: Plan, hole: Hole, station: number, height: number, moved: boolean, wrong: string } | null} */
let held = null;

/** How long a hand must rest before the reach map and the words follow, in milliseconds. */
const rest = 250;
let resting = 0;

whenAnswered((asked, answer) => {
  if (!held || held.hole.id !== asked.hole) return;
  moveMark(held.plan, held.hole.id, held.station, held.height); // it may be ahead of the answer
  held.wrong = answer.wrong;
  noteWrong(answer.wrong);
});

/** @returns {boolean} whether a hole is in the hand */
export function holding() {
  return held !== null;
}

/**
 * Takes a hole into the hand.
 * @param {string} id
 * @returns {Promise<boolean>} false when it cannot be moved
 */
export async function take(id) {
  if (held && held.hole.id === id) return true;
  if (held) await letGo();
  const plan = await planNow().catch(() => null);
  if (!plan) {
    note("unsent", "The desk does not answer, and this page does not know the holes yet: nothing was moved.", []);
    return false;
  }
  const hole = plan.holes.find((h) => h.id === id);
  if (!hole || hole.state === "off") return false;
  held = { plan, hole, station: hole.station_m, height: hole.height_m, moved: false, wrong: "" };
  freeze();
  return true;
}

/** What is in the hand. */
export function inHand() {
  return held;
}

/**
 * Moves the hole in the hand.
 * @param {number} station
 * @param {number} height
 * @param {Snap | null} snapped
 */
export function moveTo(station, height, snapped) {
  if (!held) return;
  const to = inside(held.plan, held.hole, station, height);
  if (to.station === held.station && to.height === held.height) return;
  held.station = to.station;
  held.height = to.height;
  held.moved = true;
  moveMark(held.plan, held.hole.id, to.station, to.height);
  showGuide(held.plan, snapped ? to.station : null);
  const text = document.querySelector("[data-snapped]");
  if (text) text.textContent = snapped ? snapWords(snapped) : "";
  staleHeat();
  ask({ hole: held.hole.id, station: to.station, height: to.height });
  clearTimeout(resting);
  resting = window.setTimeout(rested, rest);
}

function rested() {
  if (!held) return;
  catchUp();
  restHeat(held.hole.id, held.station, held.height);
  const text = (/** @type {string} */ part) => document.querySelector(`[data-part="${part}"]`)?.textContent?.trim() ?? "";
  if (held.wrong) say(held.wrong);
  else sayState(text("readout"), text("verdict"));
}

/** Shows why a hole cannot stand where it is. @param {string} wrong */
function noteWrong(wrong) {
  const text = document.querySelector("[data-snapped]");
  if (text && wrong) text.textContent = wrong;
}

/** Puts the hole back to where it was. */
export function putBack() {
  if (!held) return;
  const { plan, hole } = held;
  held = null;
  clearTimeout(resting);
  asItWas();
  freshHeat(hole.id, hole.station_m, hole.height_m);
  moveMark(plan, hole.id, hole.station_m, hole.height_m);
  showGuide(plan, null);
  const text = document.querySelector("[data-snapped]");
  if (text) text.textContent = "";
  thaw();
}

/** Lets the hole go: the move is saved and the page shows what it became. */
export async function letGo() {
  if (!held) return;
  const { hole, station, height, moved, plan } = held;
  held = null;
  clearTimeout(resting);
  quiet();
  showGuide(plan, null);
  if (!moved) {
    thaw();
    return;
  }
  const back = new URLSearchParams(said("state"));
  back.set("hole", hole.id);
  await save({
    url: `/arena/${encodeURIComponent(said("arena"))}/holes`,
    hole: hole.id,
    fields: new URLSearchParams({
      base: said("base"), back: back.toString(), act: "place", hole: hole.id,
      station_m: station.toFixed(6), height_m: height.toFixed(6),
    }),
  });
}
