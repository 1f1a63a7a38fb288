// @ts-check
// The card of a game: kept on the phone, and the period that is played stands out.

const page = document.querySelector("[data-card]");
const to = page?.getAttribute("data-card") ?? "";

/** Marks the last period that has begun today: the times are the rink's, as the phone's clock has them. */
function now() {
  const turns = Array.from(document.querySelectorAll("[data-from]"));
  const begun = turns.filter((t) => {
    const since = Date.now() - new Date(t.getAttribute("data-from") ?? "").getTime();
    return since >= 0 && since < 3 * 3600_000;
  });
  for (const t of turns) t.classList.toggle("now", t === begun.at(-1));
}

now();
setInterval(now, 20_000);
document.addEventListener("visibilitychange", now);
navigator.serviceWorker?.register("/phone.js", { scope: to, type: "module" }).catch(() => null); // without one the page works with a network only
navigator.serviceWorker?.controller?.postMessage("shown");
