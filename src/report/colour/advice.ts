import { miredShift, shiftedTemperature } from "../../physics/mired.js";
import type { Source } from "../../scene/types.js";
import { faceWords, keyOf, type Plan } from "../plan.js";
import { fixed } from "../say/number.js";
import { sayKelvin } from "../say/quantity.js";

/** Below this nobody sees a difference of colour between two pictures side by side (common practice, no source), mired. */
const SEEN = 5;

/** A white balance is set to a multiple of this, K. */
const STEP = 50;

/** `40 mired warm`, `12 mired cool`, `neutral`. */
export function tintWords(mired: number): string {
  if (Math.abs(mired) < SEEN) return "neutral";
  return `${fixed(Math.abs(mired), 0)} mired ${mired > 0 ? "warm" : "cool"}`;
}

/** What to set the white balance to, what each other light then comes out as, and the gel that would bring it to the key. */
export function balanceAdvice(
  { scene }: Plan,
  lights: readonly Source[],
  balance: number,
  face: number | null,
): readonly string[] {
  if (face === null) return [];
  const who = faceWords(scene);
  const now = miredShift(balance, face);
  const set = Math.round(face / STEP) * STEP;
  const neutral = Math.abs(now) < SEEN;
  const first = neutral
    ? `A white balance of ${sayKelvin(balance)} suits the light on ${who}.`
    : `At a white balance of ${sayKelvin(balance)} ${who} comes out ${tintWords(now)}: set ${sayKelvin(set)}, unless that is meant.`;
  const key = keyOf(scene);
  const at = neutral ? balance : set;
  return [
    first,
    ...lights.flatMap((source) => {
      if (key === null || source.name === key.name) return [];
      const apart = miredShift(key.colour, source.colour);
      if (Math.abs(apart) < SEEN) return [];
      const shift = Math.round(-apart);
      const behind = shiftedTemperature(source.colour, shift);
      const gel =
        behind === undefined
          ? ""
          : ` A ${shift > 0 ? "warm" : "cool"} gel of ${fixed(Math.abs(shift), 0)} mired makes it ${sayKelvin(Math.round(behind / 10) * 10)}, as ${key.name} is.`;
      const tint = tintWords(miredShift(at, source.colour));
      return [`Where ${source.name} alone lights, it comes out ${tint} at ${sayKelvin(at)}.${gel}`];
    }),
  ];
}
