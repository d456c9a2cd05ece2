import type { Vec3 } from "../../core/vector.js";
import { isIndoors, LIFT } from "./first-hit.js";
import { CAPSULE, POLYGON, STRIDE, type World } from "./world.js";

/**
 * Where a station stands: the point its rays start from, and the surfaces of bodies it lies on, which it sees below
 * the plane that touches them.
 */
export interface Footing {
  readonly at: Float64Array;
  /** Unit vectors out of the bodies the station lies on, three numbers each; rays lead away from all of them. */
  readonly normals: Float64Array;
  /** Those bodies. */
  readonly selves: Int32Array;
  /** True for a station in the room, and without a room. */
  readonly indoors: boolean;
}

/** How near to a body's surface a point counts as lying on it, as a share of the body's size. */
const ON_SURFACE = 1e-6;

/** Finds what a station stands on; one below the surface of a body counts as lying on it. */
export function footingOf(world: World, at: Vec3, facing: Vec3): Footing {
  const normals: number[] = [];
  const selves: number[] = [];
  const sum = new Float64Array(3);
  for (let i = 0; i < world.count; i++) {
    if (world.present[i] !== 1 || world.kind[i] === POLYGON) continue;
    const out = outward(world.data, i * STRIDE, world.kind[i] === CAPSULE, at);
    if (out === null) continue;
    normals.push(out.x, out.y, out.z);
    sum[0] = (sum[0] as number) + out.x;
    sum[1] = (sum[1] as number) + out.y;
    sum[2] = (sum[2] as number) + out.z;
    selves.push(i);
  }
  // Off the bodies, or to the side of a sheet that the receptor looks to.
  const way = selves.length === 0 ? Float64Array.from(facing) : sum;
  const start = way.map((part, axis) => (at[axis] as number) + LIFT * part);
  return {
    at: start,
    indoors: isIndoors(world, start[0] as number, start[1] as number, start[2] as number),
    normals: Float64Array.from(normals),
    selves: Int32Array.from(selves),
  };
}

/** The way out of a body for a point on or in it: a unit vector. */
interface Way {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** The way out of a body; null for a point clear of it. */
function outward(d: Float64Array, at: number, capsule: boolean, p: Vec3): Way | null {
  const x = p[0] - (d[at] as number);
  const y = p[1] - (d[at + 1] as number);
  const z = p[2] - (d[at + 2] as number);
  if (capsule) {
    const ax = d[at + 3] as number;
    const ay = d[at + 4] as number;
    const az = d[at + 5] as number;
    const t = Math.min(d[at + 6] as number, Math.max(0, x * ax + y * ay + z * az));
    const r = d[at + 7] as number;
    return outOf(x - t * ax, y - t * ay, z - t * az, r * (1 + ON_SURFACE));
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
  if (size > 1 + 2 * ON_SURFACE) return null;
  return outOf(nx, ny, nz, Number.POSITIVE_INFINITY);
}

/** The direction of a vector as the way out; null for one that has none or is longer than `most`. */
function outOf(x: number, y: number, z: number, most: number): Way | null {
  const size = Math.sqrt(x * x + y * y + z * z);
  if (size > most || size === 0) return null;
  return { x: x / size, y: y / size, z: z / size };
}
