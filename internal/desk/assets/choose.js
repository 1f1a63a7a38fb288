// @ts-check
// Choosing holes: the way of the search live, and wishes by tapping the map.

/** @param {HTMLElement} view */
export function watchChoice(view) {
  const source = new EventSource(view.dataset.choosing ?? "");
  /** @param {string} name @param {string} text */
  const put = (name, text) => {
    const at = view.querySelector(`[data-${name}]`);
    if (at && at.textContent !== text) at.textContent = text;
  };
  source.addEventListener("progress", (event) => {
    const n = JSON.parse(event.data);
    put("words", n.words);
    put("best", n.best);
    for (const stage of view.querySelectorAll("[data-stage]")) {
      const at = Number(stage.getAttribute("data-stage"));
      stage.className = at < n.stage ? "done" : at === n.stage ? "now" : "";
    }
    const share = view.querySelector("[data-share]");
    if (share instanceof HTMLProgressElement) share.value = n.whole;
    const chart = view.querySelector("[data-chart]");
    if (chart && n.chart) chart.innerHTML = n.chart; // a drawing of the desk's own, its texts escaped
  });
  source.addEventListener("done", () => {
    source.close();
    location.reload();
  });
  addEventListener("pagehide", () => source.close());
}

const wishes = ["free", "keep", "forbid"];

/** Tapping a hole on the map goes from free to keep to not. @param {HTMLElement} map */
export function tapWishes(map) {
  const form = map.closest("form");
  /** @param {Event} event */
  const tap = (event) => {
    const mark = event.target instanceof Element ? event.target.closest("[data-hole]") : null;
    const hole = mark?.getAttribute("data-hole");
    if (!form || !hole) return;
    event.preventDefault();
    const radios = form.elements.namedItem(`hole-${hole}`);
    if (!(radios instanceof RadioNodeList)) return;
    radios.value = wishes[(wishes.indexOf(radios.value) + 1) % wishes.length];
    form.querySelector(`[data-wish="${CSS.escape(hole)}"]`)?.scrollIntoView({ block: "nearest" });
  };
  map.addEventListener("click", tap);
  map.addEventListener("keydown", (event) => {
    if (event.key === "Enter" || event.key === " ") tap(event);
  });
}
