// @ts-check
// The desk's pages work without this module. It adds two comforts: picking a
// hole changes the page in place, and arrow keys walk from hole to hole.

import { pickInPlace } from "./pick.js";
import { arrowKeys } from "./keys.js";
import { showPickedOnStrip } from "./strip.js";
import { finder } from "./finder.js";
import { tapWishes, watchChoice } from "./choose.js";

const page = document.querySelector("main");
if (page && page.querySelector("[data-picks]")) {
  const pick = pickInPlace(page);
  arrowKeys(page, pick);
  showPickedOnStrip(page);
}

const view = document.querySelector("[data-picture]");
if (view instanceof HTMLElement) finder(view);

const choosing = document.querySelector("[data-choosing]");
if (choosing instanceof HTMLElement) watchChoice(choosing);
const wishMap = document.querySelector("[data-wish-map]");
if (wishMap instanceof HTMLElement) tapWishes(wishMap);
