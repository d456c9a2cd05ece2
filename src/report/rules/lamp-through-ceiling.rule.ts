import { lampName } from "../../scene/lit/seen.js";
import type { Scene, Source } from "../../scene/types.js";
import { atHeight } from "../change/move-source.js";
import { bearingOf, elevationOf, pointAt } from "../geometry/directions.js";
import { firstFace, type Plan } from "../plan.js";
import { startWithHead } from "../say/light.js";
import { ceilTo, floorTo } from "../say/number.js";
import { sayAngle, sayCentimetres, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** The highest place of a lamp's centre under a ceiling that leaves the free space it needs, m, down to a centimetre. */
export function highestUnderCeiling({ recipe }: Plan, ceiling: number, source: Source): number {
  const name = source.hotModellingLamp ? "ceiling_clearance_hot" : "ceiling_clearance";
  return floorTo(ceiling - threshold(recipe, name) - source.headHeight / 2, 0.01);
}

/** Lower it, with the elevation that this leaves; and the floor distance that keeps the elevation. */
export function lowerWords(plan: Plan, scene: Scene, source: Source, ceiling: number): string {
  const height = highestUnderCeiling(plan, ceiling, source);
  const face = firstFace(scene);
  if (height <= 0) return "This room is too low for the lamp; use a smaller head.";
  const lower = `Lower its centre to ${sayLength(height)}`;
  // Where the light is another place than this head, its own elevation says nothing.
  if (face === null || source.patch !== undefined || source.spillOf !== undefined) return `${lower}.`;
  const before = elevationOf(face, source.centre);
  const after = elevationOf(face, atHeight(source, height).centre);
  if (sayAngle(after) === sayAngle(before)) return `${lower}.`;
  const base = `${lower}: seen from the face it then stands at ${sayAngle(after)} instead of ${sayAngle(before)}`;
  const closer = nearerFor(source, face, before, height);
  return closer === null
    ? `${base}.`
    : `${base}. At ${sayLength(closer)} from the face along the floor it keeps its ${sayAngle(before)}.`;
}

/** The floor distance from the face at which a lamp of a height has an elevation, m; null where it would not be nearer. */
function nearerFor(
  source: Source,
  face: readonly [number, number, number],
  elevation: number,
  height: number,
): number | null {
  const rise = height - face[2];
  if (!(elevation > 1) || !(elevation < 85) || !(rise > 0.05)) return null;
  const away = rise / Math.tan((elevation * Math.PI) / 180);
  const bearing = bearingOf(face, source.centre);
  if (bearing === null) return null;
  const there = elevationOf(face, pointAt(face, bearing, away, height));
  return Math.abs(there - elevation) < 0.1 && away > 0.3 ? ceilTo(away, 0.01) : null;
}

/** The lamp does not fit under the ceiling. */
export const lampThroughCeiling: Rule = {
  code: "lamp-through-ceiling",
  thresholds: ["ceiling_clearance", "ceiling_clearance_hot"],
  safety: false,
  page: {
    when: "The top of a lamp's head (the centre of the lit opening plus half of `head_height`) is higher than the ceiling of the room.",
    means:
      "The set-up cannot be built. High and far are at odds under a ceiling, which is what usually decides how steep a light can be.",
    todo: "Lower the lamp, and accept the lower light; or bring it nearer, which keeps the angle; or seat or kneel the subject, which makes the same lamp steeper.",
    source: "Geometry. The free space kept in the remedy is common practice, no source.",
  },
  check: (plan) => {
    const { scene } = plan;
    const { room } = scene;
    if (room === null) return [];
    return scene.sources.flatMap((source): RuleFinding[] => {
      const top = source.centre[2] + source.headHeight / 2;
      if (!(top > room.height + 1e-9)) return [];
      return [
        {
          severity: "stop",
          message: `${startWithHead(source)} at ${sayLength(source.centre[2])} does not fit under the ceiling of ${sayLength(room.height)}: its head ends ${sayCentimetres(top - room.height)} above it.`,
          remedy: lowerWords(plan, scene, source, room.height),
          about: lampName(source),
        },
      ];
    });
  },
};
