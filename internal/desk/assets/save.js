// @ts-check
// Saving. Whatever changes the plan, a drag, a key or a button, goes through save
// and nowhere else.

import { post } from "./outbox.js";

/**
 * A change of the plan: a form's address and fields, which name the version they
 * were made on (base), and the hole that the focus shall be on afterwards; "".
 * @typedef {{ url: string, fields: URLSearchParams, hole: string }} Change
 */

/**
 * Saves a change and shows the page that answers it.
 * @param {Change} change
 */
export async function save(change) {
  await post(change);
}
