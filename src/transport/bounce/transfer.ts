import type { Cells } from "./cells.js";
import type { PatchRays } from "./exchange.js";

/**
 * One turn of light between cells, both ways along every ray: the share of the light that arrives at one cell which
 * comes from the other.
 */
export interface Transfer {
  readonly count: number;
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** Part of what arrives at a that comes from b, and the other way round. */
  readonly toA: Float64Array;
  readonly toB: Float64Array;
  /** 1 for cells that too few rays touch to say anything; their patch speaks for them. */
  readonly thin: Uint8Array;
}

/** Rays a cell must have to stand for itself. */
const ENOUGH = 3;

/** Joins rays to a transfer between cells; `every` takes all of them (1) or every second one (2). */
export function transferOf(rays: PatchRays, cells: Cells, every: number): Transfer {
  const n = cells.patches;
  const density = new Float64Array(n);
  const scale = new Float64Array(n);
  let most = 0;
  for (let p = 0; p < n; p++) {
    let whole = 0;
    let number = 0;
    for (let r = rays.start[p] as number; r < (rays.start[p + 1] as number); r += every) {
      const part = rays.part[r] as number;
      if (part === 0) continue;
      whole += part;
      number++;
    }
    most += number;
    if (!(whole > 0)) continue;
    density[p] = number / (cells.patchArea[p] as number);
    scale[p] = (cells.patchArea[p] as number) / whole;
  }
  const a = new Int32Array(most);
  const b = new Int32Array(most);
  const toA = new Float64Array(most);
  const toB = new Float64Array(most);
  const arriving = new Float64Array(cells.count);
  const number = new Int32Array(cells.count);
  let count = 0;
  for (let p = 0; p < n; p++) {
    for (let r = rays.start[p] as number; r < (rays.start[p + 1] as number); r += every) {
      let part = (rays.part[r] as number) * (scale[p] as number);
      if (part === 0) continue;
      const from = rays.fromCell[r] as number;
      const to = rays.toCell[r] as number;
      number[from] = (number[from] as number) + 1;
      if (to >= 0) {
        const other = density[rays.to[r] as number] as number;
        part *= (density[p] as number) / ((density[p] as number) + other);
        a[count] = from;
        b[count] = to;
        toA[count] = part;
        count++;
        number[to] = (number[to] as number) + 1;
        arriving[to] = (arriving[to] as number) + part;
      }
      arriving[from] = (arriving[from] as number) + part;
    }
  }
  for (let r = 0; r < count; r++) {
    const part = toA[r] as number;
    toA[r] = part / (arriving[a[r] as number] as number);
    toB[r] = part / (arriving[b[r] as number] as number);
  }
  const thin = Uint8Array.from(number, (rayCount) => (rayCount < ENOUGH ? 1 : 0));
  return { count, a, b, toA, toB, thin };
}

/**
 * Takes a view one turn back: from the cells it sees to the cells that light them. `share` holds the cells' shares of
 * the view times their reflectance; `out` gets the shares of what lights them. Thin cells are left out of `out`.
 */
export function turnBack(transfer: Transfer, share: Float64Array, out: Float64Array): void {
  out.fill(0);
  const { a, b, toA, toB, thin } = transfer;
  for (let r = 0; r < transfer.count; r++) {
    const i = a[r] as number;
    const j = b[r] as number;
    if (thin[i] === 0) out[j] = (out[j] as number) + (toA[r] as number) * (share[i] as number);
    if (thin[j] === 0) out[i] = (out[i] as number) + (toB[r] as number) * (share[j] as number);
  }
}
