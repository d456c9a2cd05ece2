import { exp2 } from "../../core/exp2.js";
import { fitShares } from "../../math/share-fit.js";
import { lampName } from "../../scene/lit/seen.js";
import { lightsOn, type Plan } from "../plan.js";
import { limitsOf } from "./limits.js";
import type { Known } from "./readings.js";

/** What the readings say of one lamp. */
export interface Calibrated {
  readonly name: string;
  /** Stops that it gives more (+) or less (-) than its setting says; null where the readings do not tell. */
  readonly stops: number | null;
  /** Between which it lies by the tolerances; null with `stops`, and for a lamp that has not fired. */
  readonly interval: readonly [number, number] | null;
  readonly reason: string | null;
}

/** The lamps as the readings tell them. */
export interface Calibration {
  readonly lamps: readonly Calibrated[];
  /** What is left of each reading when every lamp gives what is found, stops. */
  readonly left: readonly number[];
  /** The set-up as built with every lamp giving what is found. */
  readonly plan: Plan;
  /** Whether the readings tell every lamp from the others. */
  readonly told: boolean;
}

/** What each light gives to each reading of the set-up as built, over the meter's constant. */
export function sharesOf(plan: Plan, readings: readonly Known[]): readonly (readonly number[])[] {
  return readings.map(({ built }) =>
    lightsOn(plan.scene).map(({ name }) => {
      const share = built.shares.find((one) => one.name === name);
      return share === undefined ? 0 : (share.direct + share.bounced) / built.constant;
    }),
  );
}

/** Finds what each lamp gives by the readings: factors that bring what was worked out for the set-up nearest to them. */
export function calibrate(plan: Plan, readings: readonly Known[]): Calibration {
  const lights = lightsOn(plan.scene);
  const { dark, telling } = limitsOf(plan);
  const shares = sharesOf(plan, readings);
  const fit = fitShares(
    shares,
    readings.map(({ measured }) => measured),
    readings.map((one) => one.tolerance),
  );
  const lamps = lights.map(({ name }, j): Calibrated => {
    const stops = fit.stops[j] ?? 0;
    const half = fit.halves[j] ?? Number.POSITIVE_INFINITY;
    if (shares.every((row) => row[j] === 0))
      return { name, stops: null, interval: null, reason: "no reading gets light of it" };
    if (stops <= -dark)
      return { name, stops, interval: null, reason: "the readings show nothing of it: it has not fired" };
    if (half > telling)
      return {
        name,
        stops: null,
        interval: null,
        reason: "the readings do not tell it from the other lamps",
      };
    return { name, stops, interval: [stops - half, stops + half], reason: null };
  });
  const factors = new Map(lights.map(({ name }, j) => [name, fit.stops[j] ?? 0]));
  return {
    lamps,
    left: fit.left,
    plan: withOutput(plan, (name) => factors.get(name) ?? 0),
    told: lamps.every(({ stops }) => stops !== null),
  };
}

/** A plan whose lamps give so many stops more than their settings say. */
export function withOutput(plan: Plan, stopsOf: (light: string) => number): Plan {
  const sources = plan.scene.sources.map((source) => ({
    ...source,
    energy: source.energy * exp2(stopsOf(lampName(source))),
  }));
  return { ...plan, scene: { ...plan.scene, sources } };
}
