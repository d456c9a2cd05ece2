import type { Vec3 } from "../core/vector.js";
import type { Station } from "../scene/types.js";

/** A meter held at a place, looking along a unit vector. */
export interface Meter {
  readonly at: Vec3;
  readonly facing: Vec3;
  readonly receptor: Station["receptor"];
}

/** Places and directions nearer than this (m, or a share of 1) are the same. */
const STEP = 1e-6;

const whole = (x: number): string => String(Math.round(x / STEP) + 0);

/** A text that is the same for meters that are the same. */
export function meterKey({ at, facing, receptor }: Meter): string {
  return `${receptor} ${at.map(whole).join(" ")} ${facing.map(whole).join(" ")}`;
}
