import type { Vec3 } from "../../core/vector.js";
import type { Occluder } from "./occluder.js";

/** Lengths at both ends of a line of sight that do not count, m: what the ends lie on does not hide them. */
const SKIN = 1e-5;

/** True when the straight line between two points meets none of the occluders. */
export function clearSight(occluders: readonly Occluder[], from: Vec3, to: Vec3): boolean {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const dz = to[2] - from[2];
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
  if (length <= 2 * SKIN) return true;
  const low = SKIN / length;
  const high = 1 - low;
  for (const occluder of occluders) {
    if (blocks(occluder, from, dx, dy, dz, length, low, high)) return false;
  }
  return true;
}

function blocks(
  o: Occluder,
  from: Vec3,
  dx: number,
  dy: number,
  dz: number,
  length: number,
  low: number,
  high: number,
): boolean {
  // The sphere round it, against the line.
  const cx = o.centre[0] - from[0];
  const cy = o.centre[1] - from[1];
  const cz = o.centre[2] - from[2];
  const along = (cx * dx + cy * dy + cz * dz) / length;
  const off = cx * cx + cy * cy + cz * cz - along * along;
  if (off > o.bound * o.bound || along < -o.bound || along > length + o.bound) return false;
  switch (o.kind) {
    case "polygon": {
      const n = o.normal;
      const rate = n[0] * dx + n[1] * dy + n[2] * dz;
      if (rate === 0) return false;
      const t = (o.offset - (n[0] * from[0] + n[1] * from[1] + n[2] * from[2])) / rate;
      if (!(t > low && t < high)) return false;
      const x = from[0] + t * dx;
      const y = from[1] + t * dy;
      const z = from[2] + t * dz;
      for (const edge of o.edges) {
        if (edge.out[0] * x + edge.out[1] * y + edge.out[2] * z > edge.offset) return false;
      }
      return true;
    }
    case "ellipsoid": {
      const [p, q, r] = o.inverse;
      const sx = -(p[0] * cx + p[1] * cy + p[2] * cz);
      const sy = -(q[0] * cx + q[1] * cy + q[2] * cz);
      const sz = -(r[0] * cx + r[1] * cy + r[2] * cz);
      const tx = p[0] * dx + p[1] * dy + p[2] * dz;
      const ty = q[0] * dx + q[1] * dy + q[2] * dz;
      const tz = r[0] * dx + r[1] * dy + r[2] * dz;
      return between(
        tx * tx + ty * ty + tz * tz,
        sx * tx + sy * ty + sz * tz,
        sx * sx + sy * sy + sz * sz - 1,
        low,
        high,
      );
    }
    case "capsule":
      return meetsCapsule(o.from, o.to, o.radius, from, dx, dy, dz, low, high);
    default:
      return o satisfies never;
  }
}

/** True when a line that enters where a t2 + 2 b t + c = 0 is inside for some t between low and high. */
function between(a: number, b: number, c: number, low: number, high: number): boolean {
  const root = b * b - a * c;
  if (!(root > 0) || a === 0) return false;
  const s = Math.sqrt(root);
  const enter = (-b - s) / a;
  const leave = (-b + s) / a;
  return leave > low && enter < high;
}

/** The capsule is met when its tube between the end planes, or one of its end spheres, is met. */
function meetsCapsule(
  a: Vec3,
  b: Vec3,
  radius: number,
  from: Vec3,
  dx: number,
  dy: number,
  dz: number,
  low: number,
  high: number,
): boolean {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const uz = b[2] - a[2];
  const uu = ux * ux + uy * uy + uz * uz;
  const mx = from[0] - a[0];
  const my = from[1] - a[1];
  const mz = from[2] - a[2];
  const dd = dx * dx + dy * dy + dz * dz;
  const md = mx * dx + my * dy + mz * dz;
  const mm = mx * mx + my * my + mz * mz;
  const rr = radius * radius;
  if (uu > 0) {
    const du = dx * ux + dy * uy + dz * uz;
    const mu = mx * ux + my * uy + mz * uz;
    const qa = dd - (du * du) / uu;
    const qb = md - (mu * du) / uu;
    const qc = mm - (mu * mu) / uu - rr;
    if (qa > 1e-15 * dd) {
      const root = qb * qb - qa * qc;
      if (!(root > 0)) return false;
      const s = Math.sqrt(root);
      // The stretch inside the endless tube, cut to between the end planes.
      let enter = (-qb - s) / qa;
      let leave = (-qb + s) / qa;
      if (du !== 0) {
        const t0 = -mu / du;
        const t1 = (uu - mu) / du;
        enter = Math.max(enter, Math.min(t0, t1));
        leave = Math.min(leave, Math.max(t0, t1));
      } else if (mu < 0 || mu > uu) leave = enter - 1;
      if (leave > enter && leave > low && enter < high) return true;
    }
  }
  const nx = from[0] - b[0];
  const ny = from[1] - b[1];
  const nz = from[2] - b[2];
  return (
    between(dd, md, mm - rr, low, high) ||
    between(dd, nx * dx + ny * dy + nz * dz, nx * nx + ny * ny + nz * nz - rr, low, high)
  );
}
