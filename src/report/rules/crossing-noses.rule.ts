import { degrees } from "../../math/rotation.js";
import { dot, subtract } from "../../math/vector.js";
import { discTowards } from "../../scene/held-meter.js";
import { seenLight } from "../../scene/lit/seen.js";
import type { SceneSubject, Source } from "../../scene/types.js";
import { directionTo } from "../geometry/directions.js";
import { directFrom, shareOf } from "../light/reading.js";
import { sizeFrom } from "../light/size.js";
import { firstSubject, type Lit, lightsOn } from "../plan.js";
import { ceilTo, fixed } from "../say/number.js";
import { sayStops } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule } from "./rule.js";

/** Lights nearer to the nose line than this, in deg, throw no shadow to the side. */
const FRONTAL = 10;
/** Lights further off the nose line than this, in deg, do not light the front of the face. */
const BEHIND = 95;
/** Lights wider than this from the face, in deg, throw no nose shadow worth the name. */
const WIDE = 45;

/** One light as the face has it: its exposure on a disc turned to it, and the side it comes from. */
interface Sided {
  readonly source: Source;
  readonly exposure: number;
  readonly side: 1 | -1;
}

function sided(lit: Lit, subject: SceneSubject, lamp: Source): Sided | null {
  const source = seenLight(lamp);
  const facing = directionTo(subject.face, source.centre);
  const size = sizeFrom(source, subject.face);
  if (facing === null || size === null || size.equivalent > WIDE) return null;
  const off = degrees(Math.acos(Math.min(1, Math.max(-1, dot(facing, subject.nose)))));
  if (off < FRONTAL || off > BEHIND) return null;
  const side = dot(subtract(source.centre, subject.face), subject.across) >= 0 ? 1 : -1;
  const meter = discTowards(lit.scene.stations, subject.face, source.centre);
  if (meter === null) return { source: lamp, side, exposure: 0 };
  if (lamp.patch === undefined) return { source, side, exposure: directFrom(lit, lamp.name, meter) };
  // A lit patch gives its light by way of its surface.
  const { direct, bounced } = shareOf(lit, lamp.name, meter);
  return { source: lamp, side, exposure: direct + bounced };
}

/** The strongest light from each side of the nose; null where one side has none. */
function strongest(lit: Lit, subject: SceneSubject): readonly [Sided, Sided] | null {
  const all = lightsOn(lit.scene).flatMap((source) => sided(lit, subject, source) ?? []);
  const best = (side: 1 | -1): Sided | undefined =>
    all.filter((row) => row.side === side && row.exposure > 0).sort((a, b) => b.exposure - a.exposure)[0];
  const a = best(1);
  const b = best(-1);
  return a === undefined || b === undefined ? null : a.exposure >= b.exposure ? [a, b] : [b, a];
}

/** Two lights from both sides throw two shadows of the nose. */
export const crossingNoses: Rule = {
  code: "crossing-noses",
  thresholds: ["crossing"],
  safety: false,
  page: {
    when: "Two lights stand on either side of the first subject's nose line, 10 to 95 deg off it and no wider than 45 deg from the face, and differ by less than `crossing` (1 stop) there.",
    means: "The nose throws a shadow to each side, and they cross on the lip.",
    todo: "Turn one down by a stop or more, move it to the nose line, or make it large.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const subject = firstSubject(scene);
    const pair = subject === null ? null : strongest(plan, subject);
    if (pair === null) return [];
    const [strong, weak] = pair;
    const difference = Math.log2(strong.exposure / weak.exposure);
    const least = threshold(recipe, "crossing");
    if (difference >= least - 1e-9) return [];
    const down = ceilTo(least + 0.5 - difference, 0.1);
    return [
      {
        severity: "check",
        message: `${strong.source.name} and ${weak.source.name} light the face from both sides, ${sayStops(difference)} apart: the nose gets two shadows.`,
        remedy: `Turn ${weak.source.name} down by ${fixed(down, 1)} stop, which leaves ${sayStops(difference + down)} between them, or move it to the nose line.`,
        about: weak.source.name,
      },
    ];
  },
};
