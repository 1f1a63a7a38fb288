// @ts-check
// The board on the desk: as the desk tells each change, the page shows it.

import { head } from "./glass.js";
import { ofVisitor } from "./times.js";

/** @param {HTMLElement} box */
export function watchBoard(box) {
  /** @type {import("./glass.js").Board | null} */
  let board = null;
  let ahead = 0;
  const draw = () => {
    if (board) head(board, Date.now() - ahead);
  };
  const stream = new EventSource(box.dataset.liveBoard ?? "");
  stream.addEventListener("board", (e) => {
    board = JSON.parse(e.data);
    if (!board) return;
    ahead = Date.now() - Date.parse(board.now);
    const rows = Array.from(box.querySelectorAll("[data-cover]"));
    if (rows.map((r) => r.getAttribute("data-cover")).join() !== board.covers.map((c) => c.id).join()) return location.reload(); // covers came or went
    rows.forEach((row, i) => {
      const c = board?.covers[i];
      if (c) show(row, c);
    });
    draw();
  });
  addEventListener("pagehide", () => stream.close());
  setInterval(draw, 10_000);
}

/** @param {Element} row @param {import("./glass.js").Cover} c */
function show(row, c) {
  const state = row.querySelector(".state");
  state?.setAttribute("class", "state " + c.state);
  state?.querySelector("use")?.setAttribute("href", "#is-" + c.state);
  put(row, "[data-state] span span", c.state);
  put(row, "[data-by]", c.by + (c.seated ? `, ${c.seated} seated` : ""));
  if (c.open_s !== null) put(row, "[data-open]", Math.floor(c.open_s / 60) + " min");
  const since = row.querySelector("[data-since] time");
  if (!since || since.getAttribute("datetime") === c.since) return;
  since.setAttribute("datetime", c.since);
  ofVisitor(since);
}

/** @param {Element} row @param {string} selector @param {string} text */
function put(row, selector, text) {
  const e = row.querySelector(selector);
  if (e && e.textContent !== text) e.textContent = text;
}
