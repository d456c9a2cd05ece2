import type { Vec3 } from "../../core/vector.js";
import { frameAround } from "../../math/vector.js";
import type { SourceShape } from "../../physics/source-shape.js";

/** Points that stand for a source when it is asked how much of it is seen. */
export const SOURCE_POINTS = 16;

/** Shares of the unit square, well spread in each stretch of 2, 4 and 8 (Hammersley's points, base 2). */
const spread: readonly (readonly [number, number])[] = Array.from({ length: SOURCE_POINTS }, (_, i) => {
  const turned = ((i & 1) << 3) | ((i & 2) << 1) | ((i & 4) >> 1) | ((i & 8) >> 3);
  return [(turned + 0.5) / SOURCE_POINTS, (i + 0.5) / SOURCE_POINTS] as const;
});

/**
 * Writes points over a source as a place sees it, three numbers each: over the opening of a flat source, over the
 * round outline of a sphere, over the tube's outline.
 */
export function writeSourcePoints(shape: SourceShape, centre: Vec3, from: Vec3, out: Float64Array): void {
  let u: Vec3;
  let v: Vec3;
  let round = false;
  if (shape.kind === "polygon" && shape.corners.length === 4) {
    const [a, b, , d] = shape.corners as readonly [Vec3, Vec3, Vec3, Vec3];
    u = [(b[0] - a[0]) / 2, (b[1] - a[1]) / 2, (b[2] - a[2]) / 2];
    v = [(d[0] - a[0]) / 2, (d[1] - a[1]) / 2, (d[2] - a[2]) / 2];
  } else if (shape.kind === "polygon") {
    u = [0, 0, 0];
    v = [0, 0, 0];
  } else if (shape.kind === "capsule") {
    const half: Vec3 = [
      (shape.to[0] - shape.from[0]) / 2,
      (shape.to[1] - shape.from[1]) / 2,
      (shape.to[2] - shape.from[2]) / 2,
    ];
    const long = Math.sqrt(half[0] * half[0] + half[1] * half[1] + half[2] * half[2]);
    const k = long > 0 ? (long + (shape.radius * Math.PI) / 4) / long : 0;
    u = [half[0] * k, half[1] * k, half[2] * k];
    const side = across(half, from, centre);
    v = [side[0] * shape.radius, side[1] * shape.radius, side[2] * shape.radius];
  } else {
    round = true;
    const normal = shape.kind === "disc" ? shape.normal : towards(from, centre);
    const [p, q] = frameAround(normal);
    u = [p[0] * shape.radius, p[1] * shape.radius, p[2] * shape.radius];
    v = [q[0] * shape.radius, q[1] * shape.radius, q[2] * shape.radius];
  }
  for (let i = 0; i < SOURCE_POINTS; i++) {
    const [s, t] = spread[i] as readonly [number, number];
    const a = round ? Math.sqrt(t) * Math.cos(2 * Math.PI * s) : 2 * s - 1;
    const b = round ? Math.sqrt(t) * Math.sin(2 * Math.PI * s) : 2 * t - 1;
    out[3 * i] = centre[0] + a * u[0] + b * v[0];
    out[3 * i + 1] = centre[1] + a * u[1] + b * v[1];
    out[3 * i + 2] = centre[2] + a * u[2] + b * v[2];
  }
}

function towards(from: Vec3, to: Vec3): Vec3 {
  const x = to[0] - from[0];
  const y = to[1] - from[1];
  const z = to[2] - from[2];
  const size = Math.sqrt(x * x + y * y + z * z);
  return size > 0 ? [x / size, y / size, z / size] : [0, 0, 1];
}

/** A unit vector square to an axis and to the line of sight. */
function across(axis: Vec3, from: Vec3, centre: Vec3): Vec3 {
  const s = towards(from, centre);
  const x = axis[1] * s[2] - axis[2] * s[1];
  const y = axis[2] * s[0] - axis[0] * s[2];
  const z = axis[0] * s[1] - axis[1] * s[0];
  const size = Math.sqrt(x * x + y * y + z * z);
  return size > 1e-9 ? [x / size, y / size, z / size] : frameAround(s)[0];
}
