import type { CellRays } from "./cell-rays.js";
import type { Cells } from "./cells.js";
import { exchangeOf } from "./exchange.js";
import type { Sides } from "./sides.js";
import { importance, type LightSystem, lightSystem } from "./system.js";
import { type Transfer, transferOf, turnBack } from "./transfer.js";

/** How light goes on: the first turns from cell to cell along rays, all further ones from patch to patch. */
export interface Ways {
  readonly turns: number;
  readonly transfer: Transfer;
  readonly system: LightSystem;
  /** The member of the system that each patch belongs to. */
  readonly groupOf: Int32Array;
  /** Share of each cell in the area of its group. */
  readonly part: Float64Array;
}

/** The ways of light between patches as they are. */
export function waysOf(sides: Sides, cells: Cells, rays: CellRays, turns: number): Ways {
  const groupOf = Int32Array.from({ length: cells.grid.patches }, (_, i) => i);
  return joined(sides, cells, rays, turns, groupOf, cells.grid.patches, 1);
}

/** The same from half of the rays and between patches taken together two by two; it tells how much that matters. */
export function coarseWaysOf(sides: Sides, cells: Cells, rays: CellRays, turns: number): Ways {
  const { groupOf, groups } = quarters(sides);
  return joined(sides, cells, rays, turns, groupOf, groups, 2);
}

function joined(
  sides: Sides,
  cells: Cells,
  rays: CellRays,
  turns: number,
  groupOf: Int32Array,
  groups: number,
  every: number,
): Ways {
  const reflectance = new Float64Array(groups);
  const area = new Float64Array(groups);
  for (let p = 0; p < cells.grid.patches; p++) {
    const g = groupOf[p] as number;
    reflectance[g] = sides.reflectance[cells.grid.sideOfPatch[p] as number] as number;
    area[g] = (area[g] as number) + (cells.patchArea[p] as number);
  }
  const part = new Float64Array(cells.count);
  for (let c = 0; c < cells.count; c++) {
    const whole = area[groupOf[cells.patchOf[c] as number] as number] as number;
    part[c] = whole > 0 ? (cells.area[c] as number) / whole : 0;
  }
  return {
    turns,
    transfer: transferOf(rays, cells.count, every),
    system: lightSystem(exchangeOf(rays, cells, groupOf, groups, every), reflectance),
    groupOf,
    part,
  };
}

/** Patches of fields two by two taken together, side by side; parts of a field stay apart. */
function quarters(sides: Sides): { readonly groupOf: Int32Array; readonly groups: number } {
  const groupOf = new Int32Array(sides.patches);
  let groups = 0;
  for (let side = 0; side < sides.count; side++) {
    const nu = sides.across[side] as number;
    const nv = sides.along[side] as number;
    const wide = (nu + 1) >> 1;
    let parted = groups + wide * ((nv + 1) >> 1);
    for (let j = 0; j < nv; j++) {
      for (let i = 0; i < nu; i++) {
        const field = (sides.first[side] as number) + j * nu + i;
        const start = sides.patchStart[field] as number;
        const end = sides.patchStart[field + 1] as number;
        for (let p = start; p < end; p++) {
          groupOf[p] = end - start > 1 ? parted++ : groups + (j >> 1) * wide + (i >> 1);
        }
      }
    }
    groups = parted;
  }
  return { groupOf, groups };
}

/** Scratch for `reachBack`. */
export interface BackWork {
  readonly share: Float64Array;
  readonly lit: Float64Array;
}

/**
 * What direct light on each cell gives a view by way of at least one more cell: the shares of the cells in the view
 * are taken back turn by turn. Times the reflectance of the cell, lx per lx.
 *
 * @param seen - Shares of the cells in the view, without those that spots stand for.
 * @param extra - Shares of cells that light those spots.
 * @param spotted - The part of them for which further spots stand.
 * @param rho - Reflectance of each cell.
 */
export function reachBack(
  cells: Cells,
  seen: Float64Array,
  extra: Float64Array,
  spotted: Float64Array,
  rho: Float64Array,
  ways: Ways,
  { share, lit }: BackWork,
  out: Float64Array,
): void {
  const { transfer, system, groupOf, part } = ways;
  const further = new Float64Array(system.count);
  for (let c = 0; c < cells.count; c++) out[c] = -(spotted[c] as number);
  share.set(seen);
  for (let turn = 0; turn < ways.turns; turn++) {
    for (let c = 0; c < cells.count; c++) {
      const s = share[c] as number;
      if (s === 0) continue;
      if (transfer.thin[c] === 1) {
        const group = groupOf[cells.patchOf[c] as number] as number;
        further[group] = (further[group] as number) + s;
        share[c] = 0;
      } else share[c] = s * (rho[c] as number);
    }
    turnBack(transfer, share, lit);
    for (let c = 0; c < cells.count; c++) {
      const all = (lit[c] as number) + (turn === 0 ? (extra[c] as number) : 0);
      share[c] = all;
      out[c] = (out[c] as number) + all;
    }
  }
  for (let c = 0; c < cells.count; c++) {
    const group = groupOf[cells.patchOf[c] as number] as number;
    further[group] = (further[group] as number) + (share[c] as number);
  }
  importance(system, further);
  for (let c = 0; c < cells.count; c++) {
    const group = groupOf[cells.patchOf[c] as number] as number;
    out[c] = (rho[c] as number) * ((out[c] as number) + (further[group] as number) * (part[c] as number));
  }
}
