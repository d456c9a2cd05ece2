import { miredShift } from "../../physics/mired.js";
import { sunWarmth } from "../intent/sun-light.js";
import { sunPlace } from "../intent/sun-place.js";
import { keyReading } from "../light/key-reading.js";
import type { Plan } from "../plan.js";
import { mixtureOf } from "./mixture.js";

/** A white balance is set to a multiple of this, K, as dials of cameras and sliders for raw files take it. */
export const BALANCE_STEP = 50;
/** Between what it can be set, K. */
export const BALANCE_RANGE = [1000, 25_000] as const;

/** The white balance that a scene without a camera is looked at with, K. */
const DAYLIGHT = 5600;

/** The white balance of a picture, and what the light on the first face asks of it. */
export interface FaceBalance {
  /** As it is set, K. */
  readonly balance: number;
  /** Of all light on the disc at the first face that looks at the key, K. */
  readonly face: number;
  /** Mired by which the face comes out warm now. */
  readonly now: number;
  /** By which it should: as the sun that is wished for with its sky does, else 0. */
  readonly wanted: number;
  /** Whether a wish asks for that. */
  readonly wished: boolean;
  /** The white balance to set for it, rounded as it can be set; null where none does. */
  readonly set: number | null;
  /** Mired by which the face comes out warm at `set`. */
  readonly comesOut: number | null;
}

/** The white balance of the camera, or the one that is assumed without it. */
export function balanceOf({ scene }: Plan): number {
  return scene.camera?.balance ?? DAYLIGHT;
}

/** The one answer to what white balance to set, which every part of the report gives; null without light on a face. */
export function faceBalance(plan: Plan): FaceBalance | null {
  const reading = keyReading(plan);
  const face = reading === null ? undefined : mixtureOf(plan.scene, reading)?.kelvin;
  if (face === undefined) return null;
  const wish = plan.recipe.intent?.pass_for;
  const sun = wish === undefined ? null : sunPlace(wish);
  const warmth = sun === null ? null : sunWarmth(sun);
  const balance = balanceOf(plan);
  const wanted = warmth ?? 0;
  const set = settable(1e6 / (1e6 / face - wanted));
  return {
    balance,
    face,
    now: miredShift(balance, face),
    wanted,
    wished: warmth !== null,
    set,
    comesOut: set === null ? null : miredShift(set, face),
  };
}

/** The nearest white balance that can be set; null outside of what can. */
function settable(kelvin: number): number | null {
  const [least, most] = BALANCE_RANGE;
  const set = Math.round(kelvin / BALANCE_STEP) * BALANCE_STEP;
  return set >= least && set <= most ? set : null;
}
