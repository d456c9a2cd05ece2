import { emptyHit, firstHit, type Hit } from "./first-hit.js";
import { between, emptyPlace, type Place, placeAt } from "./place.js";
import type { Sides } from "./sides.js";
import { POLYGON, type World } from "./world.js";

/** Patches and the rows of squares that each is cut into over its field; some of a parted field's are beyond the sheet. */
export interface PatchGrid {
  readonly patches: number;
  /** Side and field of each patch. */
  readonly sideOfPatch: Int32Array;
  readonly fieldOfPatch: Int32Array;
  /** Low corner of each patch's field in u and v. */
  readonly u: Float64Array;
  readonly v: Float64Array;
  /** Squares along u and v of each patch, its first square, and how many there are in all. */
  readonly across: Int32Array;
  readonly along: Int32Array;
  readonly first: Int32Array;
  readonly squares: number;
}

/** What comes nearer to a surface than this covers it, m. */
export const COVER = 0.005;

/** How patches are cut. */
export interface CutRule {
  /** A square should have no more than this share of the view of any station. */
  readonly cellShare: number;
  /** A square should be no larger than this, m. */
  readonly cellSize: number;
  /** Most squares along a side of a patch. */
  readonly cellsAcross: number;
}

/** Cuts every patch for its size, for what stands near before it, and by how much of it the stations see. */
export function cutPatches(world: World, sides: Sides, seen: Float64Array, rule: CutRule): PatchGrid {
  const n = sides.patches;
  const sideOfPatch = new Int32Array(n);
  const fieldOfPatch = new Int32Array(n);
  const u = new Float64Array(n);
  const v = new Float64Array(n);
  const across = new Int32Array(n);
  const along = new Int32Array(n);
  const first = new Int32Array(n);
  let squares = 0;
  const probe: Probe = { at: emptyPlace(), hit: emptyHit() };
  for (let side = 0; side < sides.count; side++) {
    const nu = sides.across[side] as number;
    const nv = sides.along[side] as number;
    const size = fieldSize(world, sides, side);
    for (let k = 0; k < nu * nv; k++) {
      const field = (sides.first[side] as number) + k;
      const near = nearest(world, sides, side, k, probe);
      for (let p = sides.patchStart[field] as number; p < (sides.patchStart[field + 1] as number); p++) {
        sideOfPatch[p] = side;
        fieldOfPatch[p] = field;
        u[p] = (k % nu) / nu;
        v[p] = Math.floor(k / nu) / nv;
        const [a, b] = rows(size, (seen[p] as number) / rule.cellShare, near, rule);
        across[p] = a;
        along[p] = b;
        first[p] = squares;
        squares += a * b;
      }
    }
  }
  return { patches: n, sideOfPatch, fieldOfPatch, u, v, across, along, first, squares };
}

/** Squares before which something stands near are no larger than this share of the way to it. */
const NEAR_SHARE = 0.7;
/** They are no smaller for that than this share of the usual size. */
const NEAR_LEAST = 0.3;

/** Scratch. */
interface Probe {
  readonly at: Place;
  readonly hit: Hit;
}

/** The least way along the normal from four places of a field to what stands before it, m; what covers it aside. */
function nearest(world: World, sides: Sides, side: number, k: number, { at, hit }: Probe): number {
  const thing = sides.thing[side] as number;
  const nu = sides.across[side] as number;
  const nv = sides.along[side] as number;
  let least = Number.POSITIVE_INFINITY;
  for (let q = 0; q < 4; q++) {
    const u = ((k % nu) + 0.25 + 0.5 * (q & 1)) / nu;
    const v = (Math.floor(k / nu) + 0.25 + 0.5 * (q >> 1)) / nv;
    placeAt(world, thing, sides.front[side] === 1, u, v, at);
    firstHit(world, at.x, at.y, at.z, at.nx, at.ny, at.nz, thing, hit);
    if (hit.thing >= 0 && hit.way > COVER && hit.way < least) least = hit.way;
  }
  return least;
}

/** How many squares a patch gets along u and v. */
function rows(
  { width, height }: { readonly width: number; readonly height: number },
  wanted: number,
  near: number,
  rule: CutRule,
): readonly [number, number] {
  const most = rule.cellsAcross;
  const edge = Math.max(NEAR_LEAST * rule.cellSize, Math.min(rule.cellSize, NEAR_SHARE * near));
  let a = Math.min(most, Math.max(1, Math.ceil(width / edge - 1e-6)));
  let b = Math.min(most, Math.max(1, Math.ceil(height / edge - 1e-6)));
  while (a * b < wanted && (a < most || b < most)) {
    if (b >= most || (a < most && width / a >= height / b)) a++;
    else b++;
  }
  return [a, b];
}

/** Width and height of a side's fields, m: along u and along v. */
function fieldSize(
  world: World,
  sides: Sides,
  side: number,
): { readonly width: number; readonly height: number } {
  const thing = sides.thing[side] as number;
  const front = sides.front[side] === 1;
  const a = emptyPlace();
  const b = emptyPlace();
  const gap = (u0: number, v0: number, u1: number, v1: number): number => {
    placeAt(world, thing, front, u0, v0, a);
    placeAt(world, thing, front, u1, v1, b);
    return between(a, b);
  };
  // Round a body, half the way is a half circle over the chord.
  const width = world.kind[thing] === POLYGON ? gap(0, 0, 1, 0) : Math.PI * gap(0, 0.5, 0.5, 0.5);
  return {
    width: width / (sides.across[side] as number),
    height: gap(0, 0, 0, 1) / (sides.along[side] as number),
  };
}

/** The square of a patch at u and v. */
export function squareAt(sides: Sides, grid: PatchGrid, patch: number, u: number, v: number): number {
  const side = grid.sideOfPatch[patch] as number;
  const a = grid.across[patch] as number;
  const b = grid.along[patch] as number;
  const i = Math.floor((u - (grid.u[patch] as number)) * (sides.across[side] as number) * a);
  const j = Math.floor((v - (grid.v[patch] as number)) * (sides.along[side] as number) * b);
  const x = Math.min(a - 1, Math.max(0, i));
  const y = Math.min(b - 1, Math.max(0, j));
  return (grid.first[patch] as number) + y * a + x;
}

/** Low corner and size of a square in u and v: u, v, width, height. */
export function squareSpan(
  sides: Sides,
  grid: PatchGrid,
  patch: number,
  square: number,
  out: Float64Array,
): void {
  const side = grid.sideOfPatch[patch] as number;
  const k = square - (grid.first[patch] as number);
  const a = grid.across[patch] as number;
  const du = 1 / ((sides.across[side] as number) * a);
  const dv = 1 / ((sides.along[side] as number) * (grid.along[patch] as number));
  out[0] = (grid.u[patch] as number) + (k % a) * du;
  out[1] = (grid.v[patch] as number) + Math.floor(k / a) * dv;
  out[2] = du;
  out[3] = dv;
}
