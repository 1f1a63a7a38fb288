// @ts-check
// What is not sent yet. Every change of the plan goes out through here: it is kept in
// the browser until the desk has answered, and sent in order, each once, when the
// network or the session is back.

import { show } from "./swap.js";
import { thaw } from "./still.js";
import { note, withdraw } from "./notes.js";
import { queue } from "./queue.js";

/** @typedef {import("./save.js").Change} Change */
/** @typedef {{ url: string, fields: [string, string][], hole: string, who: string, words: string }} Kept */

const place = "rinkpane-unsent";
/** How often the desk is asked again, and how long an answer may take, in milliseconds. */
const pause = 4000;
const longest = 60_000;

/** Where the browser refuses its storage. @type {Kept[]} */
let memory = [];
const line = queue(async () => {
  const next = unsent()[0];
  if (!next) return null;
  return (await one(next)) ? "more" : "waits";
}, { soon: pause, late: pause });

/** @returns {Kept[]} the oldest first */
function unsent() {
  try {
    return JSON.parse(localStorage.getItem(place) ?? "[]");
  } catch {
    return memory;
  }
}

/** @param {Kept[]} list */
function store(list) {
  memory = list;
  try {
    list.length ? localStorage.setItem(place, JSON.stringify(list)) : localStorage.removeItem(place);
  } catch {
    // kept in memory, as long as this page stands
  }
}

/** Whether a change is on its way or waits for it. */
export function sending() {
  return line.busy() || unsent().length > 0;
}

/** Who is signed in, "" where nobody is. */
function who() {
  return document.querySelector(".who a")?.textContent?.trim() ?? "";
}

/** Of this tab, so that its own saves are nobody else's. */
function tab() {
  const made = () => Array.from(crypto.getRandomValues(new Uint8Array(8)), (b) => b.toString(16).padStart(2, "0")).join("");
  try {
    const id = sessionStorage.getItem(place) ?? made();
    sessionStorage.setItem(place, id);
    return id;
  } catch {
    return made();
  }
}

/** @type {Record<string, string>} */
const acts = { place: "move ", off: "turn off ", on: "turn on ", delete: "delete ", copy: "copy ", add: "a new hole" };

/** @param {URLSearchParams} fields */
function wordsOf(fields) {
  const act = fields.get("act") ?? "";
  return act in acts ? acts[act] + (act === "add" ? "" : fields.get("hole")) : fields.get("hole") ? `${act} ${fields.get("hole")}` : "a form";
}

/**
 * Takes a change and sends it, after what waits already.
 * @param {Change} change
 */
export async function post(change) {
  const { fields, hole } = change;
  const to = new URL(change.url, location.href);
  const url = to.pathname + to.search;
  fields.set("once", `${tab()}.${Date.now().toString(36)}${Math.floor(performance.now() * 1000).toString(36)}`);
  const mine = { url, fields: /** @type {[string, string][]} */ ([...fields]), hole, who: who(), words: wordsOf(fields) };
  store([...unsent().filter((old) => !replaces(mine, old)), mine]);
  await line.send();
}

/** A later place of a hole, or the same form again, counts in place of the earlier. @param {Kept} next @param {Kept} old */
function replaces(next, old) {
  const same = (/** @type {string} */ name) => new URLSearchParams(next.fields).get(name) === new URLSearchParams(old.fields).get(name);
  const act = new URLSearchParams(next.fields).get("act") ?? "";
  return !line.busy() && next.url === old.url && ["act", "hole", "item", "base"].every(same) && (act === "place" || act === "");
}

/** @param {Kept} next @returns {Promise<boolean>} whether the next may go */
async function one(next) {
  if (next.who !== who()) {
    wait(`They are ${next.who || "somebody else"}'s, and are sent when ${next.who || "that person"} signs in again.`);
    return false;
  }
  const answer = await fetch(next.url, {
    method: "POST", credentials: "same-origin", body: new URLSearchParams(next.fields), signal: AbortSignal.timeout(longest),
  }).catch(() => null);
  if (!answer || [502, 503, 504].includes(answer.status)) {
    return refused(next, "The desk does not answer.");
  }
  if (answer.status === 401) return refused(next, "Your session has ended.", `/sign-in?back=${encodeURIComponent(location.pathname + location.search)}`);
  const rest = unsent();
  const last = rest.length < 2;
  if (!answer.ok && !near(next)) {
    wait("One of them needs a word of yours.", next.url.replace(/\/[a-z]+(\?.*)?$/, ""));
    return false;
  }
  store(rest.slice(1));
  if (last || !answer.ok) {
    withdraw("unsent");
    await arrived(answer, next.hole);
  }
  return answer.ok;
}

/** Whether the page is of the arena that a change is about. @param {Kept} change */
function near(change) {
  const of = (/** @type {string} */ path) => path.split(/[/?]/).slice(1, 3).join("/");
  return of(change.url) === of(location.pathname);
}

/** Shows the page that answers. @param {Response} answer @param {string} hole */
async function arrived(answer, hole) {
  const here = document.querySelector("[data-plan]") !== null;
  if (answer.ok && !here) {
    if (document.querySelector("form[data-sent]")) location.assign(answer.url);
    return;
  }
  await show(Promise.resolve(answer), hole, true, () => location.reload());
}

/**
 * Keeps what did not go, and says so; what takes back or forth hangs on what stands
 * there then, and is not kept.
 * @param {Kept} next @param {string} why @param {string} [cure]
 */
function refused(next, why, cure) {
  thaw();
  if (/\/(restore|away)$/.test(next.url.split("?")[0])) {
    store(unsent().slice(1));
    note("unsent", `${why} Nothing was changed: press again when it is back.`, []);
    return false;
  }
  wait(why, cure);
  return false;
}

/** Says what waits, and why. @param {string} why @param {string} [cure] where to go */
function wait(why, cure) {
  const list = unsent();
  const names = [...new Set(list.map((c) => c.words))];
  const said = names.slice(0, 4).join(", ") + (names.length > 4 ? ` and ${names.length - 4} more` : "");
  note("unsent", `Not saved yet: ${said}. ${why} Nothing is lost: it is kept in this browser, and goes out by itself.`, [
    ...(cure ? [{ words: cure.startsWith("/sign-in") ? "Sign in" : "Look", go: cure }] : []),
    { words: "Send now", press: () => void line.send() },
    { words: "Drop it", press: () => drop(list.length) },
  ]);
}

/** @param {number} count */
function drop(count) {
  if (!confirm(count === 1 ? "Drop the change that is not saved?" : `Drop the ${count} changes that are not saved?`)) return;
  store([]);
  location.reload();
}

/** Forms that change an arena's document go out through here too. @param {SubmitEvent} event */
function formSent(event) {
  const form = event.target;
  if (event.defaultPrevented || !(form instanceof HTMLFormElement) || form.method !== "post" || !form.querySelector('[name="base"]')) return;
  if (document.querySelector("[data-plan]") || form.querySelector('input[type="file"]')) return;
  event.preventDefault();
  const fields = new URLSearchParams();
  for (const [name, value] of new FormData(form, event.submitter)) fields.append(name, String(value));
  form.setAttribute("data-sent", "");
  void post({ url: form.action, fields, hole: "" });
}

/** Sends what an earlier page left, now and whenever the desk may be back. */
export function outbox() {
  document.addEventListener("submit", formSent);
  line.begin();
}
