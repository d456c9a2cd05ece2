import fc from "fast-check";
import type { Vec3 } from "../../src/core/vector.js";
import { addScaled, dot, frameAround, scale, subtract } from "../../src/math/vector.js";
import { rectangleSource, type SourceShape } from "../../src/physics/source-shape.js";

/**
 * An even spread of numbers in millionths: doubles as such would mostly be drawn next to 0, where light is much the
 * same everywhere.
 */
export function even(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min: Math.round(min * 1e6), max: Math.round(max * 1e6) }).map((n) => n / 1e6);
}

/** A unit vector in any direction. */
export const direction: fc.Arbitrary<Vec3> = fc.tuple(even(-1, 1), even(0, 6.28)).map(([z, turn]) => {
  const side = Math.sqrt(1 - z * z);
  return [side * Math.cos(turn), side * Math.sin(turn), z];
});

/** A place within three metres of the middle. */
export const place: fc.Arbitrary<Vec3> = fc.tuple(even(-3, 3), even(-3, 3), even(-3, 3));

const size = even(0.02, 1);

/** Two unit vectors at right angles. */
const frame: fc.Arbitrary<readonly [Vec3, Vec3]> = fc.tuple(direction, even(0, 6.28)).map(([a, turn]) => {
  const [u, v] = frameAround(a);
  return [a, addScaled(scale(u, Math.cos(turn)), v, Math.sin(turn))];
});

export const disc: fc.Arbitrary<SourceShape> = fc
  .tuple(direction, size)
  .map(([normal, radius]) => ({ kind: "disc", centre: [0, 0, 0], normal, radius }));

export const rectangle: fc.Arbitrary<SourceShape> = fc
  .tuple(frame, size, size)
  .map(([[across, up], width, height]) => rectangleSource([0, 0, 0], across, up, width, height));

export const sphere: fc.Arbitrary<SourceShape> = size.map((radius) => ({
  kind: "sphere",
  centre: [0, 0, 0],
  radius,
}));

export const capsule: fc.Arbitrary<SourceShape> = fc
  .tuple(direction, size, size)
  .map(([along, half, radius]) => ({
    kind: "capsule",
    from: [-along[0] * half, -along[1] * half, -along[2] * half],
    to: [along[0] * half, along[1] * half, along[2] * half],
    radius: radius / 2,
  }));

/** A source of any shape about the middle, no larger than a metre or so. */
export const source: fc.Arbitrary<SourceShape> = fc.oneof(disc, rectangle, sphere, capsule);

/** Whether a point keeps clear of the plane of a flat source, on which light begins at once, and of a body's surface. */
export function clearOf(shape: SourceShape, p: Vec3): boolean {
  switch (shape.kind) {
    case "disc":
      return Math.abs(dot(subtract(p, shape.centre), shape.normal)) > 1e-3;
    case "polygon":
      return Math.abs(dot(subtract(p, shape.corners[0] ?? [0, 0, 0]), shape.normal)) > 1e-3;
    case "sphere":
    case "capsule":
      return Math.abs(gap(shape, p) - shape.radius) > 1e-3;
    default:
      return shape satisfies never;
  }
}

/** Distance from the centre of a sphere or the axis of a capsule. */
function gap(shape: SourceShape, p: Vec3): number {
  if (shape.kind === "sphere") return Math.hypot(...subtract(p, shape.centre));
  if (shape.kind !== "capsule") return 0;
  const axis = subtract(shape.to, shape.from);
  const t = dot(subtract(p, shape.from), axis) / Math.max(1e-300, dot(axis, axis));
  return Math.hypot(...subtract(p, addScaled(shape.from, axis, Math.min(1, Math.max(0, t)))));
}

/** A source with every place and direction changed by a map; the corners of a polygon in reverse if it mirrors. */
export function moved(
  shape: SourceShape,
  point: (p: Vec3) => Vec3,
  way: (d: Vec3) => Vec3,
  stretch = 1,
  mirrors = false,
): SourceShape {
  switch (shape.kind) {
    case "disc":
      return {
        kind: "disc",
        centre: point(shape.centre),
        normal: way(shape.normal),
        radius: shape.radius * stretch,
      };
    case "sphere":
      return { kind: "sphere", centre: point(shape.centre), radius: shape.radius * stretch };
    case "capsule":
      return {
        kind: "capsule",
        from: point(shape.from),
        to: point(shape.to),
        radius: shape.radius * stretch,
      };
    case "polygon": {
      const corners = shape.corners.map(point);
      return {
        kind: "polygon",
        corners: mirrors ? corners.reverse() : corners,
        normal: way(shape.normal),
      };
    }
    default:
      return shape satisfies never;
  }
}
