import type { Vec3 } from "../../src/core/vector.js";
import type { Body, ScenePolygon } from "../../src/scene/types.js";

/**
 * Whether a straight line is free, worked out in other ways than the program does: triangles by volumes' signs,
 * round bodies by the least distance from the line.
 */
const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const times = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const volume = (a: Vec3, b: Vec3, c: Vec3): number =>
  a[0] * (b[1] * c[2] - b[2] * c[1]) +
  a[1] * (b[2] * c[0] - b[0] * c[2]) +
  a[2] * (b[0] * c[1] - b[1] * c[0]);

/** True when the stretch from p to q goes through the triangle. */
function throughTriangle(p: Vec3, q: Vec3, a: Vec3, b: Vec3, c: Vec3): boolean {
  const [pa, pb, pc] = [minus(a, p), minus(b, p), minus(c, p)];
  const [qa, qb, qc] = [minus(a, q), minus(b, q), minus(c, q)];
  const start = volume(pa, pb, pc);
  const end = volume(qa, qb, qc);
  if (start === 0 || end === 0 || start > 0 === end > 0) return false;
  const d = minus(q, p);
  const [u, v, w] = [volume(d, pa, pb), volume(d, pb, pc), volume(d, pc, pa)];
  return (u > 0 && v > 0 && w > 0) || (u < 0 && v < 0 && w < 0);
}

/** Least squared distance of two stretches, by steps that halve round the best of a grid. */
function leastSquare(p: Vec3, q: Vec3, a: Vec3, b: Vec3): number {
  const d = minus(q, p);
  const e = minus(b, a);
  const r = minus(p, a);
  const dd = times(d, d);
  const ee = times(e, e);
  const de = times(d, e);
  const clamp = (x: number): number => Math.min(1, Math.max(0, x));
  const nearestOn = (t: number): number => (ee === 0 ? 0 : clamp((times(r, e) + t * de) / ee));
  const square = (t: number, s: number): number => {
    const x: Vec3 = [r[0] + t * d[0] - s * e[0], r[1] + t * d[1] - s * e[1], r[2] + t * d[2] - s * e[2]];
    return times(x, x);
  };
  // The distance is a convex function of t once s is the nearest: golden section.
  let low = 0;
  let high = 1;
  const golden = (Math.sqrt(5) - 1) / 2;
  for (let i = 0; i < 60 && dd > 0; i++) {
    const t1 = high - golden * (high - low);
    const t2 = low + golden * (high - low);
    if (square(t1, nearestOn(t1)) < square(t2, nearestOn(t2))) high = t2;
    else low = t1;
  }
  const t = (low + high) / 2;
  return square(t, nearestOn(t));
}

function throughBody(p: Vec3, q: Vec3, body: Body): boolean {
  if (body.kind === "capsule") return leastSquare(p, q, body.from, body.to) < body.radius * body.radius;
  if (body.kind === "sphere") return leastSquare(p, q, body.centre, body.centre) < body.radius * body.radius;
  const flatten = (x: Vec3): Vec3 =>
    body.axes.map((axis) => times(axis, minus(x, body.centre)) / times(axis, axis)) as unknown as Vec3;
  return leastSquare(flatten(p), flatten(q), [0, 0, 0], [0, 0, 0]) < 1;
}

/** True when nothing stands on the straight line from p to q. */
export function freeSight(
  p: Vec3,
  q: Vec3,
  polygons: readonly ScenePolygon[],
  bodies: readonly Body[],
): boolean {
  for (const { vertices } of polygons) {
    for (let i = 2; i < vertices.length; i++) {
      if (throughTriangle(p, q, vertices[0] as Vec3, vertices[i - 1] as Vec3, vertices[i] as Vec3))
        return false;
    }
  }
  return !bodies.some((body) => throughBody(p, q, body));
}
