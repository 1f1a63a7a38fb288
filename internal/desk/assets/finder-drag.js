// @ts-check
// Dragging the picture turns the camera as if the scene were held by the hand;
// arrow keys turn it by a twentieth of the view, with shift by a quarter.

/**
 * @typedef {{pan: number, tilt: number}} Aim degrees
 * @typedef {{h: number, v: number}} View degrees across and down
 */

/**
 * @param {HTMLElement} glass
 * @param {{start: () => Aim, view: () => View, turn: (pan: number, tilt: number) => void}} camera
 */
export function dragToTurn(glass, camera) {
  /** @type {{x: number, y: number, from: Aim} | null} */
  let held = null;

  glass.addEventListener("pointerdown", (event) => {
    if (event.button !== 0) return;
    held = { x: event.clientX, y: event.clientY, from: camera.start() };
    glass.setPointerCapture(event.pointerId);
  });
  glass.addEventListener("pointermove", (event) => {
    if (!held) return;
    const box = pictureBox(glass);
    const view = camera.view();
    camera.turn(
      held.from.pan - ((event.clientX - held.x) / box.width) * view.h,
      held.from.tilt + ((event.clientY - held.y) / box.height) * view.v,
    );
  });
  for (const end of ["pointerup", "pointercancel"]) glass.addEventListener(end, () => (held = null));

  /** @type {Record<string, [number, number]>} */
  const keys = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
  glass.addEventListener("keydown", (event) => {
    const way = keys[event.key];
    if (!way || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const share = event.shiftKey ? 0.25 : 0.05;
    const at = camera.start();
    const view = camera.view();
    camera.turn(at.pan + way[0] * share * view.h, at.tilt + way[1] * share * view.v);
  });
}

/** How large the picture is drawn inside its frame, which may be wider. @param {HTMLElement} glass */
function pictureBox(glass) {
  const box = glass.getBoundingClientRect();
  const image = glass.querySelector("img");
  const ratio = image && image.naturalWidth > 0 ? image.naturalWidth / image.naturalHeight : box.width / box.height;
  return { width: Math.min(box.width, box.height * ratio), height: Math.min(box.height, box.width / ratio) };
}
