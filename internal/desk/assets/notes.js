// @ts-check
// Notes below the head of the page that stay when its content changes: what is not
// sent yet, what others saved.

/** @typedef {{ words: string, go?: string, press?: () => void }} Way */

/** @param {string} name @param {string} words @param {Way[]} ways what can be done about it */
export function note(name, words, ways) {
  const box = at(name);
  const text = box.querySelector("p");
  if (text && text.textContent !== words) text.textContent = words;
  box.querySelector(".presses")?.replaceChildren(...ways.map((way) => control(way)));
}

/** @param {Way} way */
function control(way) {
  if (way.go) {
    const link = document.createElement("a");
    link.href = way.go;
    link.className = "press quiet";
    link.textContent = way.words;
    return link;
  }
  const button = document.createElement("button");
  button.type = "button";
  button.className = "press quiet";
  button.textContent = way.words;
  button.addEventListener("click", () => way.press?.());
  return button;
}

/** Takes a note away. @param {string} name */
export function withdraw(name) {
  document.querySelector(`[data-note="${name}"]`)?.remove();
}

/** @param {string} name @returns {Element} */
function at(name) {
  const there = document.querySelector(`[data-note="${name}"]`);
  if (there) return there;
  let aside = document.querySelector(".notes");
  if (!aside) {
    aside = document.createElement("aside");
    aside.className = "notes";
    aside.setAttribute("aria-label", "Notes");
    document.querySelector("main")?.before(aside);
  }
  const box = document.createElement("div");
  box.dataset.note = name;
  const text = document.createElement("p");
  text.setAttribute("role", name === "unsent" ? "alert" : "status");
  const ways = document.createElement("div");
  ways.className = "presses";
  box.append(text, ways);
  aside.append(box);
  return box;
}
