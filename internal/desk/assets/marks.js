// @ts-check
// What a phone at the glass keeps: the marks that the desk has not receipted yet, who
// this phone is, the last board. Marks are made here, with ids of their own, and stay
// until there is a receipt: no network, a reload and a dead battery lose none.

/**
 * A mark that waits. Its key n is this phone's count, so marks leave in the order in
 * which they were made.
 * @typedef {{ n: number, id: string, to: string, told: string, corrects: string, kind: string, fact: any, was: any }} Mark
 *
 * A mark that the desk did not take, and why.
 * @typedef {{ id: string, to: string, words: string }} Refused
 *
 * This phone: the digits that it drew, how many marks it made, and by how much its
 * clock is ahead of the desk's, in ms, with the round trip in which that was measured.
 * @typedef {{ key: "me", device: string, count: number, ahead: number | null, trip: number }} Me
 */

/** @type {Promise<IDBDatabase>} */
const opened = new Promise((done, fail) => {
  const ask = indexedDB.open("rinkpane-glass", 1);
  ask.onupgradeneeded = () => {
    ask.result.createObjectStore("waiting", { keyPath: "n" });
    ask.result.createObjectStore("refused", { keyPath: "id" });
    ask.result.createObjectStore("kept", { keyPath: "key" });
  };
  ask.onsuccess = () => done(ask.result);
  ask.onerror = () => fail(ask.error);
});

/**
 * Runs one transaction; what it returns comes once everything in it is on the disk.
 * @template T
 * @param {(store: (name: string) => IDBObjectStore) => Promise<T>} work
 * @param {IDBTransactionMode} [mode]
 * @returns {Promise<T>}
 */
async function within(work, mode = "readwrite") {
  const tx = (await opened).transaction(["waiting", "refused", "kept"], mode, { durability: "strict" });
  const ended = new Promise((done, fail) => {
    tx.oncomplete = () => done(null);
    tx.onabort = () => fail(tx.error);
  });
  const [out] = await Promise.all([work((name) => tx.objectStore(name)), ended]);
  return out;
}

/** @template T @param {IDBRequest<T>} ask @returns {Promise<T>} */
function answer(ask) {
  return new Promise((done, fail) => {
    ask.onsuccess = () => done(ask.result);
    ask.onerror = () => fail(ask.error);
  });
}

/** @param {number} n @param {number} digits */
const hex = (n, digits) => n.toString(16).padStart(digits, "0");

/** @param {(name: string) => IDBObjectStore} store @returns {Promise<Me>} */
async function me(store) {
  const known = await answer(store("kept").get("me"));
  if (known) return known;
  const drawn = crypto.getRandomValues(new Uint32Array(2));
  return { key: "me", device: hex(drawn[0] ?? 0, 8) + hex(drawn[1] ?? 0, 8), count: 0, ahead: null, trip: 0 };
}

/**
 * Makes a mark and keeps it until the desk has it.
 * @param {string} to path of the page that it is sent to
 * @param {string} kind @param {any} fact @param {string} corrects id of a mark that it corrects; ""
 * @param {any} was what the page shows again when the mark is undone
 * @returns {Promise<Mark>}
 */
export function keepMark(to, kind, fact, corrects, was) {
  return within(async (store) => {
    const own = await me(store);
    own.count++;
    const mark = { n: own.count, id: own.device + hex(own.count, 16), to, told: new Date().toISOString(), corrects, kind, fact, was };
    store("kept").put(own);
    store("waiting").add(mark);
    return mark;
  });
}

/** @returns {Promise<{ waiting: Mark[], refused: Refused[], me: Me }>} */
export function lookUp() {
  return within(async (store) => {
    const [waiting, refused, own] = await Promise.all([answer(store("waiting").getAll()), answer(store("refused").getAll()), me(store)]);
    return { waiting, refused, me: own };
  }, "readonly");
}

/**
 * Takes marks off that have their receipts, and keeps how far the clock is ahead.
 * @param {Mark[]} marks @param {Map<string, string>} refused why, by id @param {number} ahead @param {number} trip both in ms
 */
export function receipted(marks, refused, ahead, trip) {
  return within(async (store) => {
    const own = await me(store);
    Object.assign(own, { ahead, trip });
    store("kept").put(own);
    for (const m of marks) {
      store("waiting").delete(m.n);
      const words = refused.get(m.id);
      if (words !== undefined) store("refused").put({ id: m.id, to: m.to, words });
    }
  });
}

/** The person has read why. @param {string} id */
export function forgetRefused(id) {
  return within(async (store) => void store("refused").delete(id));
}

/** Keeps the last board of a page. @param {string} to @param {any} board */
export function keepBoard(to, board) {
  return within(async (store) => void store("kept").put({ key: "board " + to, board }));
}

/** @param {string} to @returns {Promise<any>} the last board, null for none */
export function lastBoard(to) {
  return within(async (store) => (await answer(store("kept").get("board " + to)))?.board ?? null, "readonly");
}
