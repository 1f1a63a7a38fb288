// @ts-check
// The page at the glass: a tap is a mark, kept on this phone at once and sent when the
// network lets it. The page always says what is not sent yet.

import { fill, find, overlaid, show, tapped } from "./glass.js";
import { forgetRefused, keepBoard, keepMark, lastBoard, lookUp } from "./marks.js";
import { queue } from "./queue.js";
import { sendMarks } from "./sending.js";

const page = find("[data-glass]");
const to = page.dataset.glass ?? "";

/** @type {import("./glass.js").Board | null} */
let board = null;
/** @type {import("./sending.js").Trouble | null} */
let trouble = null;
/** by how much this phone's clock is ahead of the desk's, ms */
let ahead = 0;
/** the cover whose label brought the phone here; "" */
let scanned = decodeURIComponent(location.hash.slice(1));
/** @type {{ id: string, words: string, was: any } | null} the last mark of this phone, to be undone */
let last = null;

/** Redraws everything from what is kept. */
async function draw() {
  const { waiting, refused, me } = await lookUp();
  ahead = me.ahead ?? ahead;
  const mine = waiting.filter((m) => m.to === to);
  if (board) show(overlaid(board, mine), Date.now() - ahead);
  else find("[data-covers]").replaceChildren();
  find("[data-post]").textContent = post(waiting.length);
  page.classList.toggle("unsent", waiting.length > 0);
  fill(find("[data-refused]"), refused, (r) => r.id, (row, r) => {
    row.innerHTML = `<span></span> <button type="button" data-read>Read</button>`;
    find("span", row).textContent = "Not taken: " + r.words;
    row.dataset.id = r.id;
  });
  find("[data-last]").hidden = last === null;
  find("[data-last-words]").textContent = last?.words ?? "";
  const off = Math.round(ahead / 60_000);
  find("[data-clock]").hidden = off === 0;
  find("[data-clock]").textContent = `This phone's clock is ${Math.abs(off)} min ${off > 0 ? "ahead" : "behind"}. Marks get the right time.`;
}

/** @param {number} n how many marks wait @returns {string} */
function post(n) {
  const marks = n === 1 ? "1 mark" : n + " marks";
  if (n === 0) return trouble?.words || (away() ? "No network. All your marks are sent; the board may be old." : "All sent.");
  if (trouble && !trouble.away) return `${marks} not sent, kept on this phone. ${trouble.words}`;
  return line.busy() && !away() ? `${marks} not sent yet: sending…` : `${marks} not sent yet: no network. Kept on this phone.`;
}

const away = () => !navigator.onLine || (trouble?.away ?? false) || lost;
let lost = false; // the stream of boards is broken

/** Sends what waits; tries again, more and more seldom, as long as something does. */
const line = queue(sendMarks, { soon: 1000, late: 30_000, ended: (came) => {
  trouble = came;
  void draw();
} });

/** @param {string} kind @param {any} fact @param {string} corrects @param {any} was */
async function mark(kind, fact, corrects, was) {
  const m = await keepMark(to, kind, fact, corrects, was);
  void line.send();
  await draw();
  return m;
}

/** @param {string} id of a cover @param {string} state */
async function move(id, state) {
  const { waiting } = await lookUp();
  const was = board && overlaid(board, waiting.filter((m) => m.to === to)).covers.find((c) => c.id === id);
  if (!was || was.state === state) return;
  const m = await mark("cover", { cover: id, state }, "", null);
  last = { id: m.id, words: `${was.hole}: ${state}.`, was: { id, state: was.state, since: was.since, by: was.by } };
  await draw();
}

/** @param {any} fresh a board of the desk */
async function take(fresh) {
  board = fresh;
  await keepBoard(to, fresh);
  await draw();
  if (scanned && board?.covers.some((c) => c.id === scanned)) openMenu(scanned);
  scanned = "";
}

const menu = /** @type {HTMLDialogElement} */ (find("[data-menu]"));

/** @param {string} id of a cover */
function openMenu(id) {
  const c = board?.covers.find((x) => x.id === id);
  menu.dataset.cover = id;
  menu.dataset.hole = c?.hole ?? "";
  find("[data-menu-name]").textContent = `Cover ${id}`;
  const incident = menu.querySelector("[data-incident]");
  if (incident instanceof HTMLAnchorElement) incident.search = "?hole=" + encodeURIComponent(c?.hole ?? "");
  menu.showModal();
}

/** @type {{ on: Element | null, at: number }} */
let lastTap = { on: null, at: 0 };

/** @param {HTMLElement} pressed */
async function press(pressed) {
  const id = pressed.closest("[data-key]")?.getAttribute("data-key") ?? "";
  const { cover = "", hole = "" } = menu.dataset;
  if (pressed.matches("[data-more]")) openMenu(id);
  else if (pressed.matches("[data-tap]")) {
    const state = Array.from(pressed.parentElement?.classList ?? []).map(tapped).find((s) => s !== "") ?? "";
    if (state) await move(id, state);
    else openMenu(id);
  } else if (pressed.dataset.state !== undefined) await move(cover, pressed.dataset.state);
  else if (pressed.dataset.seat !== undefined) await mark("seat", { hole, by: pressed.dataset.seat }, "", null);
  else if (pressed.dataset.begin !== undefined) await mark("phase", { phase: pressed.dataset.begin }, "", null);
  else if (pressed.matches("[data-open-phases]")) /** @type {HTMLDialogElement} */ (find("[data-phases]")).showModal();
  else if (pressed.matches("[data-read]")) await forgetRefused(pressed.parentElement?.dataset.id ?? "").then(draw);
  else if (pressed.matches("[data-undo]") && last) {
    const undone = last;
    last = null;
    await mark("withdrawn", {}, undone.id, undone.was);
  }
  if (!pressed.matches("[data-more], [data-tap], [data-open-phases]")) pressed.closest("dialog")?.close();
}

page.addEventListener("click", (e) => {
  const pressed = e.target instanceof Element ? e.target.closest("button") : null;
  if (!pressed) return;
  const twice = pressed === lastTap.on && e.timeStamp - lastTap.at < 400;
  lastTap = { on: pressed, at: e.timeStamp };
  if (twice) return; // a glove taps twice
  void press(pressed);
});

/** @type {EventSource | null} */
let stream = null;
/** @type {number | undefined} */
let later;

/** Listens to the desk: each board that it sends is whole, so what was missed is in the next. */
function listen() {
  clearTimeout(later);
  stream?.close();
  const mine = (stream = new EventSource(to + "/live"));
  mine.addEventListener("board", (e) => {
    lost = false;
    void take(JSON.parse(e.data));
  });
  mine.addEventListener("open", () => {
    lost = false;
    void line.send();
  });
  mine.addEventListener("error", () => {
    lost = true;
    if (mine.readyState === EventSource.CLOSED) void ask(); // the desk refused; else the browser tries again
    else void draw();
  });
}

/** Asks the desk why it does not tell the board, and listens again if there is no reason. */
async function ask() {
  try {
    const answer = await fetch(to + "/board", { credentials: "same-origin", headers: { Accept: "application/json" } });
    const said = await answer.json();
    if (answer.ok) await take(said);
    else if (answer.status < 500) {
      trouble = { away: false, words: String(said.detail ?? "") };
      lost = false;
      if (answer.status !== 401) board = null; // this pass has ended: it shows nothing any more
      await keepBoard(to, board);
      return await draw();
    }
  } catch {
    lost = true;
  }
  later = setTimeout(listen, 5000);
  await draw();
}

/** The network may be back. */
function back() {
  listen();
  void line.send();
}
addEventListener("online", back);
addEventListener("offline", () => void draw());
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "visible") back();
});
setInterval(() => void draw(), 10_000);
/** Says that this phone opens the page with a network only, and what cures it. @param {string} why */
function bound(why) {
  find("[data-bound]").hidden = false;
  find("[data-bound]").textContent = `Without a network this phone cannot open this page: ${why} Leave the page open: marks made here are kept and go out later.`;
}

if (!isSecureContext) bound("its address begins with http. Ask whoever runs the desk for an address that begins with https.");
else if (!navigator.serviceWorker) bound("this browser keeps no pages here. Open it in another browser, or in a window that is not private.");
else navigator.serviceWorker.register("/phone.js", { scope: to, type: "module" }).catch(() => bound("the browser did not keep it. Open it once more; if that does not help, ask whoever runs the desk whether phones trust its certificate."));
void navigator.storage?.persist?.();

board = await lastBoard(to);
await draw();
performance.mark("covers shown");
navigator.serviceWorker?.controller?.postMessage("shown");
back();
