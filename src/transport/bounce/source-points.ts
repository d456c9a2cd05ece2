import type { Vec3 } from "../../core/vector.js";
import { frameAround, length, scale } from "../../math/vector.js";
import type { SourceShape } from "../../physics/source-shape.js";

/** How the points of a source lie: over the opening of a flat source, over a tube's outline as the place sees it. */
export interface SourcePoints {
  readonly centre: Float64Array;
  readonly kind: "flat" | "sphere" | "tube";
  /** Two vectors that span the opening; a tube's second one and a sphere's both depend on the place. */
  readonly u: Float64Array;
  readonly v: Float64Array;
  readonly radius: number;
}

const nothing: Vec3 = [0, 0, 0];

const points = (
  kind: SourcePoints["kind"],
  centre: Vec3,
  u: Vec3,
  v: Vec3,
  radius: number,
): SourcePoints => ({
  centre: Float64Array.from(centre),
  kind,
  u: Float64Array.from(u),
  v: Float64Array.from(v),
  radius,
});

const half = (from: Vec3, to: Vec3): Vec3 => [
  (to[0] - from[0]) / 2,
  (to[1] - from[1]) / 2,
  (to[2] - from[2]) / 2,
];

/** Makes the points of a source ready. */
export function pointsOf(shape: SourceShape, centre: Vec3): SourcePoints {
  switch (shape.kind) {
    case "polygon": {
      const [a, b, , d] = shape.corners;
      const four = shape.corners.length === 4 && a !== undefined && b !== undefined && d !== undefined;
      return points("flat", centre, four ? half(a, b) : nothing, four ? half(a, d) : nothing, 0);
    }
    case "disc": {
      const [u, v] = frameAround(shape.normal);
      const { radius } = shape;
      return points("flat", centre, scale(u, radius), scale(v, radius), radius);
    }
    case "sphere":
      return points("sphere", centre, nothing, nothing, shape.radius);
    case "capsule": {
      const { from, to, radius } = shape;
      const tube = half(from, to);
      const long = length(tube);
      if (!(long > 0)) return points("sphere", centre, nothing, nothing, radius);
      // The round ends as a stretch of the tube with their area.
      const u = scale(tube, (long + (radius * Math.PI) / 4) / long);
      return points("tube", centre, u, nothing, radius);
    }
    default:
      return shape satisfies never;
  }
}

/** Two vectors that span the source as a place sees it; written over by `spanAt`. */
export interface Span {
  ux: number;
  uy: number;
  uz: number;
  vx: number;
  vy: number;
  vz: number;
}

/** A span to be written into. */
export function emptySpan(): Span {
  return { ux: 0, uy: 0, uz: 0, vx: 0, vy: 0, vz: 0 };
}

/** Writes the vectors that span a source seen from a place. */
export function spanAt(source: SourcePoints, places: Float64Array, at: number, out: Span): void {
  const { centre, kind, u, v, radius } = source;
  out.ux = u[0] as number;
  out.uy = u[1] as number;
  out.uz = u[2] as number;
  out.vx = v[0] as number;
  out.vy = v[1] as number;
  out.vz = v[2] as number;
  if (kind === "flat") return;
  let sx = (centre[0] as number) - (places[at] as number);
  let sy = (centre[1] as number) - (places[at + 1] as number);
  let sz = (centre[2] as number) - (places[at + 2] as number);
  const far = Math.sqrt(sx * sx + sy * sy + sz * sz);
  if (!(far > 0)) return;
  sx /= far;
  sy /= far;
  sz /= far;
  if (kind === "sphere") {
    const level = Math.sqrt(sx * sx + sy * sy);
    const ax = level > 1e-9 ? -sy / level : 1;
    const ay = level > 1e-9 ? sx / level : 0;
    out.ux = radius * ax;
    out.uy = radius * ay;
    out.uz = 0;
    out.vx = radius * -sz * ay;
    out.vy = radius * sz * ax;
    out.vz = radius * (sx * ay - sy * ax);
    return;
  }
  // Square to the tube and to the line of sight.
  const cx = out.uy * sz - out.uz * sy;
  const cy = out.uz * sx - out.ux * sz;
  const cz = out.ux * sy - out.uy * sx;
  const size = Math.sqrt(cx * cx + cy * cy + cz * cz);
  if (!(size > 0)) return;
  out.vx = (radius * cx) / size;
  out.vy = (radius * cy) / size;
  out.vz = (radius * cz) / size;
}
