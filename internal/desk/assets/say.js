// @ts-check
// Tells a screen reader what changed: politely, and only once it is said for good.

/** @param {string} text */
export function say(text) {
  let live = document.getElementById("said");
  if (!live) {
    live = document.createElement("p");
    live.id = "said";
    live.className = "hidden";
    live.setAttribute("role", "status");
    document.body.append(live);
  }
  if (live.textContent !== text) live.textContent = text;
}

let spoken = "";

/**
 * Says where things stand; the verdict only when it is another than last time.
 * @param {string} where @param {string} verdict
 */
export function sayState(where, verdict) {
  say(verdict === spoken ? where : `${where}. ${verdict}`);
  spoken = verdict;
}

/** The verdict that the page came with needs no saying. @param {string} verdict */
export function known(verdict) {
  spoken = verdict;
}
