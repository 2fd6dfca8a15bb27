// @ts-check
// The page in a frame of itself: as wide and high as a screen, drawn as large as there is room.

import { style } from "../dom.js";

/** Of a window so wide and of a phone: width and height of the page in the frame, CSS px. */
const DESK = [1280, 720], PHONE = [390, 620], PHONE_TO = 700;

/** @param {HTMLIFrameElement} frame */
export const frameOf = (frame) => /** @type {Document} */ (frame.contentDocument).documentElement;

/**
 * Fits the frame into its box: `rest` px of the window's height are for what stands about it.
 * @param {HTMLElement} box @param {number} rest
 */
export function fit(box, rest) {
  const [width, height] = innerWidth < PHONE_TO ? PHONE : DESK;
  const scale = Math.max(0.2, Math.min(1, (innerWidth - 48) / width, (innerHeight - rest) / height));
  for (const [name, value] of Object.entries({ "--frame-w": `${width}px`, "--frame-h": `${height}px`, "--frame-scale": String(scale) })) style(box, name, value);
}
