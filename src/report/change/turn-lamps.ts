import { findRoot } from "../../math/roots.js";
import type { Source } from "../../scene/types.js";
import { lightsOn, type Plan } from "../plan.js";
import { fixed, list } from "../say/number.js";
import { atPower, withSource } from "./move-source.js";

/** Stops by which lamps are turned up or down at most. */
const MOST = 12;

/** Lamps turned together by as much, whether their dials go so far or not. */
export interface Turned {
  readonly lamps: readonly Source[];
  /** The lamps in words. */
  readonly names: string;
  /** Stops up (+) or down (-), to a tenth. */
  readonly change: number;
  /** `up by 0.4 stop`. */
  readonly words: string;
  readonly plan: Plan;
}

/** The lamps on the background that are on. */
export function backgroundLamps({ scene }: Plan): readonly Source[] {
  return lightsOn(scene).filter((source) => source.role === "background");
}

/** The plan with some lights replaced, each by what is made of it. */
export function withEach(plan: Plan, lamps: readonly Source[], made: (lamp: Source) => Source): Plan {
  return lamps.reduce((sofar, { name }) => {
    const index = sofar.scene.sources.findIndex((row) => row.name === name);
    const lamp = sofar.scene.sources[index];
    return lamp === undefined ? sofar : withSource(sofar, index, made(lamp));
  }, plan);
}

/** The plan with some lamps turned up (+) or down (-) by so many stops. */
export function turnedBy(plan: Plan, lamps: readonly Source[], stops: number): Plan {
  return withEach(plan, lamps, (lamp) => atPower(lamp, stops));
}

/** The lamps turned so that a quantity becomes 0, to a tenth of a stop; null without lamps or where they cannot. */
export function turnLamps(
  plan: Plan,
  lamps: readonly Source[],
  quantity: (changed: Plan) => number,
  most = MOST,
): Turned | null {
  if (lamps.length === 0) return null;
  const found = findRoot((stops) => quantity(turnedBy(plan, lamps, stops)), -most, most, 1e-3);
  return found === undefined ? null : turned(plan, lamps, Number(fixed(found, 1)));
}

/** Lamps turned by so many stops, with the words for it. */
export function turned(plan: Plan, lamps: readonly Source[], change: number): Turned {
  return {
    lamps,
    names: list(lamps.map((lamp) => lamp.name)),
    change,
    words: `${change > 0 ? "up" : "down"} by ${fixed(Math.abs(change), 1)} stop`,
    plan: turnedBy(plan, lamps, change),
  };
}
