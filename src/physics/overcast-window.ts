import { elementToCentredRectangle } from "./view-factor-element.js";

/** A window and what lies outside it, for a place straight opposite its middle. */
export interface OvercastWindow {
  /** m, as `height` and `distance`; all above 0. */
  readonly width: number;
  readonly height: number;
  readonly distance: number;
  /** Of the ground outside, 0 to 1. */
  readonly ground: number;
}

/**
 * Light of an overcast sky through a window on an upright plane straight opposite its middle and turned to it, over what
 * open level ground outside gets; without glass, and without what the room throws back. Above the height of that place
 * one sees sky, L = (3 / (7 pi)) E (1 + 2 sin e) (`overcastLuminance` on its level ground), below it ground, L = ground E / pi.
 *
 * Of a strip of window at a height z, sin e = z / r; with r r = d d + x x + z z the part that grows with sin e is the
 * integral of d d z / r^5 over the upper half, width a and half height h:
 * (a / 3) (1 / sqrt(d d + a a / 4) - d d / ((d d + h h) sqrt(d d + h h + a a / 4))).
 *
 * @returns 0 to 0.5 and a little; for a window without end that of `overcastOnPlane` for an upright plane.
 */
export function overcastThroughWindow({ width, height, distance, ground }: OvercastWindow): number {
  const half = elementToCentredRectangle(width, height, distance) / 2;
  const near = distance * distance;
  const far = near + (height * height) / 4;
  const side = (width * width) / 4;
  const risen = (width / 3) * (1 / Math.sqrt(near + side) - near / (far * Math.sqrt(far + side)));
  return (3 / 7) * half + (6 / (7 * Math.PI)) * risen + ground * half;
}
