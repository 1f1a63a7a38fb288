// @ts-check
// Shows the covers: the desk's last board, with the marks of this phone that still wait
// laid over it.

/**
 * @typedef {{ id: string, hole: string, state: string, since: string, by: string, seated: string, open_s: number | null, waits?: boolean }} Cover
 * @typedef {{ hole: string, cover: string, words: string, due: string }} Alarm
 * @typedef {{ seq: number, now: string, phase: string, began: string | null, rule: string, within_s: number, covers: Cover[], alarms: Alarm[] }} Board
 */

/** @param {string} selector @param {ParentNode} [within] @returns {HTMLElement} */
export function find(selector, within = document) {
  const found = within.querySelector(selector);
  if (!(found instanceof HTMLElement)) throw new Error("the page lacks " + selector);
  return found;
}

/**
 * Lays marks over a board, as the desk will once it has them.
 * @param {Board} board @param {import("./marks.js").Mark[]} marks
 * @returns {Board}
 */
export function overlaid(board, marks) {
  const out = structuredClone(board);
  const gone = new Set(marks.filter((m) => m.kind === "withdrawn").map((m) => m.corrects));
  for (const m of marks) {
    if (m.kind === "phase") Object.assign(out, { phase: m.fact.phase, began: m.told, alarms: [], rule: "" });
    for (const c of out.covers) {
      if (m.kind === "seat" && m.fact.hole === c.hole) c.seated = m.fact.by;
      if (m.kind === "cover" && m.fact.cover === c.id && !gone.has(m.id)) {
        Object.assign(c, { state: m.fact.state, since: m.told, by: "", waits: true });
        if (c.state === "in") out.alarms = out.alarms.filter((a) => a.hole !== c.hole);
      }
      if (m.kind === "withdrawn" && m.was?.id === c.id) Object.assign(c, m.was, { waits: true });
    }
  }
  return out;
}

/** @param {number} ms since when @returns {string} */
function ago(ms) {
  const minutes = Math.max(0, Math.floor(ms / 60_000));
  if (minutes < 1) return "just now";
  if (minutes < 120) return minutes + " min";
  return minutes < 48 * 60 ? Math.floor(minutes / 60) + " h" : Math.floor(minutes / 1440) + " days";
}

/** @param {Alarm} a @param {number} now @returns {string} */
function left(a, now) {
  const late = now - Date.parse(a.due);
  if (late > 0) return late < 60_000 ? "now" : ago(late) + " late";
  return -late < 60_000 ? "in 1 min" : "in " + ago(-late);
}

/**
 * Shows the phase and what is wrong in it.
 * @param {Board} board @param {number} now by the desk's clock, ms
 */
export function head(board, now) {
  find("[data-phase]").textContent = board.phase;
  find("[data-began]").textContent = board.began ? "for " + ago(now - Date.parse(board.began)).replace("just now", "less than a minute") : "";
  find("[data-rule]").textContent = board.rule;
  const several = doubled(board);
  fill(find("[data-alarms]"), board.alarms, (a) => a.hole + " " + a.cover, (row, a) => {
    row.className = now > Date.parse(a.due) ? "late" : "soon";
    row.replaceChildren(strong(several.has(a.hole) && a.cover ? a.cover : a.hole), ` ${a.words} `, strong(left(a, now)));
  });
}

/** Holes with several covers in use, which go by their own names. @param {Board} board */
function doubled(board) {
  const inUse = board.covers.filter((c) => c.state !== "stored").map((c) => c.hole);
  return new Set(inUse.filter((hole, i) => inUse.indexOf(hole) !== i));
}

/**
 * Shows it all, with a button for each cover: those of the holes, then the spares.
 * @param {Board} board @param {number} now by the desk's clock, ms
 */
export function show(board, now) {
  head(board, now);
  find("[data-none]").hidden = board.covers.length > 0;
  const several = doubled(board);
  const spare = (/** @type {Cover} */ c) => c.state === "stored" && board.covers.some((d) => d.hole === c.hole && d.id < c.id);
  const sorted = [...board.covers.filter((c) => !spare(c)), ...board.covers.filter(spare)];
  fill(find("[data-covers]"), sorted, (c) => c.id, (row, c) => {
    cover(row, c, several.has(c.hole) || spare(c) ? c.id : c.hole, now);
    row.classList.toggle("spare", spare(c));
  });
}

/** @param {string} text */
function strong(text) {
  const e = document.createElement("strong");
  e.textContent = text;
  return e;
}

/**
 * Makes a list's rows those of some items; a row that is there stays, with its focus.
 * @template T
 * @param {HTMLElement} list @param {T[]} items @param {(item: T) => string} key @param {(row: HTMLElement, item: T) => void} draw
 */
export function fill(list, items, key, draw) {
  const before = new Map(Array.from(list.children, (row) => [row.getAttribute("data-key"), row]));
  items.forEach((item, i) => {
    let row = before.get(key(item));
    before.delete(key(item));
    if (!(row instanceof HTMLElement)) {
      row = document.createElement("li");
      row.setAttribute("data-key", key(item));
    }
    if (list.children[i] !== row) list.insertBefore(row, list.children[i] ?? null);
    if (row instanceof HTMLElement) draw(row, item);
  });
  for (const row of before.values()) row.remove();
  list.hidden = items.length === 0;
}

/** What a tap does to a cover in a state; "" asks first. @param {string} state */
export function tapped(state) {
  return { in: "out", out: "in", stored: "in", returned: "in" }[state] ?? "";
}

/** @param {HTMLElement} row @param {Cover} c @param {string} name @param {number} now */
function cover(row, c, name, now) {
  if (row.childElementCount === 0) {
    row.innerHTML = `<button type="button" class="tap" data-tap><svg aria-hidden="true"><use/></svg><b></b><span class="word"></span><span class="when"></span></button><button type="button" class="more" data-more><span aria-hidden="true">⋯</span></button>`;
  }
  const next = tapped(c.state);
  row.className = "cover " + c.state + (c.waits ? " waits" : "");
  row.querySelector("use")?.setAttribute("href", "#is-" + c.state);
  find("b", row).textContent = name;
  find(".word", row).textContent = c.state;
  find(".when", row).textContent = [ago(now - Date.parse(c.since)), c.waits ? "not sent" : c.by, c.seated && "seated"].filter(Boolean).join(" · ");
  find("[data-tap]", row).setAttribute("aria-label", `${name}: ${c.state}. ${next ? "Tap: " + next : "Tap to choose"}`);
  find("[data-more]", row).setAttribute("aria-label", `${name}: more`);
}
