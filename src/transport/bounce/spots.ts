import { type Cells, cellIn, sideOfCell } from "./cells.js";
import { emptyHit, firstHit, type Hit } from "./first-hit.js";
import type { Gathered } from "./gather.js";
import { emptyPlace, type Place, placeAt, type Spot, spotOf } from "./place.js";
import { fieldAt, patchIn, type Sides } from "./sides.js";
import type { World } from "./world.js";

/**
 * Places where a station needs the direct light itself, not the mean of a cell: parts of cells that fill much of its
 * view, and parts of cells that light those.
 */
export interface Spots {
  count: number;
  /** First spot of each station, and one after the last. */
  readonly start: Int32Array;
  /** Cell and u, v of each spot. */
  cell: Int32Array;
  spot: Float64Array;
  /** What direct light at the spot gives the station, lx per lx. */
  weight: Float64Array;
  /** Cell that the station sees: the spot's own, or the one the spot lights. */
  via: Int32Array;
}

/** No spots yet, with room for a few. */
export function emptySpots(stations: number): Spots {
  const room = 256;
  return {
    count: 0,
    start: new Int32Array(stations + 1),
    cell: new Int32Array(room),
    spot: new Float64Array(2 * room),
    weight: new Float64Array(room),
    via: new Int32Array(room),
  };
}

function push(spots: Spots, cell: number, u: number, v: number, weight: number, via: number): void {
  if (spots.count === spots.cell.length) grow(spots);
  const at = spots.count++;
  spots.cell[at] = cell;
  spots.spot[2 * at] = u;
  spots.spot[2 * at + 1] = v;
  spots.weight[at] = weight;
  spots.via[at] = via;
}

function grow(spots: Spots): void {
  const room = 2 * spots.cell.length;
  const cell = new Int32Array(room);
  const spot = new Float64Array(2 * room);
  const weight = new Float64Array(room);
  const via = new Int32Array(room);
  cell.set(spots.cell);
  spot.set(spots.spot);
  weight.set(spots.weight);
  via.set(spots.via);
  spots.cell = cell;
  spots.spot = spot;
  spots.weight = weight;
  spots.via = via;
}

/** True for a cell that fills so much of a view that spots stand for it. */
export function isHeavy(share: number, most: number): boolean {
  return share > 2 * most;
}

/**
 * Adds the spots of what a station sees: of each heavy cell, a ray for every part of the size `most`. `passed` is
 * scratch, a number for each cell.
 */
export function addSeenSpots(
  spots: Spots,
  station: number,
  gathered: Gathered,
  cellOfRay: Int32Array,
  seen: Float64Array,
  rho: Float64Array,
  most: number,
  passed: Float64Array,
): void {
  passed.fill(0);
  const { start, share, spot } = gathered;
  for (let r = start[station] as number; r < (start[station + 1] as number); r++) {
    const cell = cellOfRay[r] as number;
    const part = share[r] as number;
    if (cell < 0 || part === 0) continue;
    const whole = seen[cell] as number;
    if (!isHeavy(whole, most)) continue;
    const step = whole / Math.ceil(whole / most);
    const steps = stepsPassed(passed, cell, part, step);
    if (steps > 0)
      push(
        spots,
        cell,
        spot[2 * r] as number,
        spot[2 * r + 1] as number,
        step * steps * (rho[cell] as number),
        cell,
      );
  }
}

/** Adds a part to what passed at a cell; gives how many steps' middles that passes. */
function stepsPassed(passed: Float64Array, cell: number, part: number, step: number): number {
  const before = passed[cell] as number;
  const after = before + part;
  passed[cell] = after;
  return Math.floor(after / step + 0.5 - 1e-9) - Math.floor(before / step + 0.5 - 1e-9);
}

/** What the rays from spots met, and scratch for sending them. */
export interface SpotWork {
  readonly at: Place;
  readonly hit: Hit;
  readonly where: Spot;
  /** Sums by cell: what the spots' rays met, that of every second ray twice, and what passed. */
  readonly lit: Float64Array;
  readonly litHalf: Float64Array;
  readonly passed: Float64Array;
  /** The part of `lit` that spots stand for. */
  readonly spotted: Float64Array;
  /** Rays of one station: cell, u, v, weight, cell seen. */
  cell: Int32Array;
  via: Int32Array;
  ray: Float64Array;
  /** Position in the sequence that spreads the rays. */
  a: number;
  b: number;
}

/** Scratch for a number of cells. */
export function spotWork(cells: number): SpotWork {
  return {
    at: emptyPlace(),
    hit: emptyHit(),
    where: { u: 0, v: 0 },
    lit: new Float64Array(cells),
    litHalf: new Float64Array(cells),
    passed: new Float64Array(cells),
    spotted: new Float64Array(cells),
    cell: new Int32Array(256),
    via: new Int32Array(256),
    ray: new Float64Array(3 * 256),
    a: 0.5,
    b: 0.5,
  };
}

/** Steps of the sequence of two numbers (powers of the root of x^3 = x + 1). */
const ROOT = 1.324717957244746;

/**
 * Looks on from a station's spots by `number` rays each, and adds spots where those rays fall thick. `work.lit`,
 * `work.litHalf` and `work.spotted` get the shares of what lights the spots.
 */
export function lookOn(
  world: World,
  sides: Sides,
  cells: Cells,
  spots: Spots,
  first: number,
  rho: Float64Array,
  number: number,
  most: number,
  work: SpotWork,
): void {
  const { lit, litHalf, spotted, passed } = work;
  lit.fill(0);
  litHalf.fill(0);
  spotted.fill(0);
  const end = spots.count;
  const room = (end - first) * number;
  if (work.cell.length < room) {
    work.cell = new Int32Array(2 * room);
    work.via = new Int32Array(2 * room);
    work.ray = new Float64Array(6 * room);
  }
  let count = 0;
  for (let k = first; k < end; k++) count = raysFrom(world, sides, cells, spots, k, number, count, work);
  passed.fill(0);
  for (let r = 0; r < count; r++) {
    const cell = work.cell[r] as number;
    const whole = lit[cell] as number;
    if (!isHeavy(whole, most)) continue;
    const step = whole / Math.ceil(whole / most);
    const steps = stepsPassed(passed, cell, work.ray[3 * r + 2] as number, step);
    spotted[cell] = whole;
    if (steps > 0) {
      push(
        spots,
        cell,
        work.ray[3 * r] as number,
        work.ray[3 * r + 1] as number,
        step * steps * (rho[cell] as number),
        work.via[r] as number,
      );
    }
  }
}

/** Sends the rays of one spot; gives how many rays met something so far. */
function raysFrom(
  world: World,
  sides: Sides,
  cells: Cells,
  spots: Spots,
  k: number,
  number: number,
  before: number,
  work: SpotWork,
): number {
  const { at, hit, where, lit, litHalf } = work;
  const seen = spots.cell[k] as number;
  const side = sideOfCell(cells, seen);
  const thing = sides.thing[side] as number;
  placeAt(
    world,
    thing,
    sides.front[side] === 1,
    spots.spot[2 * k] as number,
    spots.spot[2 * k + 1] as number,
    at,
  );
  const { nx, ny, nz } = at;
  const level = Math.sqrt(nx * nx + ny * ny);
  const ux = level > 1e-12 ? -ny / level : 1;
  const uy = level > 1e-12 ? nx / level : 0;
  const weight = (spots.weight[k] as number) / number;
  let count = before;
  for (let r = 0; r < number; r++) {
    work.a += 1 / ROOT;
    work.b += 1 / (ROOT * ROOT);
    work.a -= Math.floor(work.a);
    work.b -= Math.floor(work.b);
    const turn = 2 * Math.PI * work.a;
    // The rays of one spot go by rings of equal weight.
    const ring = (r + work.b) / number;
    const flat = Math.sqrt(ring);
    const up = Math.sqrt(1 - ring);
    const a = flat * Math.cos(turn);
    const b = flat * Math.sin(turn);
    const dx = a * ux - b * nz * uy + up * nx;
    const dy = a * uy + b * nz * ux + up * ny;
    const dz = b * (nx * uy - ny * ux) + up * nz;
    firstHit(world, at.x, at.y, at.z, dx, dy, dz, thing, hit);
    if (hit.thing < 0 || hit.way === 0) continue;
    const met = sides.of[2 * hit.thing + (hit.front ? 1 : 0)] as number;
    if (met < 0) continue;
    const px = at.x + hit.way * dx;
    const py = at.y + hit.way * dy;
    const pz = at.z + hit.way * dz;
    spotOf(world, hit.thing, px, py, pz, where);
    const patch = patchIn(world, sides, fieldAt(sides, met, where.u, where.v), px, py, pz);
    const cell = cellIn(sides, cells, patch, where.u, where.v);
    if (cell < 0) continue;
    lit[cell] = (lit[cell] as number) + weight;
    if (r % 2 === 0) litHalf[cell] = (litHalf[cell] as number) + 2 * weight;
    work.cell[count] = cell;
    work.via[count] = seen;
    work.ray[3 * count] = where.u;
    work.ray[3 * count + 1] = where.v;
    work.ray[3 * count + 2] = weight;
    count++;
  }
  return count;
}
