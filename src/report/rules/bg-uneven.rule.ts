import type { Vec3 } from "../../core/vector.js";
import { aimAt, withSource } from "../change/move-source.js";
import { whiteWish } from "../light/background.js";
import { lightsOn, type Plan } from "../plan.js";
import { list } from "../say/number.js";
import { sayStops } from "../say/quantity.js";
import { ownerOf, startWithOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { type BackgroundSpread, backgroundSpread } from "./background-spread.js";
import type { Rule } from "./rule.js";

const spreadOf = ({ bright, dark }: BackgroundSpread): number => bright.stops - dark.stops;

/** The plan with every background lamp aimed one third in from the edge on its own side; null without two sides. */
function aimedIn(plan: Plan, { station }: BackgroundSpread): Plan | null {
  const at = (part: string): Vec3 | undefined =>
    plan.scene.stations.find((row) => row.name === `${station.name}.${part}`)?.at;
  const [left, right] = [at("left"), at("right")];
  if (left === undefined || right === undefined) return null;
  // The stations lie a third of the width from the middle; one third in from the edge is a sixth from the middle.
  const between = (edge: Vec3): Vec3 =>
    [0, 1, 2].map((i) => ((edge[i] ?? 0) + (station.at[i] ?? 0)) / 2) as never;
  return lightsOn(plan.scene)
    .filter((source) => source.role === "background")
    .reduce((sofar, lamp) => {
      const own = Math.abs(lamp.centre[0] - left[0]) < Math.abs(lamp.centre[0] - right[0]) ? left : right;
      return withSource(sofar, plan.scene.sources.indexOf(lamp), aimAt(lamp, between(own)));
    }, plan);
}

function remedyFor(plan: Plan, found: BackgroundSpread): string {
  const lamps = lightsOn(plan.scene).filter((source) => source.role === "background");
  if (lamps.length === 0) return "Move the key back from it, or light it with a lamp from each side.";
  const names = list(lamps.map((lamp) => lamp.name));
  const changed = lamps.length > 1 ? aimedIn(plan, found) : null;
  const there = changed === null ? null : backgroundSpread(changed);
  return there !== null && spreadOf(there) < spreadOf(found) - 0.05
    ? `Aim ${names} one third in from the edge on each one's own side: the spread is then ${sayStops(spreadOf(there))}. Further back they light it more evenly still.`
    : `Move ${names} further back from it${lamps.length === 1 ? ", or add one from the other side" : ""}.`;
}

/** A background is uneven in the picture. */
export const bgUneven: Rule = {
  code: "bg-uneven",
  thresholds: ["uneven_white", "uneven_grey"],
  safety: false,
  page: {
    when: "`intent` wishes for a `background`, or a light has the role `background`, and the brightest and the darkest place of the background in the picture are more than `uneven_white` (0.6 stop) apart where the wish is for one at or over a reading, else more than `uneven_grey` (0.3 stop). 20 places on the first upright piece of the set behind the subject, else the wall that belongs to the set. A check for a white background, a note for any other.",
    means: "The background shows a gradient or a hot spot. White that clips hides more of it than grey does.",
    todo: "Move the lamps back, or aim each one third in from its own edge.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const most = threshold(plan.recipe, whiteWish(plan) ? "uneven_white" : "uneven_grey");
    const found = backgroundSpread(plan, most);
    if (found === null || spreadOf(found) <= most + 1e-9) return [];
    return [
      {
        // A gradient on grey is often meant.
        severity: whiteWish(plan) ? "check" : "note",
        message: `${startWithOwner(found.station.name)} differs by ${sayStops(spreadOf(found))} in the picture: brightest ${found.bright.where}, darkest ${found.dark.where}.`,
        remedy: remedyFor(plan, found),
        about: ownerOf(found.station.name),
      },
    ];
  },
};
