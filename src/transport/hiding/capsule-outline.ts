import type { Vec3 } from "../../core/vector.js";
import type { CapsuleOccluder } from "./occluder.js";

/**
 * The closed line along which sight lines touch a capsule, corner by corner: an arc of the touching circle of each
 * round end, between the two straight edges of the tube. The edges are exact; the corners on the arcs are moved out so
 * that each arc keeps its area. Null for a ball, for an eye straight before an end, of which only the nearer end is
 * seen, and for an eye inside.
 *
 * @returns Three numbers a corner, from the eye, along `across`, `up` and `ahead`.
 */
export function capsuleOutline(
  { from, to, radius }: CapsuleOccluder,
  eye: Vec3,
  frame: readonly [Vec3, Vec3, Vec3],
  corners: number,
): Float64Array | null {
  const ax = from[0] - eye[0];
  const ay = from[1] - eye[1];
  const az = from[2] - eye[2];
  const a = inFrame(frame, ax, ay, az);
  const g = inFrame(frame, to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  const long = Math.sqrt(g[0] * g[0] + g[1] * g[1] + g[2] * g[2]);
  if (!(long > 0)) return null;
  for (let k = 0; k < 3; k++) g[k] = (g[k] as number) / long;
  const z = a[0] * g[0] + a[1] * g[1] + a[2] * g[2];
  const e: Triple = [a[0] - z * g[0], a[1] - z * g[1], a[2] - z * g[2]];
  const rho = Math.sqrt(e[0] * e[0] + e[1] * e[1] + e[2] * e[2]);
  if (!(rho > radius)) return null;
  for (let k = 0; k < 3; k++) e[k] = (e[k] as number) / rho;
  const out = new Float64Array(3 * corners);
  addEnd(out, 0, corners / 2, radius, rho, z + long, 1, e, g);
  addEnd(out, 3 * (corners / 2), corners / 2, radius, rho, z, -1, e, g);
  return out;
}

type Triple = [number, number, number];

function inFrame([u, v, w]: readonly [Vec3, Vec3, Vec3], x: number, y: number, z: number): Triple {
  return [u[0] * x + u[1] * y + u[2] * z, v[0] * x + v[1] * y + v[2] * z, w[0] * x + w[1] * y + w[2] * z];
}

/**
 * One end's arc. The axis runs along g at the distance rho from the eye, nearest to it in the direction e; the end lies
 * z along it, and the capsule ends there in the direction `outward`.
 */
function addEnd(
  out: Float64Array,
  at: number,
  corners: number,
  radius: number,
  rho: number,
  z: number,
  outward: 1 | -1,
  e: Triple,
  g: Triple,
): void {
  const d2 = rho * rho + z * z;
  const d = Math.sqrt(d2);
  const keep = 1 - (radius * radius) / d2;
  const wide = radius * Math.sqrt(keep);
  // The touching circle is spanned by a vector across the tube and one along it, square to the line of sight.
  const across: Triple = [
    outward * wide * (e[1] * g[2] - e[2] * g[1]),
    outward * wide * (e[2] * g[0] - e[0] * g[2]),
    outward * wide * (e[0] * g[1] - e[1] * g[0]),
  ];
  const along = (k: 0 | 1 | 2): number => (outward * wide * (rho * g[k] - z * e[k])) / d;
  const [vx, vy, vz] = [along(0), along(1), along(2)];
  const turn = Math.atan2(outward * z * radius, d * Math.sqrt((rho - radius) * (rho + radius)));
  const arc = Math.PI - 2 * turn;
  const parts = corners - 1;
  const step = arc / parts;
  const moved = (Math.sqrt(1 + ((parts - 2) * arc) / Math.sin(step)) - 1) / (parts - 2);
  for (let i = 0; i < corners; i++) {
    const size = i === 0 || i === parts ? 1 : moved;
    const cos = size * Math.cos(turn + i * step);
    const sin = size * Math.sin(turn + i * step);
    const k = at + 3 * i;
    out[k] = keep * (rho * e[0] + z * g[0]) + cos * across[0] + sin * vx;
    out[k + 1] = keep * (rho * e[1] + z * g[1]) + cos * across[1] + sin * vy;
    out[k + 2] = keep * (rho * e[2] + z * g[2]) + cos * across[2] + sin * vz;
  }
}
