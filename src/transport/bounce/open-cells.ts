import { between, type Cells, COVER, cellSpan } from "./cells.js";
import { emptyHit, firstHit, type Hit } from "./first-hit.js";
import { emptyPlace, type Place, placeAt } from "./place.js";
import { patchIn, type Sides } from "./sides.js";
import type { World } from "./world.js";

/** Scratch. */
interface Probe {
  readonly at: Place;
  readonly middle: Place;
  readonly hit: Hit;
  readonly span: Float64Array;
}

/** Finds which parts of all cells are open to the scene, their areas, places and sizes, and the areas of the patches. */
export function openCells(world: World, sides: Sides, cells: Cells): void {
  const probe: Probe = { at: emptyPlace(), middle: emptyPlace(), hit: emptyHit(), span: new Float64Array(4) };
  for (let cell = 0; cell < cells.count; cell++) {
    const patch = cells.patchOf[cell] as number;
    openCell(world, sides, cells, cell, probe);
    cells.patchArea[patch] = (cells.patchArea[patch] as number) + (cells.area[cell] as number);
  }
}

function openCell(world: World, sides: Sides, cells: Cells, cell: number, probe: Probe): void {
  const { at, middle, span } = probe;
  const patch = cells.patchOf[cell] as number;
  const side = cells.sideOfPatch[patch] as number;
  const thing = sides.thing[side] as number;
  const front = sides.front[side] === 1;
  const field = cells.fieldOfPatch[patch] as number;
  const parted = (sides.cuts[2 * field] as number) >= 0;
  cellSpan(sides, cells, cell, span);
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
    if (at.stretch === 0 || covered(world, thing, probe)) continue;
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
  cells.area[cell] = area;
  placeAt(world, thing, front, u, v, at);
  placeAt(world, thing, front, u + du / 2, v + dv / 2, middle);
  const half = between(at, middle);
  const whole = count === 16 || count === 0;
  if (!whole) {
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
  cells.place.set([middle.x, middle.y, middle.z, middle.nx, middle.ny, middle.nz], 6 * cell);
  cells.radius[cell] = whole ? half : 1.75 * half;
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
