import { CAPSULE, POLYGON, STRIDE, type World } from "./world.js";

/** What a ray meets first; written over by every search. */
export interface Hit {
  /** Index of the thing, or -1 where the ray leaves the scene. */
  thing: number;
  /** Way along the ray, m; 0 where it starts inside of a body. */
  way: number;
  /** True when the ray comes from the side a polygon's normal points to; always true for bodies. */
  front: boolean;
  /** The ray that is followed: the place it starts from (0), its unit vector (3), and the reciprocals of its parts (6), which a search writes. */
  readonly ray: Float64Array;
}

/** A hit of nothing, to be written into. */
export function emptyHit(): Hit {
  return { thing: -1, way: 0, front: true, ray: new Float64Array(9) };
}

/**
 * How far rays start off the surface they leave, m. Surfaces may lie on one another, as the ends of two limbs do at a
 * joint; a ray that leaves one of them leaves both.
 */
export const LIFT = 1e-8;

function setRay(
  ray: Float64Array,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
): void {
  ray[0] = ox;
  ray[1] = oy;
  ray[2] = oz;
  ray[3] = dx;
  ray[4] = dy;
  ray[5] = dz;
}

/** What a ray from a point along a unit vector meets first. */
export function firstHit(
  world: World,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  hit: Hit,
): void {
  setRay(hit.ray, ox, oy, oz, dx, dy, dz);
  followRay(world, hit);
}

function followRay(world: World, hit: Hit): void {
  const { ray } = hit;
  hit.thing = -1;
  hit.way = Number.POSITIVE_INFINITY;
  hit.front = true;
  shellHit(world, hit);
  const { bounds, links, waiting, nodes } = world.tree;
  if (nodes === 0) return;
  ray[6] = 1 / (ray[3] as number);
  ray[7] = 1 / (ray[4] as number);
  ray[8] = 1 / (ray[5] as number);
  let depth = 0;
  let node = entry(bounds, 0, ray) < hit.way ? 0 : -1;
  while (node >= 0) {
    const left = links[2 * node] as number;
    const right = links[2 * node + 1] as number;
    if (left < 0) {
      meet(world, right, hit);
      node = depth > 0 ? (waiting[--depth] as number) : -1;
      continue;
    }
    const nearLeft = entry(bounds, 6 * left, ray);
    const nearRight = entry(bounds, 6 * right, ray);
    const goLeft = nearLeft < hit.way;
    const goRight = nearRight < hit.way;
    if (goLeft && goRight) {
      const leftFirst = nearLeft <= nearRight;
      waiting[depth++] = leftFirst ? right : left;
      node = leftFirst ? left : right;
    } else if (goLeft) node = left;
    else if (goRight) node = right;
    else node = depth > 0 ? (waiting[--depth] as number) : -1;
  }
}

/**
 * True when nothing stands on the way from a point along a unit vector before `far`.
 *
 * @param indoors - True where both ends lie in the room, so that its own surfaces are not in the way.
 */
export function clearWay(
  world: World,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  far: number,
  indoors: boolean,
  hit: Hit,
): boolean {
  setRay(hit.ray, ox, oy, oz, dx, dy, dz);
  hit.way = far;
  return isFree(world, indoors, hit);
}

/** The same for a ray that stands in the hit already, and its way with it. */
export function isFree(world: World, indoors: boolean, hit: Hit): boolean {
  const { ray } = hit;
  hit.thing = -1;
  if (!indoors) {
    for (const i of world.shellAll) {
      meet(world, i, hit);
      if (hit.thing >= 0) return false;
    }
  }
  const { bounds, links, waiting, nodes } = world.tree;
  if (nodes === 0) return true;
  ray[6] = 1 / (ray[3] as number);
  ray[7] = 1 / (ray[4] as number);
  ray[8] = 1 / (ray[5] as number);
  let depth = 0;
  let node = 0;
  for (;;) {
    if (enters(bounds, 6 * node, hit)) {
      const left = links[2 * node] as number;
      const right = links[2 * node + 1] as number;
      if (left >= 0) {
        waiting[depth++] = right;
        node = left;
        continue;
      }
      meet(world, right, hit);
      if (hit.thing >= 0) return false;
    }
    if (depth === 0) return true;
    node = waiting[--depth] as number;
  }
}

/** Way along the ray at which it enters a box; infinite where it does not. A zero direction gives no number to fear. */
function entry(bounds: Float64Array, at: number, ray: Float64Array): number {
  const x0 = ((bounds[at] as number) - (ray[0] as number)) * (ray[6] as number);
  const x1 = ((bounds[at + 1] as number) - (ray[0] as number)) * (ray[6] as number);
  const y0 = ((bounds[at + 2] as number) - (ray[1] as number)) * (ray[7] as number);
  const y1 = ((bounds[at + 3] as number) - (ray[1] as number)) * (ray[7] as number);
  const z0 = ((bounds[at + 4] as number) - (ray[2] as number)) * (ray[8] as number);
  const z1 = ((bounds[at + 5] as number) - (ray[2] as number)) * (ray[8] as number);
  let near = 0;
  let far = Number.POSITIVE_INFINITY;
  if (x0 < x1) {
    if (x0 > near) near = x0;
    if (x1 < far) far = x1;
  } else {
    if (x1 > near) near = x1;
    if (x0 < far) far = x0;
  }
  if (y0 < y1) {
    if (y0 > near) near = y0;
    if (y1 < far) far = y1;
  } else {
    if (y1 > near) near = y1;
    if (y0 < far) far = y0;
  }
  if (z0 < z1) {
    if (z0 > near) near = z0;
    if (z1 < far) far = z1;
  } else {
    if (z1 > near) near = z1;
    if (z0 < far) far = z0;
  }
  return near <= far ? near : Number.POSITIVE_INFINITY;
}

/** True where a ray enters a box before `far`: the same as by `entry`, given up at the first pair of sides that tells. */
function enters(bounds: Float64Array, at: number, { ray, way: far }: Hit): boolean {
  const x0 = ((bounds[at] as number) - (ray[0] as number)) * (ray[6] as number);
  const x1 = ((bounds[at + 1] as number) - (ray[0] as number)) * (ray[6] as number);
  let near = 0;
  let most = Number.POSITIVE_INFINITY;
  if (x0 < x1) {
    if (x0 > near) near = x0;
    if (x1 < most) most = x1;
  } else {
    if (x1 > near) near = x1;
    if (x0 < most) most = x0;
  }
  if (near > most || near >= far) return false;
  const y0 = ((bounds[at + 2] as number) - (ray[1] as number)) * (ray[7] as number);
  const y1 = ((bounds[at + 3] as number) - (ray[1] as number)) * (ray[7] as number);
  if (y0 < y1) {
    if (y0 > near) near = y0;
    if (y1 < most) most = y1;
  } else {
    if (y1 > near) near = y1;
    if (y0 < most) most = y0;
  }
  if (near > most || near >= far) return false;
  const z0 = ((bounds[at + 4] as number) - (ray[2] as number)) * (ray[8] as number);
  const z1 = ((bounds[at + 5] as number) - (ray[2] as number)) * (ray[8] as number);
  if (z0 < z1) {
    if (z0 > near) near = z0;
    if (z1 < most) most = z1;
  } else {
    if (z1 > near) near = z1;
    if (z0 < most) most = z0;
  }
  return near <= most && near < far;
}

/** The room's own surfaces: from inside the ray leaves the box at one wall; from outside each is tried. */
function shellHit(world: World, hit: Hit): void {
  const { ray } = hit;
  const ox = ray[0] as number;
  const oy = ray[1] as number;
  const oz = ray[2] as number;
  const dx = ray[3] as number;
  const dy = ray[4] as number;
  const dz = ray[5] as number;
  const room = world.room;
  if (room === null || !insideRoom(room, ox, oy, oz)) {
    for (const i of world.shellAll) meet(world, i, hit);
    return;
  }
  let wall = -1;
  let way = Number.POSITIVE_INFINITY;
  if (dx !== 0) {
    wall = dx > 0 ? 1 : 0;
    way = ((room[wall] as number) - ox) / dx;
  }
  if (dy !== 0) {
    const w = dy > 0 ? 3 : 2;
    const t = ((room[w] as number) - oy) / dy;
    if (t < way) {
      way = t;
      wall = w;
    }
  }
  if (dz !== 0) {
    const w = dz > 0 ? 5 : 4;
    const t = ((room[w] as number) - oz) / dz;
    if (t < way) {
      way = t;
      wall = w;
    }
  }
  const surfaces = world.shell[wall];
  if (surfaces === undefined) return;
  const only = surfaces[0];
  if (surfaces.length === 1 && only !== undefined && world.whole[only] === 1) {
    // A wall without a window is met wherever the ray leaves the box, corners and rounding included.
    hit.thing = only;
    hit.way = Math.max(0, way);
    return;
  }
  for (const i of surfaces) meet(world, i, hit);
}

/** True inside the room's box, its surfaces included. */
export function insideRoom(room: Float64Array, x: number, y: number, z: number): boolean {
  const s = 1e-6;
  return (
    x > (room[0] as number) - s &&
    x < (room[1] as number) + s &&
    y > (room[2] as number) - s &&
    y < (room[3] as number) + s &&
    z > (room[4] as number) - s &&
    z < (room[5] as number) + s
  );
}

/** True for a point in the room, and everywhere without one. */
export const isIndoors = ({ room }: World, x: number, y: number, z: number): boolean =>
  room === null || insideRoom(room, x, y, z);

/** Takes a thing as the hit where the ray meets it before what was met so far. */
function meet(world: World, i: number, hit: Hit): void {
  const kind = world.kind[i] as number;
  if (kind === POLYGON) meetPolygon(world, i, hit);
  else if (kind === CAPSULE) meetCapsule(world.data, i, hit);
  else meetEllipsoid(world.data, i, hit);
}

function meetPolygon(world: World, i: number, hit: Hit): void {
  const { ray } = hit;
  const ox = ray[0] as number;
  const oy = ray[1] as number;
  const oz = ray[2] as number;
  const dx = ray[3] as number;
  const dy = ray[4] as number;
  const dz = ray[5] as number;
  const d = world.data;
  const at = i * STRIDE;
  const nx = d[at] as number;
  const ny = d[at + 1] as number;
  const nz = d[at + 2] as number;
  const rate = nx * dx + ny * dy + nz * dz;
  if (rate === 0) return;
  const t = ((d[at + 3] as number) - (nx * ox + ny * oy + nz * oz)) / rate;
  if (!(t > 0 && t < hit.way)) return;
  const px = ox + t * dx;
  const py = oy + t * dy;
  const pz = oz + t * dz;
  const x = px - (d[at + 4] as number);
  const y = py - (d[at + 5] as number);
  const z = pz - (d[at + 6] as number);
  const u = x * (d[at + 7] as number) + y * (d[at + 8] as number) + z * (d[at + 9] as number);
  if (u < 0 || u > (d[at + 13] as number)) return;
  const v = x * (d[at + 10] as number) + y * (d[at + 11] as number) + z * (d[at + 12] as number);
  if (v < 0 || v > (d[at + 14] as number)) return;
  if ((world.edgeCount[i] as number) > 0 && !withinEdges(world, i, px, py, pz)) return;
  hit.thing = i;
  hit.way = t;
  hit.front = rate < 0;
}

/** True when a point of a polygon's plane is inside all its edges. */
export function withinEdges(world: World, i: number, x: number, y: number, z: number): boolean {
  const e = world.edges;
  const start = world.edgeStart[i] as number;
  const end = start + 4 * (world.edgeCount[i] as number);
  for (let k = start; k < end; k += 4) {
    if ((e[k] as number) * x + (e[k + 1] as number) * y + (e[k + 2] as number) * z > (e[k + 3] as number))
      return false;
  }
  return true;
}

function meetEllipsoid(d: Float64Array, i: number, hit: Hit): void {
  const { ray } = hit;
  const ox = ray[0] as number;
  const oy = ray[1] as number;
  const oz = ray[2] as number;
  const dx = ray[3] as number;
  const dy = ray[4] as number;
  const dz = ray[5] as number;
  const at = i * STRIDE;
  const x = ox - (d[at] as number);
  const y = oy - (d[at + 1] as number);
  const z = oz - (d[at + 2] as number);
  let a = 0;
  let b = 0;
  let c = -1;
  for (let k = at + 3; k < at + 12; k += 3) {
    const px = d[k] as number;
    const py = d[k + 1] as number;
    const pz = d[k + 2] as number;
    const o = px * x + py * y + pz * z;
    const w = px * dx + py * dy + pz * dz;
    a += w * w;
    b += o * w;
    c += o * o;
  }
  if (c < 0) {
    hit.thing = i;
    hit.way = 0;
    hit.front = true;
    return;
  }
  const root = b * b - a * c;
  if (b >= 0 || root <= 0) return;
  const t = (-b - Math.sqrt(root)) / a;
  if (t > 0 && t < hit.way) {
    hit.thing = i;
    hit.way = t;
    hit.front = true;
  }
}

function meetCapsule(d: Float64Array, i: number, hit: Hit): void {
  const { ray } = hit;
  const ox = ray[0] as number;
  const oy = ray[1] as number;
  const oz = ray[2] as number;
  const dx = ray[3] as number;
  const dy = ray[4] as number;
  const dz = ray[5] as number;
  const at = i * STRIDE;
  const x = ox - (d[at] as number);
  const y = oy - (d[at + 1] as number);
  const z = oz - (d[at + 2] as number);
  const ax = d[at + 3] as number;
  const ay = d[at + 4] as number;
  const az = d[at + 5] as number;
  const long = d[at + 6] as number;
  const rr = (d[at + 7] as number) * (d[at + 7] as number);
  const along = x * ax + y * ay + z * az;
  const xx = x * x + y * y + z * z;
  const near = along < 0 ? 0 : Math.min(along, long);
  if (xx - 2 * near * along + near * near < rr) {
    hit.thing = i;
    hit.way = 0;
    hit.front = true;
    return;
  }
  const rate = dx * ax + dy * ay + dz * az;
  const xd = x * dx + y * dy + z * dz;
  const a = 1 - rate * rate;
  let t = -1;
  let where = rate > 0 ? -1 : long + 1;
  if (a > 1e-12) {
    const b = xd - along * rate;
    const root = b * b - a * (xx - along * along - rr);
    if (root <= 0) return;
    t = (-b - Math.sqrt(root)) / a;
    where = along + t * rate;
  }
  if (where < 0 || where > long) {
    // One of the round ends.
    const s = where < 0 ? 0 : long;
    const b = xd - s * rate;
    const root = b * b - (xx - 2 * s * along + s * s - rr);
    if (root <= 0) return;
    t = -b - Math.sqrt(root);
  }
  if (t > 0 && t < hit.way) {
    hit.thing = i;
    hit.way = t;
    hit.front = true;
  }
}
