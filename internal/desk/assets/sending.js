// @ts-check
// Sends the marks that wait, in the order in which they were made. The desk keeps each
// id once, so a batch whose answer was lost is simply sent again.

import { lookUp, receipted } from "./marks.js";

/** How many marks go at once. */
const most = 100;

/** How long an answer may take, in ms; on a rink's network nothing may hang for ever. */
const patience = 15_000;

/**
 * What kept marks from being sent: "away" is the network or the desk, to be tried
 * again; words are the desk's own, of which trying again is no cure.
 * @typedef {{ away: boolean, words: string }} Trouble
 */

/** Sends the oldest; one page at a time where the browser can tell. @returns {Promise<import("./queue.js").Came<Trouble>>} */
export async function sendMarks() {
  return navigator.locks ? await navigator.locks.request("rinkpane-glass", sendOldest) : await sendOldest();
}

/** @returns {Promise<import("./queue.js").Came<Trouble>>} */
async function sendOldest() {
  const { waiting, me } = await lookUp();
  const to = waiting[0]?.to;
  if (to === undefined) return null;
  const others = waiting.findIndex((m) => m.to !== to);
  return (await sendBatch(to, me.device, waiting.slice(0, Math.min(most, others < 0 ? waiting.length : others)))) ?? "more";
}

/** @param {string} to @param {string} device @param {import("./marks.js").Mark[]} marks @returns {Promise<Trouble | null>} */
async function sendBatch(to, device, marks) {
  const events = marks.map(({ id, told, corrects, kind, fact }) => ({ id, told, corrects, kind, fact }));
  const before = Date.now();
  let answer, said;
  try {
    answer = await fetch(to + "/events", {
      method: "POST", credentials: "same-origin", signal: AbortSignal.timeout(patience),
      headers: { "Content-Type": "application/json", Accept: "application/json" },
      body: JSON.stringify({ device, now: new Date(before).toISOString(), events }),
    });
    said = await answer.json();
  } catch {
    return { away: true, words: "" };
  }
  if (!answer.ok) return { away: answer.status >= 500 || answer.status === 429, words: String(said.detail ?? "") };
  const trip = Date.now() - before;
  /** @type {Map<string, string>} */
  const refused = new Map();
  const there = new Set();
  for (const r of said.receipts) {
    there.add(r.id);
    if (r.refused) refused.set(r.id, r.refused);
  }
  const done = marks.filter((m) => there.has(m.id));
  await receipted(done, refused, before + trip / 2 - Date.parse(said.now), trip);
  return done.length === marks.length ? null : { away: true, words: "" };
}
