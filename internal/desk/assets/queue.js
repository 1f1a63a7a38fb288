// @ts-check
// A queue of what is not sent yet, wherever it is kept: it goes out the oldest first, one
// sending at a time, and is tried again until nothing waits.

/**
 * @template T what kept something from being sent
 * @typedef {T | "more" | null} Came "more" when something went, null when nothing waits
 */

/**
 * @template T
 * @param {() => Promise<Came<T>>} step sends what is oldest
 * @param {{ soon: number, late: number, ended?: (trouble: T | null) => void }} pauses until
 *   it is tried again, in ms: after a first trouble twice soon, doubled up to late
 */
export function queue(step, { soon, late, ended }) {
  let busy = false;
  let pause = soon;
  /** @type {number | undefined} */
  let again;

  async function send() {
    if (busy) return; // what came meanwhile goes out with the rest
    clearTimeout(again);
    busy = true;
    /** @type {Came<T>} */
    let came = "more";
    try {
      while (came === "more") came = await step();
    } finally {
      busy = false;
      pause = came === null ? soon : Math.min(pause * 2, late);
      again = setTimeout(send, came === null ? late : pause);
    }
    ended?.(came);
  }

  /** Sends what an earlier page left, now and whenever the desk may be back. */
  function begin() {
    addEventListener("online", send);
    addEventListener("focus", send);
    void send();
  }
  return { send, begin, busy: () => busy };
}
