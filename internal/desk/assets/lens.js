// @ts-check
// The page of the picture through the lens: the desk's own script, and the camera.

import "./desk.js";
import { finder } from "./finder.js";

const view = document.querySelector("[data-picture]");
if (view instanceof HTMLElement) finder(view);
