import type { Vec3 } from "../core/vector.js";
import { gaussLegendre, type QuadratureRule } from "../math/quadrature.js";
import { dot, frameAround, subtract } from "../math/vector.js";
import type { RoundBeam } from "./beam.js";
import type { DiscSource, PolygonSource } from "./source-shape.js";

const SHORT = /* @__PURE__ */ gaussLegendre(6);
const LONG = /* @__PURE__ */ gaussLegendre(14);

/** A flat opening with a beam, made ready for many readings. */
export interface BeamOpening {
  readonly origin: Vec3;
  readonly normal: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  /** Radius of a disc about the origin, m; 0 for a polygon. */
  readonly radius: number;
  /** Corners of a polygon in its plane, x and y in a row, counter-clockwise as seen from its front, m. */
  readonly corners: Float64Array;
  /** Tangent of the angle off the axis at which a grid ends; beyond all numbers without one. */
  readonly reach: number;
  /** Power of the cosine with which the intensity goes; 0 behind a grid. */
  readonly power: number;
  readonly short: QuadratureRule;
  readonly long: QuadratureRule;
  /** Room to work in: corners above a horizon, and angles of a circle. */
  readonly cut: Float64Array;
  readonly angles: Float64Array;
}

/** Prepares a flat source with a beam; a source of one luminance has a power of 1. */
export function beamOpening(source: DiscSource | PolygonSource, beam: RoundBeam): BeamOpening {
  const [u, v] = frameAround(source.normal);
  const origin = source.kind === "disc" ? source.centre : (source.corners[0] ?? [0, 0, 0]);
  const corners = source.kind === "disc" ? [] : source.corners.map((corner) => subtract(corner, origin));
  const flat = Float64Array.from(corners.flatMap((corner) => [dot(corner, u), dot(corner, v)]));
  return {
    origin,
    normal: source.normal,
    u,
    v,
    radius: source.kind === "disc" ? source.radius : 0,
    corners: counterClockwise(flat),
    reach: beam.kind === "grid" ? Math.tan(beam.cutoff / 2) : Number.POSITIVE_INFINITY,
    power: beam.kind === "cosine-power" ? beam.n : beam.kind === "grid" ? 0 : 1,
    short: SHORT,
    long: LONG,
    cut: new Float64Array(2 * flat.length + 4),
    angles: new Float64Array(16),
  };
}

function counterClockwise(corners: Float64Array): Float64Array {
  const count = corners.length / 2;
  let twice = 0;
  for (let i = 0; i < count; i++) {
    const j = i + 1 < count ? i + 1 : 0;
    twice +=
      (corners[2 * i] as number) * (corners[2 * j + 1] as number) -
      (corners[2 * j] as number) * (corners[2 * i + 1] as number);
  }
  if (twice >= 0) return corners;
  return corners.map((_, k) => corners[2 * (count - 1 - (k >> 1)) + (k & 1)] as number);
}
