import type { Vec3 } from "../../core/vector.js";
import { openingsOf } from "../frame/seen.js";
import { floorWays } from "../geometry/floor-ways.js";
import { firstSubject, type Plan } from "../plan.js";
import { list } from "../say/number.js";
import { sayCentimetres } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** An opening is a door from this size on, if its sill is not higher than this, m. */
const [HIGH, WIDE, SILL] = [1.8, 0.6, 0.05];

/** A door, and the middle of its sill. */
interface Door {
  readonly name: string;
  readonly at: Vec3;
}

/** The openings of the room that one can walk through. */
export function doorsOf({ scene, recipe }: Plan): readonly Door[] {
  return openingsOf(scene, recipe).flatMap(({ name, vertices }) => {
    const [a, b, c] = vertices;
    if (a === undefined || b === undefined || c === undefined) return [];
    const wide = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (a[2] > SILL || c[2] - a[2] < HIGH - 1e-9 || wide < WIDE - 1e-9) return [];
    return [{ name, at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, 0] as Vec3 }];
  });
}

/** The set blocks the way to a door. */
export const wayOut: Rule = {
  code: "way-out",
  thresholds: ["way_out"],
  safety: true,
  page: {
    when: "The room has an `opening` that is a door (at least 60 cm wide and 1.8 m high, its sill no higher than 5 cm), and no way of `way_out` (0.9 m) leads to it over the floor from the first subject, past the walls, pieces of the set lower than 2 m and the feet of stands. Where another door can be reached it is a check. The way is looked for on squares of 5 cm. Cables, chairs, bags, the camera and lamps without a `stand` are not known; papers on the floor are walked over.",
    means: "In a fire or with somebody hurt, nobody gets out or in.",
    todo: "Move what stands there, or turn the set round. Cables are laid along walls and taped. How wide a way must be and which doors count is for the rules of the place.",
    source: "Common practice, no source; the rules of a place are often stricter.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const doors = doorsOf(plan);
    if (scene.room === null || doors.length === 0) return [];
    const width = threshold(recipe, "way_out");
    const ways = floorWays(scene, scene.room, width);
    const from = firstSubject(scene)?.place ?? [0, 0, 0];
    const blocked = doors.filter((door) => !ways.isFree(from, door.at));
    return blocked.map((door): RuleFinding => {
      const alone = ways.names.filter((name) => ways.isFree(from, door.at, name));
      return {
        severity: blocked.length === doors.length ? "stop" : "check",
        message: `No way of ${sayCentimetres(width)} leads to ${door.name} past the set.`,
        remedy:
          alone.length === 0
            ? `More than one thing is in the way: clear ${sayCentimetres(width)} from the mark to ${door.name}.`
            : `Move ${list(alone)}${alone.length === 1 ? "" : ", either of them"}: without ${alone.length === 1 ? "it" : "one of them"} the way is free.`,
        about: door.name,
      };
    });
  },
};
