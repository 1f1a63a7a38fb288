// @ts-check
// Marking frames: pictures are shown from the user's own files and stay there; what goes to
// the desk are the marks, the size in pixels, and the file's first bytes, of which the
// focal length is read. The answer comes after each mark, once there are four.

import { Stage } from "./stage.js";
import { spots } from "./spots.js";

/** @typedef {{ frame: string, landmark: string, x: number, y: number, seen?: number[], fits?: boolean, off?: number }} Mark */

const headBytes = 500 << 10; // of a file: what the desk takes
const restAfter = 200; // ms

/** @param {HTMLElement} root the form */
export function framing(root) {
  if (!(root instanceof HTMLFormElement)) return;
  const form = root;
  /** @template {Element} T @param {string} selector @returns {T} */
  const one = (selector) => /** @type {T} */ (form.querySelector(selector));
  const text = /** @type {HTMLTextAreaElement} */ (one("[data-marks]"));
  const landmark = /** @type {HTMLSelectElement} */ (one("[data-landmark]"));
  const answer = one("[data-answer]");
  /** what is open, by its name @type {Map<string, Blob>} */
  const pictures = new Map();
  /** @type {Mark[]} */
  let marks = [];
  let now = "";
  let rest = 0;
  let asked = 0;
  let saying = "";
  let typed = true; // the table was changed by hand: marks come from it

  const map = spots(one("[data-spots]"), landmark);
  const stage = new Stage(one("[data-stage]"), {
    marks: () => marks.filter((m) => m.frame === now),
    words: (m) => `${wordsOf(m.landmark)}${m.off === undefined ? "" : `, off by ${m.off.toFixed(1)} px${m.fits ? "" : ", does not fit"}`}`,
    place,
    moved: changed,
    remove,
  });

  /** @param {string} words */
  function say(words) {
    saying = words;
    one("[data-said]").textContent = words;
  }

  /** Adds to what was said last where the hole stands by now. */
  function sayPlace() {
    const place = answer.querySelector("[data-place]")?.textContent;
    one("[data-said]").textContent = `${saying} ${place ? `The hole stands at ${place}.` : (answer.querySelector("[data-problem]")?.textContent ?? "")}`.trim();
  }

  /** @param {string} name */
  function wordsOf(name) {
    const option = Array.from(landmark.options).find((o) => o.value === name);
    return option?.text ?? name;
  }

  /** Sets the landmark that is chosen, and chooses the next.
   * @param {number} x @param {number} y @returns {Mark} */
  function place(x, y) {
    let mark = marks.find((m) => m.frame === now && m.landmark === landmark.value);
    if (mark) Object.assign(mark, { x, y });
    else marks.push((mark = { frame: now, landmark: landmark.value, x, y }));
    say(`${wordsOf(mark.landmark)} is marked.`);
    toNext();
    changed();
    return mark;
  }

  /** Chooses the next landmark that is not marked, where the chosen one is. */
  function toNext() {
    const isMarked = (/** @type {string} */ name) => marks.some((m) => m.frame === now && m.landmark === name);
    if (!isMarked(landmark.value)) return;
    const left = Array.from(landmark.options).filter((o) => !isMarked(o.value));
    const next = left.find((o) => o.index > landmark.selectedIndex) ?? left[0];
    if (next) landmark.value = next.value;
  }

  /** @param {Mark} mark */
  function remove(mark) {
    marks = marks.filter((m) => m !== mark);
    landmark.value = mark.landmark;
    say(`${wordsOf(mark.landmark)} is no longer marked.`);
    changed();
  }

  /** The marks are otherwise: the table follows, then the answer. */
  function changed() {
    typed = false;
    const cell = (/** @type {string} */ s) => (/[",;\s]/.test(s) ? `"${s.replaceAll('"', '""')}"` : s);
    text.value = ["landmark,x_px,y_px,frame", ...marks.map((m) => `${m.landmark},${m.x.toFixed(1)},${m.y.toFixed(1)},${cell(m.frame)}`)].join("\n") + "\n";
    for (const m of marks) delete m.seen;
    show();
    later();
  }

  function show() {
    stage.draw();
    map(new Set(marks.filter((m) => m.frame === now).map((m) => m.landmark)));
  }

  function later() {
    clearTimeout(rest);
    rest = window.setTimeout(() => void ask(), restAfter);
  }

  async function ask() {
    const turn = ++asked;
    const fromText = typed;
    if (!fromText && marks.length === 0) {
      answer.replaceChildren();
      return;
    }
    const body = new URLSearchParams();
    for (const [name, value] of new FormData(form)) if (typeof value === "string") body.append(name, value);
    const reply = await fetch(form.action, { method: "POST", headers: { Accept: "application/json" }, body, credentials: "same-origin" }).catch(() => null);
    const told = reply && (await reply.json().catch(() => null));
    if (turn !== asked) return;
    if (!told?.marks) return say(told?.detail ?? "The desk does not answer; the marks stand here still.");
    if (fromText) marks = told.marks;
    else for (const m of marks) Object.assign(m, told.marks.find((/** @type {Mark} */ t) => t.frame === m.frame && t.landmark === m.landmark && near(t, m)) ?? {}, { x: m.x, y: m.y });
    answer.innerHTML = told.answer;
    for (const e of answer.querySelectorAll("[data-script-only]")) e.removeAttribute("hidden");
    sayPlace();
    show();
  }

  /** @param {Mark} a @param {Mark} b */
  const near = (a, b) => Math.abs(a.x - b.x) < 0.06 && Math.abs(a.y - b.y) < 0.06;

  /** The fields of a frame: its own, else those that no frame has yet, else new ones.
   * @param {string} name */
  function fieldsOf(name) {
    const all = /** @type {HTMLElement[]} */ (Array.from(form.querySelectorAll("[data-shot]")));
    const called = (/** @type {string} */ s) => all.find((e) => field(e, "frame").value === s);
    let box = called(name) ?? called("");
    if (!box) {
      box = /** @type {HTMLElement} */ (all[0].cloneNode(true));
      for (const f of ["focal", "know"]) field(box, f).value = "";
      all[all.length - 1].after(box);
    }
    field(box, "frame").value = name;
    /** @type {Element} */ (box.querySelector("[data-shot-name]")).textContent = name;
    return box;
  }

  /** @param {Element} box @param {string} name */
  const field = (box, name) => /** @type {HTMLInputElement} */ (box.querySelector(`[name="${name}"]`));

  /** @param {string} name @param {Blob} file @param {boolean} ask */
  async function open(name, file, ask) {
    const bitmap = await createImageBitmap(file).catch(() => null);
    if (!bitmap) return say(`${name} is no picture that this browser shows: open a JPEG.`);
    const box = fieldsOf(name);
    field(box, "wide").value = String(bitmap.width);
    field(box, "high").value = String(bitmap.height);
    bitmap.close();
    pictures.set(name, file);
    for (const m of marks) if (m.frame === "") m.frame = name;
    if (ask) await told(box, file);
    await turnTo(name);
  }

  /** @param {HTMLElement} box @param {Blob} file */
  async function told(box, file) {
    const reply = await fetch(form.dataset.told ?? "", { method: "POST", headers: { Accept: "application/json", "Content-Type": "application/octet-stream" }, body: file.slice(0, headBytes), credentials: "same-origin" }).catch(() => null);
    const said = (reply && (await reply.json().catch(() => null))) ?? {};
    if (said.sensor) field(box, "sensor").value = said.sensor;
    if (said.focal) {
      field(box, "focal").value = said.focal;
      field(box, "know").value = "about";
    }
    /** @type {Element} */ (box.querySelector("[data-shot-says]")).textContent = said.says ?? "";
  }

  /** @param {string} name */
  async function turnTo(name) {
    const file = pictures.get(name);
    if (!file) return;
    now = name;
    await stage.open(file);
    toNext();
    for (const e of form.querySelectorAll("[data-stage], [data-nudges], [data-keys]")) e.removeAttribute("hidden");
    const tabs = /** @type {HTMLElement} */ (one("[data-tabs]"));
    tabs.hidden = pictures.size < 2;
    tabs.replaceChildren(...Array.from(pictures.keys(), (key) => {
      const b = document.createElement("button");
      b.type = "button";
      b.className = "press quiet";
      b.textContent = key;
      b.setAttribute("aria-pressed", String(key === now));
      b.addEventListener("click", () => void turnTo(key));
      return b;
    }));
    show();
  }

  /** Near, far, left and right are as seen from another hole. @param {string} hole */
  async function turnAbout(hole) {
    const to = new URL(location.href);
    to.searchParams.set("hole", hole);
    history.replaceState(history.state, "", to);
    to.searchParams.delete("example"); // only its words are wanted
    const reply = await fetch(to, { credentials: "same-origin" }).catch(() => null);
    if (!reply?.ok) return say("The desk does not answer: left and right are still as seen from the hole before.");
    const page = new DOMParser().parseFromString(await reply.text(), "text/html");
    const was = landmark.value;
    for (const part of ["[data-landmark]", "[data-names]"]) {
      const next = page.querySelector(part);
      if (next) document.querySelector(part)?.replaceChildren(...next.children);
    }
    landmark.value = was;
    form.action = page.querySelector("form[data-framing]")?.getAttribute("action") ?? form.action;
    show();
  }

  one("[data-open]").addEventListener("change", async (event) => {
    const input = /** @type {HTMLInputElement} */ (event.target);
    for (const file of Array.from(input.files ?? [])) await open(file.name, file, true);
    input.value = "";
    if (marks.length > 0) changed();
  });
  one("[data-bring]").addEventListener("change", async (event) => {
    const input = /** @type {HTMLInputElement} */ (event.target);
    const file = input.files?.[0];
    if (!file) return;
    text.value = await file.text();
    input.value = "";
    typed = true;
    void ask();
  });
  one("[data-save-marks]").addEventListener("click", () => {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text.value], { type: "text/csv" }));
    link.download = "marks.csv";
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  });
  text.addEventListener("input", () => {
    typed = true;
    later();
  });
  form.addEventListener("change", (event) => {
    const at = /** @type {HTMLInputElement} */ (event.target);
    if (at.name === "hole") void turnAbout(at.value).then(later);
    else if (at.name && at.name !== "file" && at.name !== "text") later();
  });
  form.addEventListener("click", (event) => {
    const at = event.target instanceof Element ? event.target : null;
    const next = at?.closest("[data-next]");
    if (next instanceof HTMLElement) {
      landmark.value = next.dataset.next ?? "";
      say(`Now mark: ${wordsOf(landmark.value)}.`);
      void (next.dataset.in ? turnTo(next.dataset.in) : Promise.resolve()).then(() => {
        const [x, y] = (next.dataset.at ?? "").split(" ").map(Number);
        stage.aim({ x, y });
      });
    }
    const nudge = at?.closest("[data-nudge]");
    if (nudge instanceof HTMLElement) {
      const [dx, dy] = (nudge.dataset.nudge ?? "0 0").split(" ").map(Number);
      stage.nudge(dx, dy);
    }
    const near = at?.closest("[data-nearer]");
    if (near instanceof HTMLElement) stage.zoom(Number(near.dataset.nearer));
  });
  landmark.addEventListener("change", show);
  for (const e of form.querySelectorAll("details[data-text]")) e.removeAttribute("open");
  void (async () => {
    if (text.value.trim() !== "") await ask();
    if (!form.dataset.example) return;
    const reply = await fetch(form.dataset.example, { credentials: "same-origin" }).catch(() => null);
    if (reply?.ok) await open("invented.jpg", await reply.blob(), false);
  })();
}
