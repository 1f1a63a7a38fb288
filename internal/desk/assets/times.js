// @ts-check
// Times come as UTC and are shown as the visitor's clock has them.

import { onContent } from "./swap.js";

export function localTimes() {
  onContent(() => document.querySelectorAll("time[datetime]").forEach(ofVisitor));
}

/** Shows one time; on a board today's is the hour alone. @param {Element} at */
export function ofVisitor(at) {
  const time = new Date(at.getAttribute("datetime") ?? "");
  if (Number.isNaN(time.getTime())) return;
  at.setAttribute("title", `${time.toISOString().slice(0, 16).replace("T", " ")} UTC`);
  /** @type {Intl.DateTimeFormatOptions} */
  const hour = { hour: "2-digit", minute: "2-digit" };
  const short = at.closest("[data-live-board]") && time.toDateString() === new Date().toDateString();
  at.textContent = short ? time.toLocaleTimeString(undefined, hour) : time.toLocaleString(undefined, { day: "numeric", month: "short", year: "numeric", ...hour });
}
