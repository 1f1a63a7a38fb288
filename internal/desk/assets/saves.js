// @ts-check
// What others save while a page of an arena is open: told at once, and shown where
// nothing is in the hand.

import { holding } from "./hold.js";
import { note, withdraw } from "./notes.js";
import { sending } from "./outbox.js";
import { said } from "./plan.js";
import { go } from "./swap.js";

/** @typedef {{ version: number, who: string, what: string }} Saved */

/** How long a note stays and how long until a refused listener asks again, in milliseconds. */
const stays = 15_000;
const again = 60_000;
/** How often a page that is busy looks whether it may show what came. */
const rest = 300;

/** @type {EventSource | null} */
let source = null;
let retry = 0;
let fade = 0;
let seen = 0;

/** The version that the page shows, 0 where it shows none. */
function base() {
  const field = document.querySelector('main input[name="base"]');
  return Number(said("base")) || (field instanceof HTMLInputElement ? Number(field.value) : 0);
}

/** Listens as long as the page is looked at: a browser grants a desk few connections. */
export function watchSaves() {
  const arena = /^\/arena\/([^/]+)/.exec(location.pathname)?.[1];
  if (!arena || !base() || new URLSearchParams(location.search).has("version")) return;
  const listen = () => {
    stop();
    if (document.visibilityState !== "visible") return;
    source = new EventSource(`/arena/${arena}/saves?since=${Math.max(seen, base())}`);
    source.addEventListener("saved", (event) => void heard(JSON.parse(event.data)));
    source.addEventListener("error", () => {
      if (source?.readyState === EventSource.CLOSED) retry = window.setTimeout(listen, again); // else the browser asks again by itself
    });
  };
  document.addEventListener("visibilitychange", listen);
  addEventListener("pagehide", stop);
  listen();
}

function stop() {
  clearTimeout(retry);
  source?.close();
  source = null;
}

/** @param {Saved} saved */
async function heard(saved) {
  seen = Math.max(seen, saved.version);
  while (sending() || holding()) {
    if (!source) return;
    await new Promise((done) => setTimeout(done, rest));
  }
  if (saved.version <= base()) return; // the page's own, or shown already
  tell(saved);
  const typing = document.activeElement instanceof HTMLElement && document.activeElement.matches("main :is(input, textarea, select)");
  if (document.querySelector("[data-plan]") && !typing) void go(location.pathname + location.search, "", false);
}

/** @param {Saved} saved */
function tell(saved) {
  note("saved", `${saved.who}: ${saved.what} (version ${saved.version})`, []);
  clearTimeout(fade);
  fade = window.setTimeout(() => withdraw("saved"), stays);
}
