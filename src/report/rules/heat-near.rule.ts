import { addScaled, distance, normalise, subtract } from "../../math/vector.js";
import { lampName } from "../../scene/lit/seen.js";
import type { Scene, ScenePolygon, Source } from "../../scene/types.js";
import { nearestOn, openingPoints } from "../geometry/near.js";
import type { Plan } from "../plan.js";
import { ceilTo, floorTo } from "../say/number.js";
import { sayCentimetres } from "../say/quantity.js";
import { ownerOf } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

const burns: ReadonlySet<ScenePolygon["kind"]> = new Set(["paper", "scrim", "card", "flat", "panel"]);

/** The piece of the set that is nearest to a lamp's opening. */
interface Nearest {
  readonly piece: string;
  readonly gap: number;
  /** Unit vector from it to the lamp; null where they touch. */
  readonly away: ReturnType<typeof normalise> | null;
}

/** What can burn and is nearest to a lamp; null where the set has none. */
export function nearestPiece(scene: Scene, source: Source): Nearest | null {
  const { points, radius } = openingPoints(source);
  let best: Nearest | null = null;
  for (const polygon of scene.polygons) {
    if (!burns.has(polygon.kind)) continue;
    for (const point of points) {
      const place = nearestOn(polygon, point);
      const gap = Math.max(0, distance(point, place) - radius);
      if (best === null || gap < best.gap) {
        best = { piece: ownerOf(polygon.name), gap, away: normalise(subtract(point, place)) ?? null };
      }
    }
  }
  return best;
}

/** Moving the lamp straight away from what is nearest, if that clears all; else a cool lamp. */
function remedyFor(scene: Scene, source: Source, near: Nearest, needed: number): string {
  const cool = "use a cool modelling lamp or none";
  const step = ceilTo(needed - near.gap, 0.01);
  if (near.away == null) return `Move it away, or ${cool}.`;
  const moved = { ...source, centre: addScaled(source.centre, near.away, step) };
  const there = nearestPiece(scene, moved)?.gap ?? needed;
  return there < needed - 1e-6
    ? `No straight move clears everything: ${cool}.`
    : `Move it ${sayCentimetres(step)} away from ${near.piece}: then nothing is nearer than ${sayCentimetres(floorTo(there + 1e-9, 0.01))}. Or ${cool}.`;
}

/** Cloth, paper or board, or a gel, near a hot lamp. */
export const heatNear: Rule = {
  code: "heat-near",
  thresholds: ["heat_clearance"],
  safety: true,
  page: {
    when: "A light has `modelling_lamp: hot`, and its opening is nearer than `heat_clearance` (50 cm) to a flat, paper, card, scrim or panel; with a gel on it, it is a check. The maker's distance counts where it is larger.",
    means: "Cloth, paper, board or a gel scorches, smokes, or burns.",
    todo: "Move the lamp, use a cool one, leave an air gap before a gel; materials that the rules of the place ask for; never left alone.",
    source: "Common practice, no source.",
  },
  check: (plan: Plan) => {
    const { scene, recipe } = plan;
    const needed = threshold(recipe, "heat_clearance");
    return scene.sources.flatMap((source): readonly RuleFinding[] => {
      if (!source.hotModellingLamp) return [];
      const name = lampName(source);
      const near = nearestPiece(scene, source);
      const found: RuleFinding[] = [];
      if (near !== null && near.gap < needed - 1e-9) {
        found.push({
          severity: "stop",
          message: `The hot lamp of ${name} is ${sayCentimetres(floorTo(near.gap, 0.01))} from ${near.piece}, less than ${sayCentimetres(needed)}: it may scorch.`,
          remedy: remedyFor(scene, source, near, needed),
          about: name,
        });
      }
      const gels = recipe.lights.find((light) => light.name === name)?.gel?.items.length ?? 0;
      if (gels > 0) {
        found.push({
          severity: "check",
          message: `A gel is on the hot lamp of ${name}: it may scorch or melt.`,
          remedy:
            "Hold it off in a frame with an air gap, use a gel that is made for heat, or a cool modelling lamp.",
          about: name,
        });
      }
      return found;
    });
  },
};
