import { degrees } from "../../math/rotation.js";
import type { NaturalLightValue } from "../../model/values.js";
import { equivalentCone } from "../../physics/angular-size.js";
import { stopsBetween } from "../../physics/stops.js";
import { elementToCentredRectangle } from "../../physics/view-factor-element.js";

type WindowWish = Extract<NaturalLightValue, { kind: "window" }>;

/**
 * Full angle in deg of the cone with the solid angle of a window straight opposite: of a rectangle a x b at d it is
 * 4 atan(a b / (2 d sqrt(4 d d + a a + b b))).
 */
export function windowSize({ size, distance }: WindowWish): number {
  const [a, b, d] = [size.width.value, size.height.value, distance.value];
  return degrees(equivalentCone(4 * Math.atan((a * b) / (2 * d * Math.sqrt(4 * d * d + a * a + b * b)))));
}

/** Stops that an evenly bright window straight opposite loses from its distance to some way further from it. */
export function windowFallOff({ size, distance }: WindowWish, further: number): number {
  const at = (away: number): number => elementToCentredRectangle(size.width.value, size.height.value, away);
  return stopsBetween(at(distance.value), at(distance.value + further)) ?? 0;
}
