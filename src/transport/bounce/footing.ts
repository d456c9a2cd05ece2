import type { Vec3 } from "../../core/vector.js";
import { add } from "../../math/vector.js";
import { LIFT } from "./first-hit.js";
import { CAPSULE, POLYGON, STRIDE, type World } from "./world.js";

/**
 * Where a station stands: the point its rays start from, and the surfaces of bodies it lies on, which it sees below
 * the plane that touches them.
 */
export interface Footing {
  readonly at: Vec3;
  /** Unit vectors out of the bodies the station lies on or in; rays lead away from all of them. */
  readonly normals: readonly Vec3[];
  /** Those bodies. */
  readonly selves: readonly number[];
  /** True for a station in a body, not on its surface. */
  readonly inside: boolean;
}

/** How near to a body's surface a point counts as lying on it, as a share of the body's size. */
const ON_SURFACE = 1e-6;

/** Finds what a station stands on. */
export function footingOf(world: World, at: Vec3, facing: Vec3): Footing {
  const normals: Vec3[] = [];
  const selves: number[] = [];
  let inside = false;
  for (let i = 0; i < world.count; i++) {
    if (world.present[i] !== 1 || world.kind[i] === POLYGON) continue;
    const out = outward(world.data, i * STRIDE, world.kind[i] === CAPSULE, at);
    if (out === null) continue;
    normals.push(out.way);
    inside ||= out.deep;
    selves.push(i);
  }
  // Off the bodies, or to the side of a sheet that the receptor looks to.
  const way = normals.length === 0 ? facing : normals.reduce(add);
  return {
    at: [at[0] + LIFT * way[0], at[1] + LIFT * way[1], at[2] + LIFT * way[2]],
    normals,
    selves,
    inside,
  };
}

/** The way out of a body for a point on or in it. */
interface Way {
  /** Unit vector. */
  readonly way: Vec3;
  /** True below the surface. */
  readonly deep: boolean;
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
    return outOf(x - t * ax, y - t * ay, z - t * az, d[at + 7] as number);
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
  const way = outOf(nx, ny, nz, Number.POSITIVE_INFINITY);
  return way === null ? null : { way: way.way, deep: size < 1 - 2 * ON_SURFACE };
}

function outOf(x: number, y: number, z: number, radius: number): Way | null {
  const size = Math.sqrt(x * x + y * y + z * z);
  if (size > radius * (1 + ON_SURFACE) || size === 0) return null;
  return { way: [x / size, y / size, z / size], deep: size < radius * (1 - ON_SURFACE) };
}
