// @ts-check
// The list of jobs is asked for anew while one of them waits or is at work; once all have
// ended the page is, since what they came to stands on it.

import { inside } from "./become.js";

const pause = 2000; // milliseconds

/** @param {HTMLElement} list */
export async function watchJobs(list) {
  for (let open = Number(list.dataset.jobs); open > 0; ) {
    await new Promise((then) => setTimeout(then, pause));
    if (document.hidden) continue;
    try {
      const answer = await fetch("/jobs/now.json", { credentials: "same-origin", headers: { Accept: "application/json" } });
      if (!answer.ok) return; // signed out, or the desk is gone: the page says what it knew
      const now = await answer.json();
      const fresh = /** @type {Element} */ (list.cloneNode(false));
      fresh.innerHTML = now.list; // made by the desk, its texts escaped
      const held = document.activeElement?.closest("form")?.getAttribute("action");
      inside(list, fresh);
      hold(list, held);
      if ((open = now.open) === 0) location.reload();
    } catch {
      // the desk does not answer for now
    }
  }
}

/** Rows change places: who was about to give a job up is not to give up another. @param {Element} list @param {string | null | undefined} action */
function hold(list, action) {
  const at = document.activeElement;
  if (!action || !(at instanceof HTMLElement) || !list.contains(at) || at.closest("form")?.getAttribute("action") === action) return;
  const button = list.querySelector(`form[action="${CSS.escape(action)}"] button`);
  if (button instanceof HTMLElement) button.focus();
  else at.blur();
}
