import type { Vec3 } from "../core/vector.js";

/**
 * An arc of a circle on the sphere of directions: `along d + out (cos t u + sin t v)` for t from `from` up to `to`,
 * with the right-handed unit frame `u x v = d`. `along` and `out` are cosine and sine of the circle's half-angle; a
 * great circle has 0 and 1. The region it bounds lies to its left as seen from outside the sphere.
 */
export interface CircleArc {
  readonly d: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  readonly along: number;
  readonly out: number;
  readonly from: number;
  readonly to: number;
}

/** The direction at an angle of an arc. */
export function arcPoint(arc: CircleArc, t: number): Vec3 {
  const c = arc.out * Math.cos(t);
  const s = arc.out * Math.sin(t);
  return [
    arc.along * arc.d[0] + c * arc.u[0] + s * arc.v[0],
    arc.along * arc.d[1] + c * arc.u[1] + s * arc.v[1],
    arc.along * arc.d[2] + c * arc.u[2] + s * arc.v[2],
  ];
}

/** Half the integral of direction x d(direction) along an arc: its share of the light vector of what it bounds. */
export function arcVector(arc: CircleArc): Vec3 {
  const turn = (arc.out * arc.out * (arc.to - arc.from)) / 2;
  const k = (arc.along * arc.out) / 2;
  const c = k * (Math.sin(arc.to) - Math.sin(arc.from));
  const s = k * (Math.cos(arc.from) - Math.cos(arc.to));
  return [
    turn * arc.d[0] - c * arc.u[0] - s * arc.v[0],
    turn * arc.d[1] - c * arc.u[1] - s * arc.v[1],
    turn * arc.d[2] - c * arc.u[2] - s * arc.v[2],
  ];
}

/** The parts of an arc where `m . direction >= 0`, in order. */
export function clipArc(arc: CircleArc, m: Vec3): readonly CircleArc[] {
  const middle = arc.along * (m[0] * arc.d[0] + m[1] * arc.d[1] + m[2] * arc.d[2]);
  const mu = arc.out * (m[0] * arc.u[0] + m[1] * arc.u[1] + m[2] * arc.u[2]);
  const mv = arc.out * (m[0] * arc.v[0] + m[1] * arc.v[1] + m[2] * arc.v[2]);
  const swing = Math.sqrt(mu * mu + mv * mv);
  if (middle >= swing) return [arc];
  if (middle <= -swing) return [];
  const open = Math.acos(Math.max(-1, Math.min(1, -middle / swing)));
  const kept: CircleArc[] = [];
  const turn = Math.atan2(mv, mu);
  const first = Math.ceil((arc.from - open - turn) / (2 * Math.PI));
  for (let lap = first; ; lap++) {
    const centre = turn + lap * 2 * Math.PI;
    if (centre - open >= arc.to) break;
    const from = Math.max(arc.from, centre - open);
    const to = Math.min(arc.to, centre + open);
    if (to > from) kept.push({ ...arc, from, to });
  }
  return kept;
}

/**
 * The light vector (sr) of the part of a convex region of directions on the side of a plane where
 * `m . direction >= 0`; the region is given by the arcs of its outline, in order. The cut adds the great-circle arcs
 * that close the outline.
 */
export function clippedRegionVector(outline: readonly CircleArc[], m: Vec3): Vec3 {
  const kept = outline.flatMap((arc) => clipArc(arc, m));
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0; i < kept.length; i++) {
    const arc = kept[i] as CircleArc;
    const share = arcVector(arc);
    const a = arcPoint(arc, arc.to);
    const next = kept[i + 1 < kept.length ? i + 1 : 0] as CircleArc;
    const b = arcPoint(next, next.from);
    const ex = a[1] * b[2] - a[2] * b[1];
    const ey = a[2] * b[0] - a[0] * b[2];
    const ez = a[0] * b[1] - a[1] * b[0];
    const sine = Math.sqrt(ex * ex + ey * ey + ez * ez);
    const angle = sine > 1e-12 ? Math.atan2(sine, a[0] * b[0] + a[1] * b[1] + a[2] * b[2]) : 0;
    x += share[0] + (angle / 2) * m[0];
    y += share[1] + (angle / 2) * m[1];
    z += share[2] + (angle / 2) * m[2];
  }
  return [x, y, z];
}
