import { miredShift, shiftedTemperature } from "../../physics/mired.js";
import type { Source } from "../../scene/types.js";
import { faceWords, keyOf, type Plan } from "../plan.js";
import { fixed } from "../say/number.js";
import { sayKelvin } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { FaceBalance } from "./balance.js";

/** Below this nobody sees a difference of colour between two pictures side by side (common practice, no source), mired. */
const SEEN = 5;

/** `40 mired warm`, `12 mired cool`, `neutral`. */
export function tintWords(mired: number): string {
  if (Math.abs(mired) < SEEN) return "neutral";
  return `${fixed(Math.abs(mired), 0)} mired ${mired > 0 ? "warm" : "cool"}`;
}

/** What to do about the white balance: `Set the white balance to 3200 K, where ..., or put a cool gel of 134 mired on key`. */
export function balanceWords({ set, comesOut, wanted, now }: FaceBalance, lamps: string): string {
  const shift = Math.round(wanted - now);
  const gel = `a ${shift > 0 ? "warm" : "cool"} gel of ${fixed(Math.abs(shift), 0)} mired on ${lamps}`;
  if (set === null || comesOut === null) return `Put ${gel}; no white balance alone does it`;
  return `Set the white balance to ${sayKelvin(set)}, where the face comes out ${tintWords(comesOut)}, or put ${gel}`;
}

/** What to set the white balance to, what each other light then comes out as, and the gel that would bring it to the key. */
export function balanceAdvice(
  { scene, recipe }: Plan,
  lights: readonly Source[],
  face: FaceBalance | null,
): readonly string[] {
  if (face === null) return [];
  const { balance, now, wanted, wished, set } = face;
  const who = faceWords(scene);
  const suits = Math.abs(now - wanted) < (wished ? threshold(recipe, "sun_warmth_wanted") + 1e-9 : SEEN);
  const wish = wished ? `, where the sun that is wished for and its sky come out ${tintWords(wanted)}` : "";
  const todo = set === null ? "" : `: set ${sayKelvin(set)}${wished ? "" : ", unless that is meant"}`;
  const first = suits
    ? wished
      ? `At a white balance of ${sayKelvin(balance)} ${who} comes out ${tintWords(now)}, as the sun that is wished for and its sky would.`
      : `A white balance of ${sayKelvin(balance)} suits the light on ${who}.`
    : `At a white balance of ${sayKelvin(balance)} ${who} comes out ${tintWords(now)}${wish}${todo}.`;
  const at = suits ? balance : (set ?? balance);
  const key = keyOf(scene);
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
