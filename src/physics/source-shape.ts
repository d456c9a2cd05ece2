import type { Vec3 } from "../core/vector.js";
import { areaVector } from "../math/polygon.js";
import { add, addScaled, cross, distance, dot, length, normalise } from "../math/vector.js";

/** A flat disc that emits from the side its normal points to. */
export interface DiscSource {
  readonly kind: "disc";
  readonly centre: Vec3;
  /** Unit vector out of the front. */
  readonly normal: Vec3;
  /** Metres, above 0. */
  readonly radius: number;
}

/** A flat convex polygon that emits from the side its normal points to, from which its corners run counter-clockwise. */
export interface PolygonSource {
  readonly kind: "polygon";
  readonly corners: readonly Vec3[];
  /** Unit vector out of the front. */
  readonly normal: Vec3;
}

/** A sphere that emits from its whole surface. */
export interface SphereSource {
  readonly kind: "sphere";
  readonly centre: Vec3;
  /** Metres, above 0. */
  readonly radius: number;
}

/** The convex hull of two equal spheres, a tube with round ends, that emits from its whole surface. */
export interface CapsuleSource {
  readonly kind: "capsule";
  /** Centre of one round end. */
  readonly from: Vec3;
  /** Centre of the other round end. */
  readonly to: Vec3;
  /** Metres, above 0. */
  readonly radius: number;
}

/** A body of the same luminance everywhere and in every direction (a Lambertian source). */
export type SourceShape = DiscSource | PolygonSource | SphereSource | CapsuleSource;

/**
 * A rectangle by its centre, the unit vectors along its width and its height, and its size in metres. Its front is
 * where `across x up` points: a viewer in front of it who sees `up` upwards sees `across` to the right.
 */
export function rectangleSource(
  centre: Vec3,
  across: Vec3,
  up: Vec3,
  width: number,
  height: number,
): PolygonSource {
  const left = addScaled(centre, across, -width / 2);
  const right = addScaled(centre, across, width / 2);
  const [down, high] = [-height / 2, height / 2];
  return {
    kind: "polygon",
    corners: [
      addScaled(left, up, down),
      addScaled(right, up, down),
      addScaled(right, up, high),
      addScaled(left, up, high),
    ],
    normal: cross(across, up),
  };
}

/** A polygon that emits from the side from which its corners run counter-clockwise; undefined without an area. */
export function polygonSource(corners: readonly Vec3[]): PolygonSource | undefined {
  const normal = normalise(areaVector(corners));
  return normal === undefined ? undefined : { kind: "polygon", corners, normal };
}

/** The surface that emits, in square metres: one side of a flat source, all of a sphere or capsule. */
export function emittingArea(source: SourceShape): number {
  switch (source.kind) {
    case "disc":
      return Math.PI * source.radius * source.radius;
    case "polygon":
      return length(areaVector(source.corners));
    case "sphere":
      return 4 * Math.PI * source.radius * source.radius;
    case "capsule":
      return (
        2 * Math.PI * source.radius * distance(source.from, source.to) +
        4 * Math.PI * source.radius * source.radius
      );
    default:
      return source satisfies never;
  }
}

/** The point that a tape is held to: the centre of the disc, sphere or capsule, the mean corner of a polygon. */
export function sourceCentre(source: SourceShape): Vec3 {
  switch (source.kind) {
    case "disc":
    case "sphere":
      return source.centre;
    case "capsule":
      return [
        (source.from[0] + source.to[0]) / 2,
        (source.from[1] + source.to[1]) / 2,
        (source.from[2] + source.to[2]) / 2,
      ];
    case "polygon": {
      const n = Math.max(1, source.corners.length);
      let sum: Vec3 = [0, 0, 0];
      for (const corner of source.corners) sum = add(sum, corner);
      return [sum[0] / n, sum[1] / n, sum[2] / n];
    }
    default:
      return source satisfies never;
  }
}

/** The least product of a unit vector with the points of a source: how low it reaches along the vector, in metres. */
export function lowestPoint(source: SourceShape, n: Vec3): number {
  switch (source.kind) {
    case "disc": {
      const c = dot(source.normal, n);
      return dot(source.centre, n) - source.radius * Math.sqrt(Math.max(0, (1 - c) * (1 + c)));
    }
    case "sphere":
      return dot(source.centre, n) - source.radius;
    case "capsule":
      return Math.min(dot(source.from, n), dot(source.to, n)) - source.radius;
    case "polygon":
      return source.corners.reduce(
        (least, corner) => Math.min(least, dot(corner, n)),
        Number.POSITIVE_INFINITY,
      );
    default:
      return source satisfies never;
  }
}
