// @ts-check
// Files that take seconds to make: what is asked for says at once that it is being
// made, for how long, and what went wrong.

/** @param {HTMLElement} page */
export function takes(page) {
  page.addEventListener("click", (event) => {
    const link = event.target instanceof Element ? event.target.closest("[data-takes] a[download]") : null;
    if (!(link instanceof HTMLAnchorElement) || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey) return;
    event.preventDefault();
    if (!link.hasAttribute("aria-busy")) void take(link);
  });
}

/** @param {HTMLAnchorElement} link */
async function take(link) {
  const sign = begin(link);
  const stop = new AbortController();
  sign.stop.addEventListener("click", () => stop.abort());
  const begun = performance.now();
  const clock = setInterval(() => sign.say(`Being made: ${Math.round((performance.now() - begun) / 1000)} s`), 1000);
  try {
    const answer = await fetch(link.href, { credentials: "same-origin", signal: stop.signal });
    if (!answer.ok) throw new Error((await answer.json().catch(() => null))?.detail ?? `The desk answered ${answer.status}.`);
    keep(await answer.blob(), /filename="([^"]+)"/.exec(answer.headers.get("Content-Disposition") ?? "")?.[1] ?? "");
    sign.end("Done.", false);
  } catch (reason) {
    if (stop.signal.aborted) sign.end("Stopped.", false);
    else sign.end(reason instanceof TypeError ? "The desk does not answer: try again when it is back." : String(reason instanceof Error ? reason.message : reason), true);
  } finally {
    clearInterval(clock);
    link.removeAttribute("aria-busy");
  }
}

/** @param {Blob} file @param {string} name */
function keep(file, name) {
  const url = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** @param {HTMLAnchorElement} link */
function begin(link) {
  link.setAttribute("aria-busy", "true");
  link.parentElement?.querySelector(".making")?.remove();
  const box = document.createElement("span");
  box.className = "making";
  const bar = document.createElement("progress");
  bar.setAttribute("aria-label", "Being made");
  const words = document.createElement("span");
  words.setAttribute("role", "status");
  words.textContent = "Being made";
  const stop = document.createElement("button");
  stop.type = "button";
  stop.className = "press quiet";
  stop.textContent = "Stop";
  box.append(bar, words, stop);
  link.parentElement?.append(box);
  return {
    stop,
    /** @param {string} text */
    say: (text) => void (words.textContent = text),
    /** @param {string} text @param {boolean} failed */
    end(text, failed) {
      bar.remove();
      stop.remove();
      words.textContent = text;
      box.classList.toggle("failed", failed);
    },
  };
}
