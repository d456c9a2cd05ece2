import type { Vec3 } from "../../core/vector.js";
import type { CapsuleOccluder } from "./occluder.js";

/**
 * The closed line along which sight lines touch a capsule, corner by corner: an arc of the touching circle of each
 * round end, between the two straight edges of the tube. The edges are exact; the corners on the arcs are moved out so
 * that each arc keeps its area. False, with nothing written, for a ball, for an eye straight before an end, of which
 * only the nearer end is seen, and for an eye inside.
 *
 * @param out - Gets three numbers a corner from the place `at` on: from the eye, along `across`, `up` and `ahead`.
 */
export function capsuleOutline(
  { from, to, radius }: CapsuleOccluder,
  eye: Vec3,
  frame: readonly [Vec3, Vec3, Vec3],
  corners: number,
  out: Float64Array,
  at: number,
): boolean {
  const ax = from[0] - eye[0];
  const ay = from[1] - eye[1];
  const az = from[2] - eye[2];
  const a = inFrame(frame, ax, ay, az);
  const g = inFrame(frame, to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  const long = Math.sqrt(g[0] * g[0] + g[1] * g[1] + g[2] * g[2]);
  if (!(long > 0)) return false;
  for (let k = 0; k < 3; k++) g[k] = (g[k] as number) / long;
  const z = a[0] * g[0] + a[1] * g[1] + a[2] * g[2];
  const e: Triple = [a[0] - z * g[0], a[1] - z * g[1], a[2] - z * g[2]];
  const rho = Math.sqrt(e[0] * e[0] + e[1] * e[1] + e[2] * e[2]);
  if (!(rho > radius)) return false;
  for (let k = 0; k < 3; k++) e[k] = (e[k] as number) / rho;
  addEnd(out, at, corners / 2, radius, rho, z + long, 1, e, g);
  addEnd(out, at + 3 * (corners / 2), corners / 2, radius, rho, z, -1, e, g);
  return true;
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
  const up = (outward * wide) / d;
  const vx = up * (rho * g[0] - z * e[0]);
  const vy = up * (rho * g[1] - z * e[1]);
  const vz = up * (rho * g[2] - z * e[2]);
  const mx = keep * (rho * e[0] + z * g[0]);
  const my = keep * (rho * e[1] + z * g[1]);
  const mz = keep * (rho * e[2] + z * g[2]);
  const turn = Math.atan2(outward * z * radius, d * Math.sqrt((rho - radius) * (rho + radius)));
  const arc = Math.PI - 2 * turn;
  const parts = corners - 1;
  const step = arc / parts;
  const moved = (Math.sqrt(1 + ((parts - 2) * arc) / Math.sin(step)) - 1) / (parts - 2);
  // Each corner is the one before, turned by the step.
  const stepCos = Math.cos(step);
  const stepSin = Math.sin(step);
  let turnCos = Math.cos(turn);
  let turnSin = Math.sin(turn);
  for (let i = 0; i < corners; i++) {
    const size = i === 0 || i === parts ? 1 : moved;
    const cos = size * turnCos;
    const sin = size * turnSin;
    const k = at + 3 * i;
    out[k] = mx + cos * across[0] + sin * vx;
    out[k + 1] = my + cos * across[1] + sin * vy;
    out[k + 2] = mz + cos * across[2] + sin * vz;
    const next = turnCos * stepCos - turnSin * stepSin;
    turnSin = turnSin * stepCos + turnCos * stepSin;
    turnCos = next;
  }
}
