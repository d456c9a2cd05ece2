import { type Covers, coversOf, underCover } from "./covers.js";
import { emptyHit, firstHit, type Hit } from "./first-hit.js";
import { COVER, type PatchGrid, squareAt, squareSpan } from "./patch-grid.js";
import { between, emptyPlace, type Place, placeAt } from "./place.js";
import { patchIn, type Sides } from "./sides.js";
import type { World } from "./world.js";

/**
 * Cells: the squares of the patches that are open to the scene. Light is exchanged between patches; what the lamps
 * give directly is found for the cells, and the stations look at the cells.
 */
export interface Cells {
  readonly grid: PatchGrid;
  /** The cell of each square of the grid, -1 for covered ones and those beyond a sheet. */
  readonly slot: Int32Array;
  readonly count: number;
  /** Square and patch of each cell. */
  readonly square: Int32Array;
  readonly patchOf: Int32Array;
  /** Open area of each cell, and of each patch, m2. */
  readonly area: Float64Array;
  readonly patchArea: Float64Array;
  /** Place and normal of each cell, six numbers, and its half diagonal, m. */
  readonly place: Float64Array;
  readonly radius: Float64Array;
  /** One bit for each sixteenth of a cell, row by row, that is open and belongs to it. */
  readonly open: Uint16Array;
}

/** Scratch. */
interface Probe {
  readonly at: Place;
  readonly middle: Place;
  readonly hit: Hit;
  readonly span: Float64Array;
}

/** Finds which parts of a grid are open to the scene. */
export function openCells(world: World, sides: Sides, grid: PatchGrid): Cells {
  const n = grid.squares;
  const cells = {
    grid,
    slot: new Int32Array(n).fill(-1),
    count: 0,
    square: new Int32Array(n),
    patchOf: new Int32Array(n),
    area: new Float64Array(n),
    patchArea: new Float64Array(grid.patches),
    place: new Float64Array(6 * n),
    radius: new Float64Array(n),
    open: new Uint16Array(n),
  };
  const probe: Probe = { at: emptyPlace(), middle: emptyPlace(), hit: emptyHit(), span: new Float64Array(4) };
  let covers: Covers = { count: 0, boxes: new Float64Array(0) };
  let side = -1;
  for (let p = 0; p < grid.patches; p++) {
    if (grid.sideOfPatch[p] !== side) {
      side = grid.sideOfPatch[p] as number;
      covers = coversOf(world, sides.thing[side] as number);
    }
    const end = p + 1 < grid.patches ? (grid.first[p + 1] as number) : n;
    for (let square = grid.first[p] as number; square < end; square++) {
      const cell = cells.count;
      cells.patchOf[cell] = p;
      cells.square[cell] = square;
      openCell(world, sides, cells, cell, covers, probe);
      if (cells.open[cell] === 0) continue;
      cells.slot[square] = cell;
      cells.patchArea[p] = (cells.patchArea[p] as number) + (cells.area[cell] as number);
      cells.count++;
    }
  }
  return cells;
}

function openCell(
  world: World,
  sides: Sides,
  cells: Cells,
  cell: number,
  covers: Covers,
  probe: Probe,
): void {
  const { at, middle, span } = probe;
  const { grid } = cells;
  const patch = cells.patchOf[cell] as number;
  const side = grid.sideOfPatch[patch] as number;
  const thing = sides.thing[side] as number;
  const front = sides.front[side] === 1;
  const field = grid.fieldOfPatch[patch] as number;
  const parted = (sides.cuts[2 * field] as number) >= 0;
  squareSpan(sides, grid, patch, cells.square[cell] as number, span);
  const u = span[0] as number;
  const v = span[1] as number;
  const du = span[2] as number;
  const dv = span[3] as number;
  let open = 0;
  let count = 0;
  let area = 0;
  let sumI = 0;
  let sumJ = 0;
  for (let q = 0; q < 4; q++) {
    const qi = q & 1;
    const qj = q >> 1;
    placeAt(world, thing, front, u + du * (0.25 + 0.5 * qi), v + dv * (0.25 + 0.5 * qj), at);
    // A quarter whose middle is beyond a polygon's edge, or covered, is taken as closed.
    if (at.stretch === 0 || (underCover(covers, at) && covered(world, thing, probe))) continue;
    const stretch = at.stretch;
    for (let s = 0; s < 4; s++) {
      const i = 2 * qi + (s & 1);
      const j = 2 * qj + (s >> 1);
      if (parted) {
        placeAt(world, thing, front, u + (du * (i + 0.5)) / 4, v + (dv * (j + 0.5)) / 4, at);
        if (patchIn(world, sides, field, at.x, at.y, at.z) !== patch) continue;
      }
      open |= 1 << (4 * j + i);
      area += (stretch * du * dv) / 16;
      sumI += i;
      sumJ += j;
      count++;
    }
  }
  cells.open[cell] = open;
  if (count === 0) return;
  cells.area[cell] = area;
  placeAt(world, thing, front, u, v, at);
  placeAt(world, thing, front, u + du / 2, v + dv / 2, middle);
  const half = between(at, middle);
  if (count < 16) {
    // The open sixteenth next to the middle of all open ones.
    const best = nearestOpen(open, sumI / count, sumJ / count);
    placeAt(
      world,
      thing,
      front,
      u + (du * ((best & 3) + 0.5)) / 4,
      v + (dv * ((best >> 2) + 0.5)) / 4,
      middle,
    );
  }
  const k = 6 * cell;
  cells.place[k] = middle.x;
  cells.place[k + 1] = middle.y;
  cells.place[k + 2] = middle.z;
  cells.place[k + 3] = middle.nx;
  cells.place[k + 4] = middle.ny;
  cells.place[k + 5] = middle.nz;
  cells.radius[cell] = count === 16 ? half : 1.75 * half;
}

function nearestOpen(open: number, i: number, j: number): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let bit = 0; bit < 16; bit++) {
    if ((open & (1 << bit)) === 0) continue;
    const x = (bit & 3) - i;
    const y = (bit >> 2) - j;
    if (x * x + y * y < least) {
      least = x * x + y * y;
      best = bit;
    }
  }
  return best;
}

/** True where something lies on a surface, or the place is inside of a body or closed box. */
function covered(world: World, thing: number, { at, hit }: Probe): boolean {
  firstHit(world, at.x, at.y, at.z, at.nx, at.ny, at.nz, thing, hit);
  if (hit.thing < 0) return false;
  return hit.way < COVER || (!hit.front && world.closed[hit.thing] === 1);
}

/** The cell of a patch at u and v; -1 where it is covered. */
export function cellIn(sides: Sides, cells: Cells, patch: number, u: number, v: number): number {
  return cells.slot[squareAt(sides, cells.grid, patch, u, v)] as number;
}

/** Low corner and size of a cell in u and v: u, v, width, height. */
export function cellSpan(sides: Sides, cells: Cells, cell: number, out: Float64Array): void {
  squareSpan(sides, cells.grid, cells.patchOf[cell] as number, cells.square[cell] as number, out);
}

/** The side that a cell lies on. */
export function sideOfCell(cells: Cells, cell: number): number {
  return cells.grid.sideOfPatch[cells.patchOf[cell] as number] as number;
}
