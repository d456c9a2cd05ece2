import type { Vec3 } from "../../core/vector.js";
import { add, distance } from "../../math/vector.js";
import type { Expr } from "../../model/values.js";
import { lyingOn } from "../../scene/lying-on.js";
import { type Solids, type Sunk, solidsOf, sunkIn, surfaced } from "../../scene/sunk.js";
import type { Station } from "../../scene/types.js";
import { meterKey } from "../../transport/meter.js";
import { meterHeld } from "../evaluate/reading.js";
import { isInRoom, shortestWay } from "../geometry/ways-out.js";
import type { Plan } from "../plan.js";
import { sayWhatHolds } from "../say/bodies.js";
import { sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** A meter, by the name of its place; where it looks, in words. */
type Held = Pick<Station, "name" | "at" | "facing" | "receptor" | "looks">;

type ReadingExpr = Extract<Expr, { kind: "reading" }>;

/** The readings in what a recipe expects, wherever they stand. */
function readingsIn(part: unknown): readonly ReadingExpr[] {
  if (Array.isArray(part)) return part.flatMap(readingsIn);
  if (typeof part !== "object" || part === null) return [];
  const own = "kind" in part && part.kind === "reading" && "station" in part ? [part as ReadingExpr] : [];
  return [...own, ...Object.values(part).flatMap(readingsIn)];
}

/** Where meters are held: at the stations, and where expectations ask. One for each meter and name. */
function heldIn(plan: Plan): readonly Held[] {
  const asked = readingsIn(plan.recipe.expectations).flatMap((expr): Held[] => {
    const meter = meterHeld(plan, expr);
    if (typeof meter === "string") return [];
    const looks = expr.towards === null ? "" : `towards ${expr.towards.written}`;
    const { at, facing } = meter;
    return [{ name: expr.station, at, facing, receptor: expr.receptor, looks }];
  });
  const held = new Map<string, Held>();
  for (const row of [...plan.scene.stations, ...asked]) {
    const key = `${row.name} ${meterKey(row)}`;
    if (!held.has(key)) held.set(key, row);
  }
  return [...held.values()];
}

/** A meter that lies in something. */
interface Inside {
  readonly meter: Held;
  /** The place, on the sheet on which it lies. */
  readonly at: Vec3;
  readonly sunk: Sunk;
  /** Whether it has a reading, that of the surface. */
  readonly isRead: boolean;
}

/** The meters that are to be spoken of: deeper than a recipe lets pass, or without a reading. */
function insideOf(plan: Plan, solids: Solids): readonly Inside[] {
  const most = threshold(plan.recipe, "meter_sunk") + 1e-9;
  return heldIn(plan).flatMap((meter): Inside[] => {
    const at = lyingOn(plan.scene.polygons, meter.at);
    const sunk = sunkIn(solids, at);
    if (sunk === null || sunk.of === "stand") return [];
    const isRead = surfaced(solids, at, meter.facing) !== null;
    return isRead && !(sunk.depth > most) ? [] : [{ meter, at, sunk, isRead }];
  });
}

/** Whether two meters of one name have the same to be said of them. */
const isAlike = (a: Inside, b: Inside): boolean => distance(a.at, b.at) < 1e-6 && a.isRead === b.isRead;

/** A meter is held in a person or in a solid piece of the set. */
export const meterInside: Rule = {
  code: "meter-inside",
  thresholds: ["meter_sunk"],
  safety: false,
  page: {
    when: "The place of a reading, of a station or in an expectation, lies more than `meter_sunk` (2 cm) below the surface of a person, a box, a ball or a post; or, whatever the recipe sets, so deep that there is no reading.",
    means:
      "Nothing can be held there. Down to 5 cm the reading is that of the surface nearest to it; deeper, there is none. What lies less deep than `meter_sunk` is taken as on the surface, without a word: tapes, and heads that are no smooth ovals, are not better than that.",
    todo: "Look for a slip in the place; move it, or what it lies in.",
    source: "Common practice, no source: as far as a tape may be off.",
  },
  check: (plan) => {
    const { scene } = plan;
    const solids = solidsOf(scene);
    const inside = insideOf(plan, solids);
    return inside.flatMap((row, i): RuleFinding[] => {
      const { meter, at, sunk, isRead } = row;
      const { name } = meter;
      const same = inside.slice(0, i).filter((other) => other.meter.name === name);
      if (same.some((other) => isAlike(other, row))) return [];
      const what = sayWhatHolds(scene, sunk);
      // Another meter of this name stands elsewhere: say which.
      const isElsewhere =
        scene.stations.some((other) => other.name === name) && !scene.stations.includes(meter as Station);
      const which =
        isElsewhere || same.length > 0 ? `${name} (${`${meter.receptor} ${meter.looks}`.trim()})` : name;
      const deep = `${which} lies ${sayLength(sunk.depth)} inside ${what}`;
      const way = shortestWay((by) => {
        const there = add(at, by);
        return isInRoom(scene.room, there) && sunkIn(solids, there) === null;
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
