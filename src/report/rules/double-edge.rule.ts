import { degrees } from "../../math/rotation.js";
import { angleBetween, subtract } from "../../math/vector.js";
import { lampName, seenLight } from "../../scene/lit/seen.js";
import type { Source } from "../../scene/types.js";
import type { Meter } from "../../transport/meter.js";
import { directionTo } from "../geometry/directions.js";
import { sizeFrom } from "../light/size.js";
import type { Plan } from "../plan.js";
import { ceilTo, fixed } from "../say/number.js";
import { sayAngle, sayEdge } from "../say/quantity.js";
import { sayOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { castFor } from "../thrown/cast.js";
import { middleEdge, outlineEdges } from "../thrown/shadows-of.js";
import { keyLight } from "./key-light.js";
import type { Rule, RuleFinding } from "./rule.js";

/** One edge is this many times wider than the other to be seen beside it. */
const WIDER = 3;
/** Each opening gives at least this share of the light of the two. */
const SHARE = 0.2;
/** A surface nearer to the subject than this, m, shows no second edge. */
const GAP = 0.3;

/** One of two openings that shine from nearly the same place. */
interface Opening {
  readonly source: Source;
  readonly size: number;
  readonly exposure: number;
}

/** The widths of both edges on the surface on which they lie furthest behind the subject, m; null without one. */
function edgesOf(plan: Plan, narrow: Source, wide: Source) {
  const cast = castFor(plan);
  const [a, b] = [narrow, wide].map((source) =>
    cast.throwers.people.slice(0, 1).flatMap((person) => cast.shadows(source, person)),
  );
  for (const shadow of a ?? []) {
    const other = (b ?? []).find(({ surface }) => surface === shadow.surface);
    const first = middleEdge(outlineEdges(shadow));
    const second = other === undefined ? null : middleEdge(outlineEdges(other));
    if (first === null || second === null || first.gap <= GAP) continue;
    return { surface: shadow.surface, narrow: first.full, wide: second.full };
  }
  return null;
}

function openings(plan: Plan, meter: Meter): readonly Opening[] {
  return plan.scene.sources.flatMap((source): Opening[] => {
    const size = sizeFrom(seenLight(source), meter.at);
    const facing = directionTo(meter.at, seenLight(source).centre);
    if (!(source.energy > 0) || size === null || facing === null) return [];
    const turned = { ...meter, facing };
    // A lit patch gives its light by way of its surface.
    const share =
      source.patch === undefined
        ? plan.light.direct(source, turned)
        : plan.light.reach(source, turned).bounced;
    const exposure = source.energy * share;
    return exposure > 0 ? [{ source, size: size.equivalent, exposure }] : [];
  });
}

/** Two openings of unlike size shine from nearly the same place: one shadow with two edges. */
export const doubleEdge: Rule = {
  code: "double-edge",
  thresholds: ["double_edge"],
  safety: false,
  page: {
    when: "Two openings stand within `double_edge` (6 deg) of each other as the first subject's face sees them, one at least three times as wide as the other, each gives a fifth or more of the light of both, and their shadows fall on a surface more than 30 cm behind what throws them: a bare head that shines past its cloth, a small lamp beside a large one.",
    means: "A sharp edge runs inside a soft one. It reads as a fault.",
    todo: "Keep the head's light inside its cloth, or take one of the two away.",
    source: "Geometry; the thresholds are common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    if (key === null) return [];
    const near = threshold(plan.recipe, "double_edge");
    const all = openings(plan, key.station);
    return all.flatMap((narrow): RuleFinding[] =>
      all.flatMap((wide): RuleFinding[] => {
        if (wide === narrow || !(wide.size >= WIDER * narrow.size)) return [];
        const ways = [narrow, wide].map(({ source }) => subtract(seenLight(source).centre, key.face));
        const [a, b] = ways;
        const off = a === undefined || b === undefined ? 180 : degrees(angleBetween(a, b));
        const share = narrow.exposure / (narrow.exposure + wide.exposure);
        if (off > near || share < SHARE || share > 1 - SHARE) return [];
        const found = edgesOf(plan, narrow.source, wide.source);
        if (found === null) return [];
        const own = lampName(narrow.source) === lampName(wide.source);
        const name = lampName(narrow.source);
        return [
          {
            severity: "note",
            message: own
              ? `${name} shines past its cloth: on ${sayOwner(found.surface)} the shadow has an edge of ${sayEdge(found.narrow)} by the head and one of ${sayEdge(found.wide)} by the cloth.`
              : `${name} and ${lampName(wide.source)} stand ${sayAngle(off)} apart: on ${sayOwner(found.surface)} the shadow has an edge of ${sayEdge(found.narrow)} inside one of ${sayEdge(found.wide)}.`,
            remedy: own
              ? `Bring the head nearer to its cloth, or flag what goes past it: ${fixed(share * 100, 0)} % of the light on the face does.`
              : `Use one of the two, or move them more than ${fixed(ceilTo(near, 1), 0)} deg apart.`,
            about: name,
          },
        ];
      }),
    );
  },
};
