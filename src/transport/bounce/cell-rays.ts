import { type Cells, cellIn, cellSpan } from "./cells.js";
import { emptyHit, firstHit } from "./first-hit.js";
import { emptyPlace, placeAt, type Spot, spotOf } from "./place.js";
import { fieldAt, patchIn, type Sides } from "./sides.js";
import type { World } from "./world.js";

/** Rays from all cells: where each went, and how much exchange it stands for. */
export interface CellRays {
  readonly count: number;
  readonly from: Int32Array;
  /** Cell that was met; -1 for black surfaces, covered parts and the open. */
  readonly to: Int32Array;
  /**
   * Exchange area of the ray, m2, already shared with the rays that go the other way: both ways of a pair are weighed
   * by how densely rays leave either cell.
   */
  readonly area: Float64Array;
}

/** Steps of a sequence of four numbers that spreads rays evenly (Kronecker's, powers of the root of x^5 = x + 1). */
const ROOT = 1.1673039782614187;
const STEPS = [
  1 / ROOT,
  1 / (ROOT * ROOT),
  1 / (ROOT * ROOT * ROOT),
  1 / (ROOT * ROOT * ROOT * ROOT),
] as const;

/** Part of the rays that go by area, so that no cell is forgotten; the rest go by what the stations see. */
const BY_AREA = 0.4;

/** Sends about `total` rays from the cells, more from large ones and from those that fill much of a station's view. */
export function cellRays(
  world: World,
  sides: Sides,
  cells: Cells,
  seen: Float64Array,
  total: number,
): CellRays {
  const number = raysEach(cells, seen, total);
  let most = 0;
  for (let c = 0; c < cells.count; c++) most += number[c] as number;
  const from = new Int32Array(most);
  const to = new Int32Array(most);
  const area = new Float64Array(most);
  const density = new Float64Array(cells.count);
  const at = emptyPlace();
  const hit = emptyHit();
  const spot: Spot = { u: 0, v: 0 };
  const span = new Float64Array(4);
  const x = new Float64Array(4).fill(0.5);
  let count = 0;
  for (let c = 0; c < cells.count; c++) {
    const patch = cells.patchOf[c] as number;
    const side = cells.grid.sideOfPatch[patch] as number;
    const thing = sides.thing[side] as number;
    const front = sides.front[side] === 1;
    const field = cells.grid.fieldOfPatch[patch] as number;
    cellSpan(sides, cells, c, span);
    const first = count;
    let whole = 0;
    for (let r = 0; r < (number[c] as number); r++) {
      for (let k = 0; k < 4; k++) {
        const next = (x[k] as number) + (STEPS[k] as number);
        x[k] = next - Math.floor(next);
      }
      const u = (span[0] as number) + (span[2] as number) * (x[0] as number);
      const v = (span[1] as number) + (span[3] as number) * (x[1] as number);
      placeAt(world, thing, front, u, v, at);
      if (at.stretch === 0 || patchIn(world, sides, field, at.x, at.y, at.z) !== patch) continue;
      // A direction by the cosine, in a frame round the normal.
      const turn = 2 * Math.PI * (x[2] as number);
      const flat = Math.sqrt(x[3] as number);
      const up = Math.sqrt(1 - (x[3] as number));
      const a = flat * Math.cos(turn);
      const b = flat * Math.sin(turn);
      const { nx, ny, nz } = at;
      const level = Math.sqrt(nx * nx + ny * ny);
      const ux = level > 1e-12 ? -ny / level : 1;
      const uy = level > 1e-12 ? nx / level : 0;
      const dx = a * ux - b * nz * uy + up * nx;
      const dy = a * uy + b * nz * ux + up * ny;
      const dz = b * (nx * uy - ny * ux) + up * nz;
      firstHit(world, at.x, at.y, at.z, dx, dy, dz, thing, hit);
      if (hit.thing >= 0 && hit.way === 0) continue;
      from[count] = c;
      to[count] = -1;
      area[count] = at.stretch;
      whole += at.stretch;
      const ray = count++;
      if (hit.thing < 0) continue;
      const met = sides.of[2 * hit.thing + (hit.front ? 1 : 0)] as number;
      if (met < 0) continue;
      const px = at.x + hit.way * dx;
      const py = at.y + hit.way * dy;
      const pz = at.z + hit.way * dz;
      spotOf(world, hit.thing, px, py, pz, spot);
      const other = patchIn(world, sides, fieldAt(sides, met, spot.u, spot.v), px, py, pz);
      to[ray] = cellIn(sides, cells, other, spot.u, spot.v);
    }
    if (count === first) continue;
    density[c] = (count - first) / (cells.area[c] as number);
    const scale = (cells.area[c] as number) / whole;
    for (let r = first; r < count; r++) area[r] = (area[r] as number) * scale;
  }
  for (let r = 0; r < count; r++) {
    const there = to[r] as number;
    if (there < 0) continue;
    const own = density[from[r] as number] as number;
    area[r] = ((area[r] as number) * own) / (own + (density[there] as number));
  }
  return { count, from, to, area };
}

/** How many rays leave each cell. */
function raysEach(cells: Cells, seen: Float64Array, total: number): Int32Array {
  let roots = 0;
  let shares = 0;
  for (let c = 0; c < cells.count; c++) {
    roots += Math.sqrt(cells.area[c] as number);
    shares += seen[c] as number;
  }
  const number = new Int32Array(cells.count);
  for (let c = 0; c < cells.count; c++) {
    const byArea = (BY_AREA * total * Math.sqrt(cells.area[c] as number)) / roots;
    const bySight = shares > 0 ? ((1 - BY_AREA) * total * (seen[c] as number)) / shares : 0;
    number[c] = Math.max(2, Math.round(byArea + bySight));
  }
  return number;
}
