// @ts-check
// Saving. Whatever changes the plan, a drag, a key or a button, goes through save
// and nowhere else: here it is sent, and here it is kept when the desk does not answer.

import { show } from "./swap.js";

/**
 * A change of the plan: a form's address and fields, which name the version they
 * were made on (base), and the hole that the focus shall be on afterwards; "".
 * @typedef {{ url: string, fields: URLSearchParams, hole: string }} Change
 */

/**
 * Saves a change and shows the page that answers it.
 * @param {Change} change
 */
export async function save(change) {
  const sent = fetch(change.url, { method: "POST", credentials: "same-origin", body: change.fields });
  await show(sent, change.hole, true, () => fault(() => void save(change)));
}

/**
 * The desk does not answer: what was to be saved is kept, to be sent again.
 * @param {() => void} again
 */
function fault(again) {
  document.querySelector("[data-fault]")?.remove();
  const box = document.createElement("p");
  box.className = "form-problem";
  box.setAttribute("role", "alert");
  box.setAttribute("data-fault", "");
  box.append("The desk does not answer: this is not saved yet, and nothing is lost. Is it still running? ");
  const button = document.createElement("button");
  button.className = "press quiet";
  button.textContent = "Save again";
  button.addEventListener("click", again);
  box.append(button);
  document.querySelector("main")?.prepend(box);
}
