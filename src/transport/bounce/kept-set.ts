import type { Scene, Station } from "../../scene/types.js";
import { type Cells, cellAt, cellsOf, greatestShares } from "./cells.js";
import { domeGrid } from "./dome-grid.js";
import { exchangeOf, patchRays } from "./exchange.js";
import { type Gathered, gather } from "./gather.js";
import { patchAt, type Sides, sidesOf } from "./sides.js";
import { importance, type LightSystem, lightSystem } from "./system.js";
import { type Transfer, transferOf, turnBack } from "./transfer.js";
import type { Quality } from "./types.js";
import { type World, worldOf } from "./world.js";

/** Everything about bounced light that depends on set, figure, reflectances and stations, and on no light. */
export interface KeptSet {
  readonly quality: Quality;
  readonly stations: readonly Station[];
  readonly world: World;
  readonly sides: Sides;
  readonly cells: Cells;
  readonly system: LightSystem;
  /** Share of each cell in the view of each station: stations by cells. */
  readonly view: Float64Array;
  /** What direct light on each cell gives each station by all ways, and the same by coarser means. */
  readonly reach: Float64Array;
  readonly reachByView: Float64Array;
  readonly reachBySystem: Float64Array;
}

/** How finely each quality works. */
interface Fineness {
  readonly patches: number;
  readonly patchRays: number;
  readonly viewSide: number;
  readonly viewSteps: number;
  readonly cellShare: number;
  readonly cellSize: number;
  readonly cellsAcross: number;
}

const fineness: Readonly<Record<Quality, Fineness>> = {
  usual: {
    patches: 110,
    patchRays: 6000,
    viewSide: 16,
    viewSteps: 2,
    cellShare: 0.02,
    cellSize: 1,
    cellsAcross: 6,
  },
  fine: {
    patches: 440,
    patchRays: 40_000,
    viewSide: 32,
    viewSteps: 3,
    cellShare: 0.005,
    cellSize: 0.5,
    cellsAcross: 8,
  },
};

/** Works out what a scene's surfaces do for its stations, once for all lights. */
export function keepSet(scene: Scene, quality: Quality = "usual"): KeptSet {
  const rule = fineness[quality];
  const world = worldOf(scene);
  const sides = sidesOf(scene, world, rule.patches);
  const gathered = gather(world, sides, scene.stations, domeGrid(rule.viewSide, rule.viewSteps));
  const patchOfRay = raysToPatches(sides, gathered);
  const cells = cellsOf(world, sides, greatestShares(sides, gathered, patchOfRay), {
    mostShare: rule.cellShare,
    mostSize: rule.cellSize,
    most: rule.cellsAcross,
  });
  const rays = patchRays(world, sides, cells, rule.patchRays);
  const own = Int32Array.from({ length: sides.patches }, (_, i) => i);
  const system = lightSystem(
    exchangeOf(rays, cells, own, sides.patches, 1),
    reflectances(sides, own, sides.patches),
  );
  const { groupOf, groups } = quarters(sides);
  const coarse = lightSystem(
    exchangeOf(rays, cells, groupOf, groups, 2),
    reflectances(sides, groupOf, groups),
  );
  const ways: Ways = { transfer: transferOf(rays, cells, 1), system, groupOf: own };
  const coarseWays: Ways = { transfer: transferOf(rays, cells, 2), system: coarse, groupOf };
  const reach = reaches(scene.stations.length, sides, cells, gathered, patchOfRay, ways, coarseWays);
  return { quality, stations: scene.stations, world, sides, cells, system, ...reach };
}

function raysToPatches(sides: Sides, { count, side, spot }: Gathered): Int32Array {
  const patch = new Int32Array(count);
  for (let r = 0; r < count; r++) {
    patch[r] = patchAt(sides, side[r] as number, spot[2 * r] as number, spot[2 * r + 1] as number);
  }
  return patch;
}

/** The reflectance of each group of patches; all of a group belong to one side. */
function reflectances(sides: Sides, groupOf: Int32Array, groups: number): Float64Array {
  const out = new Float64Array(groups);
  for (let side = 0; side < sides.count; side++) {
    const count = (sides.across[side] as number) * (sides.along[side] as number);
    for (let k = 0; k < count; k++) {
      out[groupOf[(sides.first[side] as number) + k] as number] = sides.reflectance[side] as number;
    }
  }
  return out;
}

/** Patches two by two taken together, side by side. */
function quarters(sides: Sides): { readonly groupOf: Int32Array; readonly groups: number } {
  const groupOf = new Int32Array(sides.patches);
  let groups = 0;
  for (let side = 0; side < sides.count; side++) {
    const nu = sides.across[side] as number;
    const nv = sides.along[side] as number;
    const wide = (nu + 1) >> 1;
    for (let j = 0; j < nv; j++) {
      for (let i = 0; i < nu; i++) {
        groupOf[(sides.first[side] as number) + j * nu + i] = groups + (j >> 1) * wide + (i >> 1);
      }
    }
    groups += wide * ((nv + 1) >> 1);
  }
  return { groupOf, groups };
}

/** How light goes on: one turn from cell to cell, all further ones from patch to patch. */
interface Ways {
  readonly transfer: Transfer;
  readonly system: LightSystem;
  readonly groupOf: Int32Array;
}

/** What direct light on the cells gives the stations: seen at once, and after further bounces. */
function reaches(
  stations: number,
  sides: Sides,
  cells: Cells,
  gathered: Gathered,
  patchOfRay: Int32Array,
  ways: Ways,
  coarse: Ways,
): Pick<KeptSet, "view" | "reach" | "reachByView" | "reachBySystem"> {
  const n = cells.count;
  const view = new Float64Array(stations * n);
  const reach = new Float64Array(stations * n);
  const reachByView = new Float64Array(stations * n);
  const reachBySystem = new Float64Array(stations * n);
  const before = new Float64Array(n);
  const scratch = { share: new Float64Array(n), lit: new Float64Array(n) };
  for (let i = 0; i < stations; i++) {
    const seen = view.subarray(i * n, (i + 1) * n);
    before.fill(0);
    for (let r = gathered.start[i] as number; r < (gathered.start[i + 1] as number); r++) {
      const patch = patchOfRay[r] as number;
      const cell = cellAt(
        sides,
        cells,
        patch,
        gathered.spot[2 * r] as number,
        gathered.spot[2 * r + 1] as number,
      );
      if ((cells.area[cell] as number) === 0) continue;
      seen[cell] = (seen[cell] as number) + (gathered.share[r] as number);
      before[cell] = (before[cell] as number) + (gathered.before[r] as number);
    }
    write(sides, cells, seen, ways, scratch, reach.subarray(i * n, (i + 1) * n));
    write(sides, cells, before, ways, scratch, reachByView.subarray(i * n, (i + 1) * n));
    write(sides, cells, seen, coarse, scratch, reachBySystem.subarray(i * n, (i + 1) * n));
  }
  return { view, reach, reachByView, reachBySystem };
}

/**
 * One station: what is seen of a cell, what the cell gives other cells that are seen, and its part of what its patch
 * sends by further ways; all times the cell's reflectance.
 */
function write(
  sides: Sides,
  cells: Cells,
  seen: Float64Array,
  { transfer, system, groupOf }: Ways,
  { share, lit }: { readonly share: Float64Array; readonly lit: Float64Array },
  out: Float64Array,
): void {
  const further = new Float64Array(system.count);
  const area = new Float64Array(system.count);
  for (let c = 0; c < cells.count; c++) share[c] = (seen[c] as number) * reflectanceOf(sides, cells, c);
  turnBack(transfer, share, lit);
  for (let c = 0; c < cells.count; c++) {
    const group = groupOf[cells.patchOf[c] as number] as number;
    further[group] =
      (further[group] as number) + (lit[c] as number) + (transfer.thin[c] === 1 ? (seen[c] as number) : 0);
    area[group] = (area[group] as number) + (cells.area[c] as number);
  }
  importance(system, further);
  for (let c = 0; c < cells.count; c++) {
    const group = groupOf[cells.patchOf[c] as number] as number;
    const part = (cells.area[c] as number) > 0 ? (cells.area[c] as number) / (area[group] as number) : 0;
    out[c] =
      reflectanceOf(sides, cells, c) *
      ((seen[c] as number) + (lit[c] as number) + (further[group] as number) * part);
  }
}

function reflectanceOf(sides: Sides, cells: Cells, cell: number): number {
  return sides.reflectance[cells.sideOfPatch[cells.patchOf[cell] as number] as number] as number;
}
