import { CAPSULE, POLYGON, STRIDE, type World } from "./world.js";

/**
 * A place on a surface by two numbers from 0 to 1, u and v. On a polygon they run along the rectangle round it; on a
 * body u is the turn about its long axis (the third semi-axis, the line between the ends) and v the height along it,
 * so that equal steps of both have equal areas on spheres and capsules (Archimedes).
 */
export interface Place {
  x: number;
  y: number;
  z: number;
  /** Unit vector out of the surface. */
  nx: number;
  ny: number;
  nz: number;
  /** Area of the surface by that of the u-v square there, m2; 0 outside of a polygon. */
  stretch: number;
}

/** A place to be written into. */
export function emptyPlace(): Place {
  return { x: 0, y: 0, z: 0, nx: 0, ny: 0, nz: 1, stretch: 0 };
}

/** Distance between two places. */
export function between(a: Place, b: Place): number {
  const x = a.x - b.x;
  const y = a.y - b.y;
  const z = a.z - b.z;
  return Math.sqrt(x * x + y * y + z * z);
}

/** Writes the place of u and v on a thing; `front` chooses a polygon's side. */
export function placeAt(world: World, thing: number, front: boolean, u: number, v: number, out: Place): void {
  const kind = world.kind[thing] as number;
  if (kind === POLYGON) polygonPlace(world, thing, front, u, v, out);
  else if (kind === CAPSULE) capsulePlace(world.data, thing * STRIDE, u, v, out);
  else ellipsoidPlace(world.data, thing * STRIDE, u, v, out);
}

function polygonPlace(world: World, thing: number, front: boolean, u: number, v: number, out: Place): void {
  const d = world.data;
  const at = thing * STRIDE;
  const sign = front ? 1 : -1;
  const a = u * (d[at + 13] as number);
  const b = v * (d[at + 14] as number);
  out.x = (d[at + 4] as number) + a * (d[at + 7] as number) + b * (d[at + 10] as number);
  out.y = (d[at + 5] as number) + a * (d[at + 8] as number) + b * (d[at + 11] as number);
  out.z = (d[at + 6] as number) + a * (d[at + 9] as number) + b * (d[at + 12] as number);
  out.nx = sign * (d[at] as number);
  out.ny = sign * (d[at + 1] as number);
  out.nz = sign * (d[at + 2] as number);
  out.stretch = (d[at + 13] as number) * (d[at + 14] as number);
  if ((world.edgeCount[thing] as number) === 0) return;
  const e = world.edges;
  const start = world.edgeStart[thing] as number;
  const end = start + 4 * (world.edgeCount[thing] as number);
  for (let k = start; k < end; k += 4) {
    const side = (e[k] as number) * out.x + (e[k + 1] as number) * out.y + (e[k + 2] as number) * out.z;
    if (side > (e[k + 3] as number)) out.stretch = 0;
  }
}

function capsulePlace(d: Float64Array, at: number, u: number, v: number, out: Place): void {
  const r = d[at + 7] as number;
  const long = d[at + 6] as number;
  const turn = 2 * Math.PI * u;
  const height = v * (long + 2 * r) - r;
  // On a round end the height decides how far from the axis the place is.
  const base = height < 0 ? 0 : Math.min(height, long);
  const rise = (height - base) / r;
  const side = Math.sqrt(Math.max(0, 1 - rise * rise));
  const c = side * Math.cos(turn);
  const s = side * Math.sin(turn);
  const nx = rise * (d[at + 3] as number) + c * (d[at + 8] as number) + s * (d[at + 11] as number);
  const ny = rise * (d[at + 4] as number) + c * (d[at + 9] as number) + s * (d[at + 12] as number);
  const nz = rise * (d[at + 5] as number) + c * (d[at + 10] as number) + s * (d[at + 13] as number);
  out.nx = nx;
  out.ny = ny;
  out.nz = nz;
  out.x = (d[at] as number) + base * (d[at + 3] as number) + r * nx;
  out.y = (d[at + 1] as number) + base * (d[at + 4] as number) + r * ny;
  out.z = (d[at + 2] as number) + base * (d[at + 5] as number) + r * nz;
  out.stretch = 2 * Math.PI * r * (long + 2 * r);
}

function ellipsoidPlace(d: Float64Array, at: number, u: number, v: number, out: Place): void {
  const turn = 2 * Math.PI * u;
  const rise = 2 * v - 1;
  const side = Math.sqrt(Math.max(0, 1 - rise * rise));
  const e0 = side * Math.cos(turn);
  const e1 = side * Math.sin(turn);
  out.x =
    (d[at] as number) +
    e0 * (d[at + 12] as number) +
    e1 * (d[at + 15] as number) +
    rise * (d[at + 18] as number);
  out.y =
    (d[at + 1] as number) +
    e0 * (d[at + 13] as number) +
    e1 * (d[at + 16] as number) +
    rise * (d[at + 19] as number);
  out.z =
    (d[at + 2] as number) +
    e0 * (d[at + 14] as number) +
    e1 * (d[at + 17] as number) +
    rise * (d[at + 20] as number);
  const nx = e0 * (d[at + 3] as number) + e1 * (d[at + 6] as number) + rise * (d[at + 9] as number);
  const ny = e0 * (d[at + 4] as number) + e1 * (d[at + 7] as number) + rise * (d[at + 10] as number);
  const nz = e0 * (d[at + 5] as number) + e1 * (d[at + 8] as number) + rise * (d[at + 11] as number);
  const size = Math.sqrt(nx * nx + ny * ny + nz * nz);
  out.nx = nx / size;
  out.ny = ny / size;
  out.nz = nz / size;
  // The unit sphere's area times the volume's stretch times that of the normal.
  out.stretch = 4 * Math.PI * volume(d, at) * size;
}

/** Product of the three semi-axes. */
function volume(d: Float64Array, at: number): number {
  let product = 1;
  for (let k = at + 12; k < at + 21; k += 3) {
    const x = d[k] as number;
    const y = d[k + 1] as number;
    const z = d[k + 2] as number;
    product *= Math.sqrt(x * x + y * y + z * z);
  }
  return product;
}

/** Two numbers that say where on a surface a point is. */
export interface Spot {
  u: number;
  v: number;
}

/** Writes u and v of a point on a thing's surface. */
export function spotOf(world: World, thing: number, x: number, y: number, z: number, out: Spot): void {
  const d = world.data;
  const at = thing * STRIDE;
  const kind = world.kind[thing] as number;
  if (kind === POLYGON) {
    const px = x - (d[at + 4] as number);
    const py = y - (d[at + 5] as number);
    const pz = z - (d[at + 6] as number);
    out.u = inside(
      (px * (d[at + 7] as number) + py * (d[at + 8] as number) + pz * (d[at + 9] as number)) /
        (d[at + 13] as number),
    );
    out.v = inside(
      (px * (d[at + 10] as number) + py * (d[at + 11] as number) + pz * (d[at + 12] as number)) /
        (d[at + 14] as number),
    );
    return;
  }
  const px = x - (d[at] as number);
  const py = y - (d[at + 1] as number);
  const pz = z - (d[at + 2] as number);
  const part = (k: number): number =>
    px * (d[k] as number) + py * (d[k + 1] as number) + pz * (d[k + 2] as number);
  const round = kind === CAPSULE;
  const turn = round ? Math.atan2(part(at + 11), part(at + 8)) : Math.atan2(part(at + 6), part(at + 3));
  out.u = inside(turn < 0 ? turn / (2 * Math.PI) + 1 : turn / (2 * Math.PI));
  if (round) {
    const r = d[at + 7] as number;
    out.v = inside((part(at + 3) + r) / ((d[at + 6] as number) + 2 * r));
  } else out.v = inside((part(at + 9) + 1) / 2);
}

/** Kept at or above 0 and below 1, so that it falls into a cell. */
function inside(x: number): number {
  return x > 0 ? Math.min(x, 1 - 1e-12) : 0;
}
