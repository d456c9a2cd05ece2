import type { Vec3 } from "../../core/vector.js";
import { buildScene } from "../../scene/build.js";
import { lampName } from "../../scene/lit/seen.js";
import type { Scene, Source } from "../../scene/types.js";
import { atHeight, moveTo } from "../change/move-source.js";
import { withLight } from "../change/rebuild.js";
import { bearingOf, elevationOf, pointAt } from "../geometry/directions.js";
import { firstFace, type Plan } from "../plan.js";
import { startWithHead } from "../say/light.js";
import { floorTo } from "../say/number.js";
import { sayAngle, sayCentimetres, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Whether a head leaves the free space under a ceiling that it needs. */
function isClear(
  { recipe }: Plan,
  ceiling: number,
  { centre, headHeight, hotModellingLamp }: Source,
): boolean {
  const name = hotModellingLamp ? "ceiling_clearance_hot" : "ceiling_clearance";
  return centre[2] + headHeight / 2 <= ceiling - threshold(recipe, name) + 1e-9;
}

/** The lamp at a height where its recipe says that instead of an elevation: on a slanting tape that is not straight below. */
function heightWritten({ recipe }: Plan, source: Source, height: number): Source {
  const written = withLight(recipe, lampName(source), (light) => {
    const { elevation: _, bottom_edge: __, ...rest } = light;
    return { ...rest, height: { value: height, unit: "m", written: `${height} m` } };
  });
  const { sources } = buildScene(written, () => undefined);
  return sources.find(({ name }) => name === source.name) ?? source;
}

/**
 * The highest place of a lamp's centre under a ceiling that leaves the free space it needs, m, down to a centimetre: it
 * points where it did, so that the head stands steeper the lower it comes. 0 where there is none.
 */
export function highestUnderCeiling(plan: Plan, ceiling: number, source: Source): number {
  const light = plan.recipe.lights.find(({ name }) => name === lampName(source));
  const slants = light?.distance !== undefined && light.position === undefined;
  const fits = (height: number): boolean =>
    isClear(plan, ceiling, atHeight(source, height)) &&
    (!slants || isClear(plan, ceiling, heightWritten(plan, source, height)));
  let height = floorTo(ceiling, 0.01);
  while (height > 0 && !fits(height)) height = floorTo(height - 0.01, 0.01);
  return Math.max(0, height);
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
  const base = `${lower}, straight down: seen from the face it then stands at ${sayAngle(after)} instead of ${sayAngle(before)}`;
  const closer = nearerFor(source, face, before, height);
  return closer === null || !isClear(plan, ceiling, closer.there)
    ? `${base}.`
    : `${base}. At ${sayLength(closer.away)} from the face along the floor it keeps its ${sayAngle(before)}.`;
}

/**
 * The floor distance from the face at which a lamp no higher than a height has an elevation, m, down to a centimetre, and
 * the lamp there; null where it would not be nearer.
 */
function nearerFor(
  source: Source,
  face: Vec3,
  elevation: number,
  height: number,
): { readonly away: number; readonly there: Source } | null {
  const rise = height - face[2];
  if (!(elevation > 1) || !(elevation < 85) || !(rise > 0.05)) return null;
  const slope = Math.tan((elevation * Math.PI) / 180);
  const away = floorTo(rise / slope, 0.01);
  const bearing = bearingOf(face, source.centre);
  if (bearing === null || !(away > 0.3)) return null;
  return { away, there: moveTo(source, pointAt(face, bearing, away, face[2] + away * slope)) };
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
