import type { Vec3 } from "../../core/vector.js";
import { radians } from "../../math/rotation.js";
import { addScaled, cross, dot, length, scale } from "../../math/vector.js";
import { edgeFullWidth, edgeWidthBetween, type ShadowEdge } from "../../physics/edge-share.js";
import { sourceBeam, sourceShape } from "../../scene/lamp/optics.js";
import type { Source } from "../../scene/types.js";
import { directionTo } from "../geometry/directions.js";

/**
 * Across which measure of the source the edge is blurred: its width, its height, or the one at an angle (deg) turned
 * from the width towards the height.
 */
export type Across = "width" | "height" | number;

/**
 * The measure of an opening that makes the widest edge: the diagonal of a rectangle, the length of a tube, the diameter
 * of a disc that is not foreshortened.
 */
export function widestAcross(source: Source): Across {
  const { shape } = source;
  switch (shape.kind) {
    case "capsule":
      return "height";
    case "sphere":
      return "width";
    case "disc":
      return acrossFeather(source) ?? "width";
    case "rectangle": {
      const angle = (Math.atan2(shape.height, shape.width) * 180) / Math.PI;
      return seenLength(source, angle) >= seenLength(source, -angle) ? angle : -angle;
    }
    default:
      return shape satisfies never;
  }
}

/** The measure that makes the narrowest edge: the shorter side of a rectangle, the thickness of a tube. */
export function narrowestAcross(source: Source): Across {
  const { shape } = source;
  if (shape.kind === "rectangle") {
    const sides = [seenLength(source, 0) * shape.width, seenLength(source, 90) * shape.height] as const;
    return sides[1] < sides[0] ? "height" : "width";
  }
  if (shape.kind !== "disc") return "width";
  const wide = acrossFeather(source);
  return wide === null ? "width" : wide + 90;
}

/** Length of a unit vector in the opening, at an angle from its width, as it is seen from the aim. */
function seenLength(source: Source, angle: number): number {
  const sight = directionTo(source.centre, source.aim);
  return sight === null ? 1 : length(cross(sight, acrossVector(source, angle)));
}

/** The angle of the line in a disc that is square to the sight from the aim; null where every line is. */
function acrossFeather(source: Source): number | null {
  const sight = directionTo(source.centre, source.aim);
  const square = sight === null ? null : cross(source.axis, sight);
  if (square === null || length(square) < 1e-9) return null;
  return (Math.atan2(dot(square, source.along), dot(square, source.across)) * 180) / Math.PI;
}

function acrossVector(source: Source, across: Across): Vec3 {
  const turn = radians(across === "width" ? 0 : across === "height" ? 90 : across);
  return addScaled(scale(source.across, Math.cos(turn)), source.along, Math.sin(turn));
}

/** An edge that stands at the aim, square to the axis, and a surface a gap behind it. */
export function edgeAtAim(source: Source, gap: number, across: Across): ShadowEdge | null {
  const sight = directionTo(source.centre, source.aim);
  if (sight === null) return null;
  return {
    source: sourceShape(source),
    edgePoint: source.aim,
    edgeDirection: cross(sight, acrossVector(source, across)),
    surfacePoint: addScaled(source.aim, sight, gap),
    surfaceNormal: scale(sight, -1),
    beam: sourceBeam(source),
  };
}

/**
 * Full width in metres of the half-shade of an edge at the light's aim, on a surface `gap` metres behind it that is
 * square to the line from the light to the aim. Null where the aim lies behind the opening or in it, or out of the beam.
 */
export function shadowEdge(
  source: Source,
  gap: number,
  across: Across = widestAcross(source),
): number | null {
  const edge = edgeAtAim(source, gap, across);
  return edge === null ? null : (edgeFullWidth(edge) ?? null);
}

/** The same from 10 to 90 % of the light, by the profile that the opening makes with its beam. */
export function shadowEdge10to90(
  source: Source,
  gap: number,
  across: Across = widestAcross(source),
): number | null {
  const edge = edgeAtAim(source, gap, across);
  return edge === null ? null : (edgeWidthBetween(edge) ?? null);
}
