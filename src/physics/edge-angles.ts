import type { Vec3 } from "../core/vector.js";
import { addScaled, cross, dot, normalise, subtract } from "../math/vector.js";
import { type SourceShape, sourceCentre } from "./source-shape.js";

/** The two planes through a straight edge that just touch a source. */
export interface EdgePlanes {
  /** Unit vector along the edge. */
  readonly along: Vec3;
  /** Unit vector from the source's middle to the edge, square to the edge: the way the light goes. */
  readonly axis: Vec3;
  /** Unit vector across the edge: along x axis. */
  readonly across: Vec3;
  /**
   * Angles in radians, from `axis` towards `across`, at which the two touching planes go on behind the edge;
   * low < high.
   */
  readonly low: number;
  readonly high: number;
}

/**
 * The planes through an edge that touch a source: between them lies the penumbra. Exact for every shape and
 * orientation. Undefined where the edge, prolonged, runs through the source, is behind a flat one, or has no
 * direction.
 */
export function edgePlanes(
  source: SourceShape,
  edgePoint: Vec3,
  edgeDirection: Vec3,
): EdgePlanes | undefined {
  const along = normalise(edgeDirection);
  if (along === undefined) return undefined;
  const centre = sourceCentre(source);
  const sight = subtract(edgePoint, centre);
  const axis = normalise(addScaled(sight, along, -dot(sight, along)));
  if (axis === undefined) return undefined;
  if ((source.kind === "disc" || source.kind === "polygon") && !(dot(sight, source.normal) > 0))
    return undefined;
  const across = cross(along, axis);
  const place = (p: Vec3): readonly [x: number, z: number] => {
    const d = subtract(edgePoint, p);
    return [dot(d, across), dot(d, axis)];
  };
  const angles = touching(source, place, across, axis);
  if (angles === undefined) return undefined;
  const [low, high] = angles;
  return { along, axis, across, low, high };
}

type Place = (p: Vec3) => readonly [x: number, z: number];

/** The least and greatest angle of the source's points in the plane square to the edge. */
function touching(
  source: SourceShape,
  place: Place,
  across: Vec3,
  axis: Vec3,
): readonly [low: number, high: number] | undefined {
  switch (source.kind) {
    case "polygon": {
      const angles = source.corners.map((corner) => {
        const [x, z] = place(corner);
        return Math.atan2(x, z);
      });
      const low = Math.min(...angles);
      const high = Math.max(...angles);
      return high - low < Math.PI ? [low, high] : undefined;
    }
    case "sphere":
      return roundEnds(source.radius, place, source.centre, source.centre);
    case "capsule":
      return roundEnds(source.radius, place, source.from, source.to);
    case "disc":
      return ellipse(source.radius, place(source.centre), source.normal, across, axis);
    default:
      return source satisfies never;
  }
}

function roundEnds(radius: number, place: Place, a: Vec3, b: Vec3): readonly [number, number] | undefined {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const end of [a, b]) {
    const [x, z] = place(end);
    const d = Math.sqrt(x * x + z * z);
    if (!(d > radius)) return undefined;
    const middle = Math.atan2(x, z);
    const half = Math.asin(radius / d);
    low = Math.min(low, middle - half);
    high = Math.max(high, middle + half);
  }
  return high - low < Math.PI ? [low, high] : undefined;
}

/** The lines through the edge that touch the ellipse as which the disc appears along the edge. */
function ellipse(
  radius: number,
  centre: readonly [x: number, z: number],
  normal: Vec3,
  across: Vec3,
  axis: Vec3,
): readonly [number, number] | undefined {
  const nx = dot(normal, across);
  const nz = dot(normal, axis);
  const r2 = radius * radius;
  const [x, z] = centre;
  // A line with the normal (cos t, sin t) touches when (n . centre)^2 = r^2 (1 - (n . disc normal)^2).
  const a = x * x - r2 * (1 - nx * nx);
  const b = x * z + r2 * nx * nz;
  const c = z * z - r2 * (1 - nz * nz);
  const swing = Math.sqrt(((a - c) / 2) * ((a - c) / 2) + b * b);
  const level = -(a + c) / 2 / swing;
  if (!(Math.abs(level) < 1)) return undefined;
  const turn = Math.atan2(b, (a - c) / 2);
  const open = Math.acos(level);
  const angles = [turn - open, turn + open].map((double) => {
    const t = double / 2;
    // The line itself, pointing the way the light goes.
    const lx = -Math.sin(t);
    const lz = Math.cos(t);
    return lx * x + lz * z >= 0 ? Math.atan2(lx, lz) : Math.atan2(-lx, -lz);
  });
  const low = Math.min(...angles);
  const high = Math.max(...angles);
  return high - low < Math.PI ? [low, high] : undefined;
}
