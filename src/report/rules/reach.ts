import type { Plan } from "../plan.js";
import { tolerance } from "../settings.js";
import { faceOffAperture, type KeyLight, keyLight } from "./key-light.js";

/** The power that the set aperture asks of the key, all lights changed alike so that contrasts stay. */
export interface Reach {
  readonly key: KeyLight;
  /** Stops of the face's reading over (+) or under (-) the set aperture as it is. */
  readonly off: number;
  /** The setting that would meet it, in stops below full; negative where full is not enough. */
  readonly needed: number;
  /** Stops that are forgiven: what one meter reading may be off. */
  readonly slack: number;
}

/** What the set aperture asks of the key; null without key, subject, aperture or ISO value. */
export function reachOf(plan: Plan): Reach | null {
  const key = keyLight(plan);
  const off = key === null ? null : faceOffAperture(plan);
  if (key === null || off === null || key.source.below === null) return null;
  return {
    key,
    off,
    needed: key.source.below + off,
    slack: tolerance(plan.recipe, "meter"),
  };
}

/** Whether full power is too little for the set aperture. */
export function tooWeak({ needed, slack }: Reach): boolean {
  return -needed > slack + 1e-9;
}

/** Whether the lowest setting, where it is known, is too much for the set aperture. */
export function tooStrong({ key, needed, slack }: Reach): boolean {
  const { lowest } = key.source;
  return lowest !== null && needed - lowest > slack + 1e-9;
}
