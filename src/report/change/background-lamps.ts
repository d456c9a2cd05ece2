import { findRoot } from "../../math/roots.js";
import { lightsOn, type Plan } from "../plan.js";
import { fixed, list } from "../say/number.js";
import { atPower, withSource } from "./move-source.js";

/** Stops by which lamps on the background are turned up or down at most. */
const MOST = 12;

/** Background lamps turned together, so that the background stays as even as it is. */
export interface Turned {
  /** The lamps in words. */
  readonly names: string;
  /** `up by 0.4 stop`. */
  readonly words: string;
  readonly plan: Plan;
}

/** The plan with all lamps on the background turned up by so many stops. */
function turn(plan: Plan, stops: number): Plan {
  return lightsOn(plan.scene)
    .filter((source) => source.role === "background")
    .reduce((sofar, lamp) => withSource(sofar, plan.scene.sources.indexOf(lamp), atPower(lamp, stops)), plan);
}

/** The background lamps turned so that a quantity becomes 0, to a tenth of a stop; null without lamps or where it cannot. */
export function turnBackground(plan: Plan, quantity: (changed: Plan) => number): Turned | null {
  const lamps = lightsOn(plan.scene).filter((source) => source.role === "background");
  if (lamps.length === 0) return null;
  const found = findRoot((stops) => quantity(turn(plan, stops)), -MOST, MOST, 1e-3);
  if (found === undefined) return null;
  const change = Number(fixed(found, 1));
  return {
    names: list(lamps.map((lamp) => lamp.name)),
    words: `${change > 0 ? "up" : "down"} by ${fixed(Math.abs(change), 1)} stop`,
    plan: turn(plan, change),
  };
}
