// @ts-check
// The reach map follows when the hand rests: it takes the server longer than a
// step of a drag.

import { said } from "./plan.js";

/** @returns {SVGImageElement | null} */
function picture() {
  return document.querySelector('[data-drawing="map"] [data-layer="heat"] image');
}

/** The map shown, and the picture through the lens, are of another place. */
export function staleHeat() {
  picture()?.classList.add("stale");
  document.querySelector(".peek img")?.classList.add("stale");
}

/** @param {string} hole @param {number} station @param {number} height */
export function restHeat(hole, station, height) {
  const image = picture();
  if (!image) return;
  const to = new URL(image.getAttribute("href") ?? "", location.href); // it names the lens
  for (const [name, value] of Object.entries({ hole, version: said("base"), station_m: station.toFixed(4), height_m: height.toFixed(4) })) to.searchParams.set(name, value);
  const address = to.pathname + to.search;
  const ready = new Image();
  ready.addEventListener("load", () => {
    image.setAttribute("href", address);
    image.classList.remove("stale");
  });
  ready.src = address;
}

/** The hole is back where it stood. @param {string} hole @param {number} station @param {number} height */
export function freshHeat(hole, station, height) {
  document.querySelector(".peek img")?.classList.remove("stale");
  restHeat(hole, station, height);
}
