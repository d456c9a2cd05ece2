import { frameAround } from "../../math/vector.js";
import type { Station } from "../../scene/types.js";
import type { DomeGrid } from "./dome-grid.js";
import { emptyHit, firstHit } from "./first-hit.js";
import { type Footing, footingOf } from "./footing.js";
import { type Spot, spotOf } from "./place.js";
import { fieldAt, patchIn, type Sides } from "./sides.js";
import type { World } from "./world.js";

/** What the rays of all stations met: patch, u, v and the ray's share, station by station. */
export interface Gathered {
  /** Rays that met a side that gives light back. */
  count: number;
  patch: Int32Array;
  spot: Float64Array;
  /** Share of each ray in its station's view with the last step of the search, and one step before it. */
  share: Float64Array;
  before: Float64Array;
  /** First ray of each station, and one after the last. */
  readonly start: Int32Array;
  /** Rays traced in all. */
  rays: number;
}

/**
 * Looks out from every station and writes down what is seen where. Cells of the view whose neighbours see another
 * surface are looked at again in quarters.
 */
export function gather(world: World, sides: Sides, stations: readonly Station[], grid: DomeGrid): Gathered {
  const room = 4096;
  const all: Gathered = {
    count: 0,
    patch: new Int32Array(room),
    spot: new Float64Array(2 * room),
    share: new Float64Array(room),
    before: new Float64Array(room),
    start: new Int32Array(stations.length + 1),
    rays: 0,
  };
  const view = emptyView(grid);
  stations.forEach((station, i) => {
    all.start[i] = all.count;
    look(world, sides, station, footingOf(world, station.at, station.facing), grid, view, all);
  });
  all.start[stations.length] = all.count;
  return all;
}

/** Scratch for one station, for each step of the search. */
interface View {
  /** The side each cell sees, -1 for nothing or black. */
  readonly seen: readonly Int32Array[];
  /** The ray of each cell in the list, or -1. */
  readonly own: readonly Int32Array[];
  /** 1 for cells that were looked at in this step; the rest belong to a larger cell. */
  readonly looked: readonly Uint8Array[];
}

function emptyView(grid: DomeGrid): View {
  const cells = grid.steps.map((_, step) => (grid.side << step) * (grid.side << step));
  return {
    seen: cells.map((n) => new Int32Array(n)),
    own: cells.map((n) => new Int32Array(n)),
    looked: cells.map((n) => new Uint8Array(n)),
  };
}

function grow(all: Gathered): void {
  const room = 2 * all.patch.length;
  const widen = <T extends Int32Array | Float64Array>(old: T, fresh: T): T => {
    fresh.set(old as never);
    return fresh;
  };
  all.patch = widen(all.patch, new Int32Array(room));
  all.spot = widen(all.spot, new Float64Array(2 * room));
  all.share = widen(all.share, new Float64Array(room));
  all.before = widen(all.before, new Float64Array(room));
}

function look(
  world: World,
  sides: Sides,
  station: Station,
  footing: Footing,
  grid: DomeGrid,
  view: View,
  all: Gathered,
): void {
  const n = station.facing;
  const [u, v] = frameAround(n);
  const dome = station.receptor === "dome";
  const last = grid.steps.length - 1;
  const hit = emptyHit();
  const spot: Spot = { u: 0, v: 0 };
  const [ox, oy, oz] = footing.at;
  // Domes count twice what a flat receptor does under light from everywhere.
  const whole = dome ? 2 : 1;
  for (let step = 0; step <= last; step++) {
    const side = grid.side << step;
    const directions = grid.steps[step] as Float64Array;
    const seen = view.seen[step] as Int32Array;
    const own = view.own[step] as Int32Array;
    const looked = view.looked[step] as Uint8Array;
    const share = whole / (side * side);
    for (let j = 0; j < side; j++) {
      for (let i = 0; i < side; i++) {
        const cell = j * side + i;
        if (step > 0 && !mixed(view, step - 1, i >> 1, j >> 1, side >> 1)) {
          seen[cell] = (view.seen[step - 1] as Int32Array)[(j >> 1) * (side >> 1) + (i >> 1)] as number;
          own[cell] = -1;
          looked[cell] = 0;
          continue;
        }
        const a = directions[3 * cell] as number;
        const b = directions[3 * cell + 1] as number;
        let c = directions[3 * cell + 2] as number;
        let k = 1;
        if (dome) {
          // The same disc, with heights from -1 to 1.
          const flat = a * a + b * b;
          c = 2 * c - 1;
          k = flat > 0 ? Math.sqrt(Math.max(0, 1 - c * c) / flat) : 0;
        }
        const dx = k * (a * u[0] + b * v[0]) + c * n[0];
        const dy = k * (a * u[1] + b * v[1]) + c * n[1];
        const dz = k * (a * u[2] + b * v[2]) + c * n[2];
        own[cell] = -1;
        seen[cell] = -1;
        looked[cell] = 1;
        if (!leaves(footing, dx, dy, dz)) continue;
        all.rays++;
        firstHit(world, ox, oy, oz, dx, dy, dz, footing.self, hit);
        if (hit.thing < 0) continue;
        const met = sides.of[2 * hit.thing + (hit.front ? 1 : 0)] as number;
        seen[cell] = met;
        if (met < 0 || hit.way === 0) continue;
        if (all.count === all.patch.length) grow(all);
        const x = ox + hit.way * dx;
        const y = oy + hit.way * dy;
        const z = oz + hit.way * dz;
        spotOf(world, hit.thing, x, y, z, spot);
        const at = all.count++;
        own[cell] = at;
        all.patch[at] = patchIn(world, sides, fieldAt(sides, met, spot.u, spot.v), x, y, z);
        all.spot[2 * at] = spot.u;
        all.spot[2 * at + 1] = spot.v;
        all.share[at] = share;
        all.before[at] = step < last || last === 0 ? share : 0;
      }
    }
    if (step > 0) retire(view, step - 1, side >> 1, step === last, all);
  }
}

/** Cells that were looked at again in quarters no longer count, except in the view one step before the last. */
function retire(view: View, step: number, side: number, last: boolean, all: Gathered): void {
  const own = view.own[step] as Int32Array;
  for (let j = 0; j < side; j++) {
    for (let i = 0; i < side; i++) {
      const at = own[j * side + i] as number;
      if (at < 0 || !mixed(view, step, i, j, side)) continue;
      all.share[at] = 0;
      if (!last) all.before[at] = 0;
    }
  }
}

/** True when a cell that was looked at and one of its neighbours see different surfaces. */
function mixed(view: View, step: number, i: number, j: number, side: number): boolean {
  const seen = view.seen[step] as Int32Array;
  const cell = j * side + i;
  if ((view.looked[step] as Uint8Array)[cell] !== 1) return false;
  const here = seen[cell] as number;
  return (
    (i > 0 && seen[cell - 1] !== here) ||
    (i + 1 < side && seen[cell + 1] !== here) ||
    (j > 0 && seen[cell - side] !== here) ||
    (j + 1 < side && seen[cell + side] !== here)
  );
}

/** True for directions that lead away from every body the station lies on. */
function leaves(footing: Footing, dx: number, dy: number, dz: number): boolean {
  for (const n of footing.normals) if (n[0] * dx + n[1] * dy + n[2] * dz <= 0) return false;
  return true;
}

/** The greatest share that each patch has in the view of any station. */
export function greatestShares(patches: number, { start, patch, share }: Gathered): Float64Array {
  const most = new Float64Array(patches);
  const own = new Float64Array(patches);
  for (let i = 0; i + 1 < start.length; i++) {
    own.fill(0);
    for (let r = start[i] as number; r < (start[i + 1] as number); r++) {
      const p = patch[r] as number;
      own[p] = (own[p] as number) + (share[r] as number);
    }
    for (let p = 0; p < patches; p++) most[p] = Math.max(most[p] as number, own[p] as number);
  }
  return most;
}
