import { emptyHit, firstHit } from "./first-hit.js";
import type { Gathered } from "./gather.js";
import { emptyPlace, placeAt } from "./place.js";
import type { Sides } from "./sides.js";
import { POLYGON, type World } from "./world.js";

/**
 * Patches and the cells they are cut into. Light is exchanged between patches; what the lamps give directly is found
 * for the cells, and the stations look at the cells.
 */
export interface Cells {
  readonly patches: number;
  readonly sideOfPatch: Int32Array;
  /** Low corner of each patch in u and v. */
  readonly u: Float64Array;
  readonly v: Float64Array;
  /** Area of each patch that is open to the scene, m2. */
  readonly patchArea: Float64Array;
  /** Cells along u and v of each patch, and its first cell. */
  readonly across: Int32Array;
  readonly along: Int32Array;
  readonly first: Int32Array;

  readonly count: number;
  readonly patchOf: Int32Array;
  /** Open area of each cell, m2. */
  readonly area: Float64Array;
  /** Place and normal of each cell, six numbers, and its half diagonal, m. */
  readonly place: Float64Array;
  readonly radius: Float64Array;
  /** One bit for each open quarter of a cell; 0 where it is covered. */
  readonly open: Uint8Array;
}

/** How patches are cut. */
export interface CellRule {
  /** A cell should have no more than this share of the view of any station. */
  readonly mostShare: number;
  /** A cell should be no larger than this, m. */
  readonly mostSize: number;
  /** Most cells along a side of a patch. */
  readonly most: number;
}

/** What comes nearer to a surface than this covers it, m. */
const COVER = 0.005;

/** Cuts every patch by how much of it the stations see, and finds which parts are open. */
export function cellsOf(world: World, sides: Sides, seen: Float64Array, rule: CellRule): Cells {
  const n = sides.patches;
  const sideOfPatch = new Int32Array(n);
  const u = new Float64Array(n);
  const v = new Float64Array(n);
  const across = new Int32Array(n);
  const along = new Int32Array(n);
  const first = new Int32Array(n);
  let count = 0;
  for (let side = 0; side < sides.count; side++) {
    const nu = sides.across[side] as number;
    const nv = sides.along[side] as number;
    for (let k = 0; k < nu * nv; k++) {
      const patch = (sides.first[side] as number) + k;
      sideOfPatch[patch] = side;
      u[patch] = (k % nu) / nu;
      v[patch] = Math.floor(k / nu) / nv;
      divide(world, sides, side, (seen[patch] as number) / rule.mostShare, rule, across, along, patch);
      first[patch] = count;
      count += (across[patch] as number) * (along[patch] as number);
    }
  }
  const cells: Cells = {
    patches: n,
    sideOfPatch,
    u,
    v,
    patchArea: new Float64Array(n),
    across,
    along,
    first,
    count,
    patchOf: new Int32Array(count),
    area: new Float64Array(count),
    place: new Float64Array(6 * count),
    radius: new Float64Array(count),
    open: new Uint8Array(count),
  };
  const probe = emptyProbe();
  for (let patch = 0; patch < n; patch++) {
    const end = (first[patch] as number) + (across[patch] as number) * (along[patch] as number);
    for (let cell = first[patch] as number; cell < end; cell++) {
      cells.patchOf[cell] = patch;
      openCell(world, sides, cells, cell, probe);
      cells.patchArea[patch] = (cells.patchArea[patch] as number) + (cells.area[cell] as number);
    }
  }
  return cells;
}

/** How many cells a patch gets along u and v: for its size, and for its share of the views. */
function divide(
  world: World,
  sides: Sides,
  side: number,
  wanted: number,
  rule: CellRule,
  across: Int32Array,
  along: Int32Array,
  patch: number,
): void {
  const { width, height } = extent(world, sides, side);
  let a = Math.max(1, Math.ceil(width / rule.mostSize - 1e-6));
  let b = Math.max(1, Math.ceil(height / rule.mostSize - 1e-6));
  while (a * b < wanted && (a < rule.most || b < rule.most)) {
    if (b >= rule.most || (a < rule.most && width / a >= height / b)) a++;
    else b++;
  }
  across[patch] = a;
  along[patch] = b;
}

/** Width and height of a side's patches, m: along u and along v. */
function extent(
  world: World,
  sides: Sides,
  side: number,
): { readonly width: number; readonly height: number } {
  const at = emptyPlace();
  const thing = sides.thing[side] as number;
  const front = sides.front[side] === 1;
  const nu = sides.across[side] as number;
  const nv = sides.along[side] as number;
  const point = (u: number, v: number): readonly [number, number, number] => {
    placeAt(world, thing, front, u, v, at);
    return [at.x, at.y, at.z];
  };
  const gap = (a: readonly number[], b: readonly number[]): number => {
    const x = (a[0] as number) - (b[0] as number);
    const y = (a[1] as number) - (b[1] as number);
    const z = (a[2] as number) - (b[2] as number);
    return Math.sqrt(x * x + y * y + z * z);
  };
  if (world.kind[thing] === POLYGON) {
    return {
      width: gap(point(0, 0), point(1, 0)) / nu,
      height: gap(point(0, 0), point(0, 1)) / nv,
    };
  }
  // Round a body the half turn is a chord of the whole; light changes faster there than on a flat.
  return {
    width: ((Math.PI / 2) * gap(point(0, 0.5), point(0.5, 0.5)) * 2) / nu,
    height: gap(point(0, 0), point(0, 1)) / nv,
  };
}

interface Probe {
  readonly at: ReturnType<typeof emptyPlace>;
  readonly hit: ReturnType<typeof emptyHit>;
}

function emptyProbe(): Probe {
  return { at: emptyPlace(), hit: emptyHit() };
}

/** Low corner and size of a cell in u and v: u, v, width, height. */
export function cellSpan(sides: Sides, cells: Cells, cell: number, out: Float64Array): void {
  const patch = cells.patchOf[cell] as number;
  const side = cells.sideOfPatch[patch] as number;
  const k = cell - (cells.first[patch] as number);
  const a = cells.across[patch] as number;
  const du = 1 / ((sides.across[side] as number) * a);
  const dv = 1 / ((sides.along[side] as number) * (cells.along[patch] as number));
  out[0] = (cells.u[patch] as number) + (k % a) * du;
  out[1] = (cells.v[patch] as number) + Math.floor(k / a) * dv;
  out[2] = du;
  out[3] = dv;
}

/** Finds which quarters of a cell are open, its area, place and size. */
function openCell(world: World, sides: Sides, cells: Cells, cell: number, probe: Probe): void {
  const span = new Float64Array(4);
  cellSpan(sides, cells, cell, span);
  const [u, v, du, dv] = span as unknown as readonly [number, number, number, number];
  const side = cells.sideOfPatch[cells.patchOf[cell] as number] as number;
  const thing = sides.thing[side] as number;
  const front = sides.front[side] === 1;
  const { at } = probe;
  let area = 0;
  let open = 0;
  for (let q = 0; q < 4; q++) {
    placeAt(world, thing, front, u + du * (q % 2 === 0 ? 0.25 : 0.75), v + dv * (q < 2 ? 0.25 : 0.75), at);
    if (at.stretch === 0 || covered(world, thing, probe)) continue;
    open |= 1 << q;
    area += (at.stretch * du * dv) / 4;
  }
  cells.open[cell] = open;
  cells.area[cell] = area;
  const x = at.x;
  const y = at.y;
  const z = at.z;
  // The middle; where part of the cell is covered, the middle of an open quarter.
  const q = open === 15 || open === 0 ? -1 : [0, 1, 2, 3].findIndex((bit) => (open & (1 << bit)) !== 0);
  const mu = q < 0 ? 0.5 : q % 2 === 0 ? 0.25 : 0.75;
  const mv = q < 0 ? 0.5 : q < 2 ? 0.25 : 0.75;
  placeAt(world, thing, front, u + du * mu, v + dv * mv, at);
  cells.place.set([at.x, at.y, at.z, at.nx, at.ny, at.nz], 6 * cell);
  const dx = x - at.x;
  const dy = y - at.y;
  const dz = z - at.z;
  cells.radius[cell] = (q < 0 ? 2 : 4) * Math.sqrt(dx * dx + dy * dy + dz * dz);
}

/** True where something lies on a surface, or the place is inside of a body or closed box. */
function covered(world: World, thing: number, { at, hit }: Probe): boolean {
  firstHit(world, at.x, at.y, at.z, at.nx, at.ny, at.nz, thing, hit);
  if (hit.thing < 0) return false;
  return hit.way < COVER || (!hit.front && world.closed[hit.thing] === 1);
}

/** The cell of a side at u and v. */
export function cellAt(sides: Sides, cells: Cells, patch: number, u: number, v: number): number {
  const side = cells.sideOfPatch[patch] as number;
  const a = cells.across[patch] as number;
  const b = cells.along[patch] as number;
  const i = Math.floor((u - (cells.u[patch] as number)) * (sides.across[side] as number) * a);
  const j = Math.floor((v - (cells.v[patch] as number)) * (sides.along[side] as number) * b);
  const x = Math.min(a - 1, Math.max(0, i));
  const y = Math.min(b - 1, Math.max(0, j));
  return (cells.first[patch] as number) + y * a + x;
}

/** Shares of the patches in the views of the stations: the greatest of any station for each patch. */
export function greatestShares(sides: Sides, gathered: Gathered, patchOfRay: Int32Array): Float64Array {
  const most = new Float64Array(sides.patches);
  const own = new Float64Array(sides.patches);
  for (let i = 0; i + 1 < gathered.start.length; i++) {
    own.fill(0);
    for (let r = gathered.start[i] as number; r < (gathered.start[i + 1] as number); r++) {
      const p = patchOfRay[r] as number;
      own[p] = (own[p] as number) + (gathered.share[r] as number);
    }
    for (let p = 0; p < own.length; p++) most[p] = Math.max(most[p] as number, own[p] as number);
  }
  return most;
}
