import type { Vec3 } from "../../core/vector.js";
import { add } from "../../math/vector.js";
import type { Expr } from "../../model/values.js";
import { lyingOn } from "../../scene/lying-on.js";
import { solidsOf, sunkIn, surfaced } from "../../scene/sunk.js";
import { meterHeld } from "../evaluate/reading.js";
import { isWithin, shortestWay } from "../geometry/ways-out.js";
import type { Plan } from "../plan.js";
import { sayWhatHolds } from "../say/bodies.js";
import { sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

interface Held {
  readonly name: string;
  readonly at: Vec3;
  readonly facing: Vec3;
}

type ReadingExpr = Extract<Expr, { kind: "reading" }>;

/** The readings in what a recipe expects, wherever they stand. */
function readingsIn(part: unknown): readonly ReadingExpr[] {
  if (Array.isArray(part)) return part.flatMap(readingsIn);
  if (typeof part !== "object" || part === null) return [];
  const own = "kind" in part && part.kind === "reading" && "station" in part ? [part as ReadingExpr] : [];
  return [...own, ...Object.values(part).flatMap(readingsIn)];
}

/** Where meters are held: at the stations, and where expectations ask. One for each place and name. */
function heldIn(plan: Plan): readonly Held[] {
  const asked = readingsIn(plan.recipe.expectations).flatMap((expr): Held[] => {
    const meter = meterHeld(plan, expr);
    return typeof meter === "string" ? [] : [{ ...meter, name: expr.station }];
  });
  const held: Held[] = [];
  for (const row of [...plan.scene.stations, ...asked])
    if (held.every(({ name }) => name !== row.name)) held.push(row);
  return held;
}

/** A meter is held in a person or in a solid piece of the set. */
export const meterInside: Rule = {
  code: "meter-inside",
  thresholds: ["meter_sunk"],
  safety: false,
  page: {
    when: "The place of a reading, of a station or in an expectation, lies more than `meter_sunk` (2 cm) below the surface of a person, a box, a ball or a post.",
    means:
      "Nothing can be held there. Down to 5 cm the reading is that of the surface nearest to it; deeper, there is none. What lies less deep than `meter_sunk` is taken as on the surface, without a word: tapes, and heads that are no smooth ovals, are not better than that.",
    todo: "Look for a slip in the place; move it, or what it lies in.",
    source: "Common practice, no source: as far as a tape may be off.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const most = threshold(recipe, "meter_sunk") + 1e-9;
    const solids = solidsOf(scene);
    return heldIn(plan).flatMap(({ name, at: place, facing }): RuleFinding[] => {
      const at = lyingOn(scene.polygons, place);
      const sunk = sunkIn(solids, at);
      if (sunk === null || sunk.of === "stand" || !(sunk.depth > most)) return [];
      const what = sayWhatHolds(scene, sunk);
      const deep = `${name} lies ${sayLength(sunk.depth)} inside ${what}`;
      const isRead = surfaced(solids, at, facing) !== null;
      const way = shortestWay((by) => {
        const there = add(at, by);
        return isWithin(scene.room, there) && sunkIn(solids, there) === null;
      });
      return [
        {
          severity: isRead ? "check" : "stop",
          message: isRead
            ? `${deep}; its reading is that of the surface nearest to it.`
            : `${deep}, where no meter can be held: it has no reading.`,
          remedy:
            way === null
              ? `Move ${name}, or ${what}.`
              : `Look for a slip in its place: it is free ${sayLength(way.by)} ${way.words}; or move ${what}.`,
          about: name,
        },
      ];
    });
  },
};
