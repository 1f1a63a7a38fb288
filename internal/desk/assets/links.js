// @ts-check
// Links to another state of this page, and forms marked data-inplace, change the
// page in place.

import { markAt } from "./drawing.js";
import { holding, letGo } from "./hold.js";
import { save } from "./save.js";
import { go } from "./swap.js";

/** @param {HTMLElement} page */
export function inPlace(page) {
  page.addEventListener("click", (event) => {
    if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    const at = event.target instanceof Element ? event.target : null;
    const link = at && (markAt(at, event.clientX, event.clientY) ?? at).closest("a[href]");
    const url = link && link.getAttribute("href");
    if (!url || !sameArena(url)) return;
    event.preventDefault();
    void go(url, new URL(url, location.href).searchParams.get("hole") ?? "", true);
  });

  page.addEventListener("submit", (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || !form.hasAttribute("data-inplace")) return;
    event.preventDefault();
    void submit(form, event.submitter);
  });

  addEventListener("popstate", () => {
    const here = location.pathname + location.search;
    if (document.querySelector("[data-plan]")) void go(here, "", false);
  });
}

/** @param {HTMLFormElement} form @param {HTMLElement | null} submitter */
async function submit(form, submitter) {
  const action = form.action;
  const act = submitter instanceof HTMLButtonElement ? submitter.value : "";
  if (holding()) {
    await letGo(); // what is in the hand comes first; the form is another one then
    const again = document.querySelector(`button[name="act"][value="${CSS.escape(act)}"]`);
    if (!(again instanceof HTMLButtonElement) || again.disabled || !again.form) return;
    form = again.form;
    submitter = again;
  }
  const fields = new URLSearchParams();
  for (const [name, value] of new FormData(form, submitter)) fields.append(name, String(value));
  await save({ url: action, fields, hole: "" });
}

/** Whether an address is another state of this very page. @param {string} url */
function sameArena(url) {
  const to = new URL(url, location.href);
  return to.origin === location.origin && to.pathname === location.pathname && to.hash === "" && document.querySelector("[data-plan]") !== null;
}
