import { lampName } from "../../scene/lit/seen.js";
import type { Source, Stand } from "../../scene/types.js";
import { ceilTo, fixed } from "../say/number.js";
import { sayLength, sayMass } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Standard acceleration of gravity, m/s2 (CGPM 1901), rounded. */
const GRAVITY = 9.81;
/** Three legs: in the worst direction the edge of the feet is half their radius from the middle. */
const WORST = 0.5;
/** The least bag that is worth hanging, kg; common practice, no source. */
const BAG = 5;

/** Sideways force in newtons at the lamp that starts to tip a stand: weight x half the feet's radius / height. */
export function tipForce(stand: Stand, height: number): number {
  const mass = stand.weight + stand.head + stand.bag;
  return height > 0 ? (mass * GRAVITY * WORST * stand.feet) / height : Number.MAX_VALUE;
}

/** The bag that brings the force to what is wanted, kg, up to the next half, and no less than is worth hanging. */
export function bagFor(stand: Stand, height: number, force: number): number {
  const mass = (force * height) / (GRAVITY * WORST * stand.feet);
  return Math.max(BAG, ceilTo(mass - stand.weight - stand.head, 0.5));
}

function reasonOf(source: Source, stand: Stand, least: number, high: number): string | null {
  const height = source.centre[2];
  const force = tipForce(stand, height);
  if (force < least - 1e-9) {
    return `A push of ${fixed(force, 0)} N at ${lampName(source)} tips its stand; it should bear ${fixed(least, 0)} N.`;
  }
  if (stand.bag > 0) return null;
  if (stand.boom !== null) return `${lampName(source)} hangs on a boom, and its stand has no bag.`;
  return height > high + 1e-9 ? `${lampName(source)} stands ${sayLength(height)} high without a bag.` : null;
}

/** A stand is easily pushed over. */
export const standTip: Rule = {
  code: "stand-tip",
  thresholds: ["tip_force", "tip_height"],
  safety: true,
  page: {
    when: "The recipe names a stand, and a sideways push of less than `tip_force` (10 N) at the lamp starts to tip it; or the lamp is higher than `tip_height` (2 m) or on a boom, and there is no bag. The push is weight x half the radius of the feet / height, a rough sum without wind and swing.",
    means: "A sleeve or a cable brings it down on somebody.",
    todo: "A bag low on the leg that points towards the load, legs wide, cables taped, a tether where it hangs over people.",
    source:
      "Statics of a three-legged stand, in its worst direction. The thresholds are common practice, no source.",
  },
  check: ({ scene, recipe }) =>
    scene.sources.flatMap((source): RuleFinding[] => {
      const { stand } = source;
      if (stand === null) return [];
      const least = threshold(recipe, "tip_force");
      const message = reasonOf(source, stand, least, threshold(recipe, "tip_height"));
      if (message === null) return [];
      const bag = bagFor(stand, source.centre[2], least);
      const force = tipForce({ ...stand, bag }, source.centre[2]);
      return [
        {
          severity: "stop",
          message,
          remedy: `Hang a bag of ${sayMass(bag)} low on the stand: it then bears ${fixed(force, 0)} N. One leg under the load, legs wide.`,
          about: lampName(source),
        },
      ];
    }),
};
