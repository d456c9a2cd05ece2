import type { Vec3 } from "../../core/vector.js";
import { radians } from "../../math/rotation.js";
import { addScaled, cross, scale } from "../../math/vector.js";
import { edgeFullWidth, edgeWidthBetween, type ShadowEdge } from "../../physics/edge-share.js";
import { sourceShape } from "../../scene/lamp/optics.js";
import type { Source } from "../../scene/types.js";
import { directionTo } from "../geometry/directions.js";

/**
 * Across which measure of the source the edge is blurred: its width, its height, or the one at an angle (deg) turned
 * from the width towards the height.
 */
export type Across = "width" | "height" | number;

/** The measure of an opening that makes the widest edge: the longer side of a rectangle, the length of a tube. */
export function widestAcross(source: Source): "width" | "height" {
  const { shape } = source;
  if (shape.kind === "capsule") return "height";
  return shape.kind === "rectangle" && shape.height > shape.width ? "height" : "width";
}

/** An edge that stands at the aim, square to the axis, and a surface a gap behind it. */
function edgeAtAim(source: Source, gap: number, across: Across): ShadowEdge | null {
  const sight = directionTo(source.centre, source.aim);
  if (sight === null) return null;
  const turn = radians(across === "width" ? 0 : across === "height" ? 90 : across);
  const wide: Vec3 = addScaled(scale(source.across, Math.cos(turn)), source.along, Math.sin(turn));
  return {
    source: sourceShape(source),
    edgePoint: source.aim,
    edgeDirection: cross(sight, wide),
    surfacePoint: addScaled(source.aim, sight, gap),
    surfaceNormal: scale(sight, -1),
  };
}

/**
 * Full width in metres of the half-shade of an edge at the light's aim, on a surface `gap` metres behind it that is
 * square to the light. Null where the aim lies behind the opening or in it.
 */
export function shadowEdge(
  source: Source,
  gap: number,
  across: Across = widestAcross(source),
): number | null {
  const edge = edgeAtAim(source, gap, across);
  return edge === null ? null : (edgeFullWidth(edge) ?? null);
}

/** The same from 10 to 90 % of the light, by the exact profile. */
export function shadowEdge10to90(
  source: Source,
  gap: number,
  across: Across = widestAcross(source),
): number | null {
  const edge = edgeAtAim(source, gap, across);
  return edge === null ? null : (edgeWidthBetween(edge) ?? null);
}
