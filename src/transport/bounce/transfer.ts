import type { CellRays } from "./cell-rays.js";

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
export function transferOf(rays: CellRays, cells: number, every: number): Transfer {
  const most = Math.ceil(rays.count / every);
  const a = new Int32Array(most);
  const b = new Int32Array(most);
  const toA = new Float64Array(most);
  const toB = new Float64Array(most);
  const arriving = new Float64Array(cells);
  const number = new Int32Array(cells);
  let count = 0;
  for (let r = 0; r < rays.count; r += every) {
    const from = rays.from[r] as number;
    const there = rays.to[r] as number;
    const part = rays.area[r] as number;
    arriving[from] = (arriving[from] as number) + part;
    number[from] = (number[from] as number) + 1;
    if (there < 0) continue;
    arriving[there] = (arriving[there] as number) + part;
    number[there] = (number[there] as number) + 1;
    a[count] = from;
    b[count] = there;
    toA[count] = part;
    count++;
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
  const { a, b, toA, toB } = transfer;
  for (let r = 0; r < transfer.count; r++) {
    const i = a[r] as number;
    const j = b[r] as number;
    out[j] = (out[j] as number) + (toA[r] as number) * (share[i] as number);
    out[i] = (out[i] as number) + (toB[r] as number) * (share[j] as number);
  }
}
