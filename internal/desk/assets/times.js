// @ts-check
// Times come as UTC and are shown as the visitor's clock has them.

import { onContent } from "./swap.js";

export function localTimes() {
  onContent(() => {
    for (const at of document.querySelectorAll("time[datetime]")) {
      const time = new Date(at.getAttribute("datetime") ?? "");
      if (Number.isNaN(time.getTime())) continue;
      at.setAttribute("title", `${time.toISOString().slice(0, 16).replace("T", " ")} UTC`);
      at.textContent = time.toLocaleString(undefined, { day: "numeric", month: "short", year: "numeric", hour: "2-digit", minute: "2-digit" });
    }
  });
}
