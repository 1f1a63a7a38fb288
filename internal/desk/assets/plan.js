// @ts-check
// What the page knows of the plan that it shows: read from the page itself, and
// from the API for what stands still while a hole moves.

import { Boards } from "./boards.js";

/**
 * @typedef {{ id: string, from_m: number, to_m: number, height_m: number, gate?: string }} Pane
 * @typedef {{ kind: "landmark" | "pane", name: string, station_m: number }} Snap
 * @typedef {{ id: string, station_m: number, height_m: number, hole_width_mm: number, hole_height_mm: number, state: string }} Hole
 * @typedef {{ base: number, boards: Boards, top: number, panes: Pane[], snaps: Snap[], holes: Hole[] }} Plan
 */

/** @returns {HTMLElement | null} the plan on this page */
export function shown() {
  return document.querySelector("[data-plan]");
}

/** Whether holes may be moved here. */
export function editable() {
  return shown()?.hasAttribute("data-edits") ?? false;
}

/** @param {string} name @returns {string} what the plan's element says */
export function said(name) {
  return shown()?.dataset[name] ?? "";
}

/** @type {Promise<Plan> | null} */
let kept = null;
let keptFor = "";

/**
 * The plan as the API has it, asked once for each version.
 * @returns {Promise<Plan>}
 */
export function plan() {
  const key = said("arena") + " " + said("base");
  if (!kept || keptFor !== key) {
    keptFor = key;
    kept = ask(said("arena"), Number(said("base"))).catch((reason) => {
      keptFor = ""; // try again next time
      throw reason;
    });
  }
  return kept;
}

/** @param {string} arena @param {number} base @returns {Promise<Plan>} */
async function ask(arena, base) {
  const answer = await fetch(`/api/arenas/${encodeURIComponent(arena)}?version=${base}`, { credentials: "same-origin" });
  if (!answer.ok) throw new Error(`the plan could not be read: ${answer.status}`);
  const { layout, now } = await answer.json();
  return {
    base,
    boards: new Boards(layout.length_m, layout.width_m, layout.corner_radius_m),
    top: layout.boards_height_m,
    panes: layout.panes,
    snaps: layout.snaps,
    holes: now.holes,
  };
}
