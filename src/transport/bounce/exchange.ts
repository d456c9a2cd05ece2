import type { CellRays } from "./cell-rays.js";
import type { Cells } from "./cells.js";

/** How light goes between groups of patches. */
export interface Exchange {
  readonly count: number;
  /** Exchange areas, m2: what one group's light sends to another, the same both ways; a full square. */
  readonly between: Float64Array;
  /** Area of each group whose light goes to black surfaces or out of the scene, m2. */
  readonly lost: Float64Array;
  readonly area: Float64Array;
}

/**
 * Joins the rays of cells to the exchange between groups of patches. All of a group's light goes somewhere: to other
 * groups, or lost; what the rays leave open stays with the group.
 *
 * @param groupOf - The group of each patch; a patch is its own group, or several are taken together.
 * @param every - 1 for all rays, 2 for every second one.
 */
export function exchangeOf(
  rays: CellRays,
  cells: Cells,
  groupOf: Int32Array,
  groups: number,
  every: number,
): Exchange {
  const n = groups;
  const between = new Float64Array(n * n);
  const lost = new Float64Array(n);
  const area = new Float64Array(n);
  for (let p = 0; p < cells.grid.patches; p++) {
    const g = groupOf[p] as number;
    area[g] = (area[g] as number) + (cells.patchArea[p] as number);
  }
  for (let r = 0; r < rays.count; r += every) {
    const part = (rays.area[r] as number) * every;
    const g = groupOf[cells.patchOf[rays.from[r] as number] as number] as number;
    const there = rays.to[r] as number;
    if (there < 0) {
      lost[g] = (lost[g] as number) + part;
      continue;
    }
    const h = groupOf[cells.patchOf[there] as number] as number;
    between[g * n + h] = (between[g * n + h] as number) + part;
    if (g !== h) between[h * n + g] = (between[h * n + g] as number) + part;
  }
  repair(between, lost, area, n);
  return { count: n, between, lost, area };
}

/**
 * Scales the exchange, the same both ways, until each group sends out as much as its area less what is lost. What is
 * still missing or too much after a few turns stays with the group itself, so that no light is made or lost.
 */
function repair(between: Float64Array, lost: Float64Array, area: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) lost[i] = Math.min(lost[i] as number, area[i] as number);
  const factor = new Float64Array(n);
  for (let turn = 0; turn < 4; turn++) {
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let j = 0; j < n; j++) if (j !== i) sum += between[i * n + j] as number;
      const wanted = (area[i] as number) - (lost[i] as number);
      factor[i] = sum > 0 ? Math.sqrt(Math.min(4, Math.max(0.25, wanted / sum))) : 1;
    }
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        if (i !== j)
          between[i * n + j] = (between[i * n + j] as number) * (factor[i] as number) * (factor[j] as number);
      }
    }
  }
  for (let i = 0; i < n; i++) {
    let sum = 0;
    for (let j = 0; j < n; j++) if (j !== i) sum += between[i * n + j] as number;
    between[i * n + i] = (area[i] as number) - (lost[i] as number) - sum;
  }
}
