import type { Cells } from "./cells.js";
import { cellAt } from "./cells.js";
import { emptyHit, firstHit } from "./first-hit.js";
import { emptyPlace, placeAt, type Spot, spotOf } from "./place.js";
import { patchAt, type Sides } from "./sides.js";
import type { World } from "./world.js";

/** How light goes between groups of patches. */
export interface Exchange {
  readonly count: number;
  /** Exchange areas, m2: what one patch's light sends to another, the same both ways; a full square. */
  readonly between: Float64Array;
  /** Area of each patch whose light goes to black surfaces or out of the scene, m2. */
  readonly lost: Float64Array;
  readonly area: Float64Array;
}

/** Steps of the sequence of four numbers that spreads rays over places and directions (Kronecker's, root of x^5 = x + 1). */
const ROOT = 1.1673039782614187;
const STEPS = [
  1 / ROOT,
  1 / (ROOT * ROOT),
  1 / (ROOT * ROOT * ROOT),
  1 / (ROOT * ROOT * ROOT * ROOT),
] as const;

/**
 * Follows rays from every patch to what they meet first. Each ray stands for a part of the patch's area, so that all
 * light of a patch goes somewhere; the two directions of each pair are then joined, weighed by how densely each was
 * looked at, which makes the exchange the same both ways.
 *
 * @param groupOf - The group of each patch; a patch is its own group, or several are taken together.
 * @param every - 1 for all rays, 2 for every second one.
 */
export function exchangeOf(
  rays: PatchRays,
  cells: Cells,
  groupOf: Int32Array,
  groups: number,
  every: number,
): Exchange {
  const n = groups;
  const sent = new Float64Array(n * n);
  const lost = new Float64Array(n);
  const area = new Float64Array(n);
  const number = new Float64Array(n);
  for (let p = 0; p < cells.patches; p++) {
    const g = groupOf[p] as number;
    area[g] = (area[g] as number) + (cells.patchArea[p] as number);
    let whole = 0;
    for (let r = rays.start[p] as number; r < (rays.start[p + 1] as number); r += every)
      whole += rays.part[r] as number;
    if (!(whole > 0)) continue;
    const scale = (cells.patchArea[p] as number) / whole;
    for (let r = rays.start[p] as number; r < (rays.start[p + 1] as number); r += every) {
      const part = (rays.part[r] as number) * scale;
      if (part === 0) continue;
      number[g] = (number[g] as number) + 1;
      const to = rays.to[r] as number;
      if (to < 0) lost[g] = (lost[g] as number) + part;
      else {
        const at = g * n + (groupOf[to] as number);
        sent[at] = (sent[at] as number) + part;
      }
    }
  }
  join(sent, number, area, n);
  repair(sent, lost, area, n);
  return { count: n, between: sent, lost, area };
}

/** Joins both directions of each pair, weighed by rays per area. */
function join(sent: Float64Array, number: Float64Array, area: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    const di = (area[i] as number) > 0 ? (number[i] as number) / (area[i] as number) : 0;
    for (let j = 0; j < i; j++) {
      const dj = (area[j] as number) > 0 ? (number[j] as number) / (area[j] as number) : 0;
      const both =
        di + dj > 0 ? (di * (sent[i * n + j] as number) + dj * (sent[j * n + i] as number)) / (di + dj) : 0;
      sent[i * n + j] = both;
      sent[j * n + i] = both;
    }
  }
}

/**
 * Scales the exchange, the same both ways, until each patch sends out as much as its area less what is lost. What is
 * still missing or too much after a few turns stays with the patch itself, so that no light is made or lost.
 */
function repair(between: Float64Array, lost: Float64Array, area: Float64Array, n: number): void {
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

/** Rays from all patches: where each went, and what part of its patch it stands for. */
export interface PatchRays {
  readonly start: Int32Array;
  /** Cell the ray starts from. */
  readonly fromCell: Int32Array;
  /** Cell and patch that were met; -1 for black surfaces, covered parts and the open. */
  readonly toCell: Int32Array;
  readonly to: Int32Array;
  /** Weight of the ray within its patch; 0 for rays from covered parts. */
  readonly part: Float64Array;
}

/** Sends about `total` rays from the patches, more from large ones. */
export function patchRays(world: World, sides: Sides, cells: Cells, total: number): PatchRays {
  const n = cells.patches;
  const start = new Int32Array(n + 1);
  let roots = 0;
  for (let p = 0; p < n; p++) roots += Math.sqrt(cells.patchArea[p] as number);
  for (let p = 0; p < n; p++) {
    const area = cells.patchArea[p] as number;
    const rays = area > 0 ? Math.max(12, Math.round((total * Math.sqrt(area)) / roots)) : 0;
    start[p + 1] = (start[p] as number) + rays;
  }
  const count = start[n] as number;
  const to = new Int32Array(count);
  const fromCell = new Int32Array(count);
  const toCell = new Int32Array(count);
  const part = new Float64Array(count);
  const at = emptyPlace();
  const hit = emptyHit();
  const spot: Spot = { u: 0, v: 0 };
  const x = new Float64Array(4).fill(0.5);
  for (let p = 0; p < n; p++) {
    const side = cells.sideOfPatch[p] as number;
    const thing = sides.thing[side] as number;
    const front = sides.front[side] === 1;
    const du = 1 / (sides.across[side] as number);
    const dv = 1 / (sides.along[side] as number);
    for (let r = start[p] as number; r < (start[p + 1] as number); r++) {
      for (let k = 0; k < 4; k++) {
        const next = (x[k] as number) + (STEPS[k] as number);
        x[k] = next - Math.floor(next);
      }
      to[r] = -1;
      toCell[r] = -1;
      const u = (cells.u[p] as number) + du * (x[0] as number);
      const v = (cells.v[p] as number) + dv * (x[1] as number);
      const cell = cellAt(sides, cells, p, u, v);
      fromCell[r] = cell;
      if ((cells.area[cell] as number) === 0) continue;
      placeAt(world, thing, front, u, v, at);
      if (at.stretch === 0) continue;
      // A direction by the cosine: a frame round the normal without a turn of its own.
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
      part[r] = at.stretch;
      if (hit.thing < 0) continue;
      const met = sides.of[2 * hit.thing + (hit.front ? 1 : 0)] as number;
      if (met < 0) continue;
      spotOf(world, hit.thing, at.x + hit.way * dx, at.y + hit.way * dy, at.z + hit.way * dz, spot);
      const patch = patchAt(sides, met, spot.u, spot.v);
      const there = cellAt(sides, cells, patch, spot.u, spot.v);
      if ((cells.area[there] as number) === 0) continue;
      to[r] = patch;
      toCell[r] = there;
    }
  }
  return { start, fromCell, toCell, to, part };
}
