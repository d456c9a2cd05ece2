import type { Vec3 } from "../../core/vector.js";
import { CAPSULE, POLYGON, STRIDE, type World } from "./world.js";

/** Where a station stands: the point its rays start from, and the surfaces of bodies it lies on. */
export interface Footing {
  readonly at: Vec3;
  /** Unit vectors out of the bodies the station lies on or in; rays lead away from all of them. */
  readonly normals: readonly Vec3[];
  /** The last such body, which rays do not meet again; -1 without one. */
  readonly self: number;
}

/** How near to a body's surface a point counts as lying on it, as a share of the body's size. */
const ON_SURFACE = 1e-6;
/** How far rays start before a station, m: on the side of a sheet that the receptor looks to. */
const STEP = 1e-6;

/** Finds what a station stands on. */
export function footingOf(world: World, at: Vec3, facing: Vec3): Footing {
  const normals: Vec3[] = [];
  let self = -1;
  for (let i = 0; i < world.count; i++) {
    if (world.present[i] !== 1 || world.kind[i] === POLYGON) continue;
    const out = outward(world.data, i * STRIDE, world.kind[i] === CAPSULE, at);
    if (out === null) continue;
    normals.push(out);
    self = i;
  }
  const way = normals[0] ?? facing;
  return {
    at: [at[0] + STEP * way[0], at[1] + STEP * way[1], at[2] + STEP * way[2]],
    normals,
    self,
  };
}

/** The unit vector out of a body at a point on or in it; null for a point clear of it. */
function outward(d: Float64Array, at: number, capsule: boolean, p: Vec3): Vec3 | null {
  const x = p[0] - (d[at] as number);
  const y = p[1] - (d[at + 1] as number);
  const z = p[2] - (d[at + 2] as number);
  if (capsule) {
    const ax = d[at + 3] as number;
    const ay = d[at + 4] as number;
    const az = d[at + 5] as number;
    const t = Math.min(d[at + 6] as number, Math.max(0, x * ax + y * ay + z * az));
    return unit(x - t * ax, y - t * ay, z - t * az, (d[at + 7] as number) * (1 + ON_SURFACE));
  }
  let nx = 0;
  let ny = 0;
  let nz = 0;
  let size = 0;
  for (let k = at + 3; k < at + 12; k += 3) {
    const px = d[k] as number;
    const py = d[k + 1] as number;
    const pz = d[k + 2] as number;
    const e = px * x + py * y + pz * z;
    size += e * e;
    nx += e * px;
    ny += e * py;
    nz += e * pz;
  }
  return size > 1 + ON_SURFACE ? null : unit(nx, ny, nz, Number.POSITIVE_INFINITY);
}

function unit(x: number, y: number, z: number, most: number): Vec3 | null {
  const size = Math.sqrt(x * x + y * y + z * z);
  return size > most || size === 0 ? null : [x / size, y / size, z / size];
}
