// @ts-check
// Times come as UTC and are shown as the visitor's clock has them.

import { onContent } from "./swap.js";

export function localTimes() {
  onContent(() => document.querySelectorAll("time[datetime]").forEach(ofVisitor));
}

/** Shows one time; on a board, which is read at a glance, today's is the hour alone and
 * an older one the day. @param {Element} at */
export function ofVisitor(at) {
  const time = new Date(at.getAttribute("datetime") ?? "");
  if (Number.isNaN(time.getTime())) return;
  at.setAttribute("title", `${time.toISOString().slice(0, 16).replace("T", " ")} UTC`);
  const now = new Date();
  const today = time.toDateString() === now.toDateString();
  const glance = at.closest("[data-live-board]") !== null;
  /** @type {Intl.DateTimeFormatOptions} */
  const hour = { hour: "2-digit", minute: "2-digit" };
  /** @type {Intl.DateTimeFormatOptions} */
  const day = { day: "numeric", month: "short" };
  if (!glance || time.getFullYear() !== now.getFullYear()) day.year = "numeric";
  at.textContent = glance && today ? time.toLocaleTimeString(undefined, hour) : time.toLocaleString(undefined, glance ? day : { ...day, ...hour });
}
