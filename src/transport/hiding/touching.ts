import type { Vec3 } from "../../core/vector.js";
import type { HalfSpace } from "./half-space.js";
import type { Occluder } from "./occluder.js";

const product = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** How near to a surface a point counts as lying on it, as a share of the body's size. */
const ON_SURFACE = 1e-6;

/**
 * A body that the eye lies on or in hides the half of all directions below its surface there; null for a body the eye
 * is clear of.
 */
export function tangentAt(o: Occluder, eye: Vec3): HalfSpace | null {
  if (o.kind === "polygon") return null;
  const out = o.kind === "ellipsoid" ? ellipsoidNormal(o, eye) : capsuleNormal(o, eye);
  if (out === null) return null;
  return { normal: out, offset: product(out, eye) };
}

function ellipsoidNormal(o: Extract<Occluder, { kind: "ellipsoid" }>, eye: Vec3): Vec3 | null {
  const d: Vec3 = [eye[0] - o.centre[0], eye[1] - o.centre[1], eye[2] - o.centre[2]];
  const [p, q, r] = o.inverse;
  const e: Vec3 = [product(p, d), product(q, d), product(r, d)];
  if (product(e, e) > 1 + ON_SURFACE) return null;
  const n: Vec3 = [
    e[0] * p[0] + e[1] * q[0] + e[2] * r[0],
    e[0] * p[1] + e[1] * q[1] + e[2] * r[1],
    e[0] * p[2] + e[1] * q[2] + e[2] * r[2],
  ];
  const size = Math.sqrt(product(n, n));
  return size > 0 ? [n[0] / size, n[1] / size, n[2] / size] : null;
}

function capsuleNormal(o: Extract<Occluder, { kind: "capsule" }>, eye: Vec3): Vec3 | null {
  const u: Vec3 = [o.to[0] - o.from[0], o.to[1] - o.from[1], o.to[2] - o.from[2]];
  const m: Vec3 = [eye[0] - o.from[0], eye[1] - o.from[1], eye[2] - o.from[2]];
  const uu = product(u, u);
  const t = uu > 0 ? Math.min(1, Math.max(0, product(m, u) / uu)) : 0;
  const d: Vec3 = [m[0] - t * u[0], m[1] - t * u[1], m[2] - t * u[2]];
  const size = Math.sqrt(product(d, d));
  if (size > o.radius * (1 + ON_SURFACE) || size === 0) return null;
  return [d[0] / size, d[1] / size, d[2] / size];
}
