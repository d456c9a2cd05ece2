import type { Scene, Station } from "../../scene/types.js";
import { cellRays } from "./cell-rays.js";
import { type Cells, cellIn, openCells, sideOfCell } from "./cells.js";
import { domeGrid } from "./dome-grid.js";
import { type Fineness, fineness } from "./fineness.js";
import { type Gathered, gather, greatestShares } from "./gather.js";
import { cutPatches } from "./patch-grid.js";
import { type Sides, sidesOf } from "./sides.js";
import { addSeenSpots, emptySpots, isHeavy, lookOn, type Spots, spotWork } from "./spots.js";
import type { Quality } from "./types.js";
import { type BackWork, coarseWaysOf, reachBack, type Ways, waysOf } from "./ways.js";
import { type World, worldOf } from "./world.js";

/** Everything about bounced light that depends on set, figure, reflectances and stations, and on no light. */
export interface KeptSet {
  readonly fineness: Fineness;
  readonly stations: readonly Station[];
  readonly world: World;
  readonly sides: Sides;
  readonly cells: Cells;
  /** Reflectance of each cell. */
  readonly rho: Float64Array;
  readonly ways: Ways;
  /** The same exchange by coarser means, for the error. */
  readonly coarse: Ways;
  /** Share of each cell in the view of each station: stations by cells. */
  readonly view: Float64Array;
  /** What direct light on a cell gives a station at once, lx per lx; 0 for cells that spots stand for. */
  readonly direct: Float64Array;
  /** Spots of cells that fill much of a view. */
  readonly spots: Spots;
  /** What direct light on a cell gives a station by further bounces, lx per lx. */
  readonly reach: Float64Array;
  /** How the first would change with a coarser view, and the second with a coarser exchange. */
  readonly viewChange: Float64Array;
  readonly reachChange: Float64Array;
}

/** What is known before any light is followed. */
type Base = Pick<KeptSet, "fineness" | "stations" | "world" | "sides" | "cells" | "rho">;

/** What the stations see. */
interface Views extends Pick<KeptSet, "view" | "direct" | "viewChange"> {
  readonly gathered: Gathered;
  readonly cellOfRay: Int32Array;
}

/** Works out what a scene's surfaces do for its stations, once for all lights. */
export function keepSet(scene: Scene, quality: Quality = "usual"): KeptSet {
  return keepSetAt(scene, fineness[quality]);
}

/** The same with every fineness given. */
export function keepSetAt(scene: Scene, rule: Fineness): KeptSet {
  const world = worldOf(scene);
  const sides = sidesOf(scene, world, rule.patches);
  const gathered = gather(world, sides, scene.stations, domeGrid(rule.viewSide, rule.viewSteps));
  const grid = cutPatches(world, sides, greatestShares(sides.patches, gathered), rule);
  const cells = openCells(world, sides, grid);
  const rho = reflectances(sides, cells);
  const base = { fineness: rule, stations: scene.stations, world, sides, cells, rho };
  const views = viewsOf(base, gathered);
  const rays = cellRays(world, sides, cells, greatestOf(views.view, cells.count), rule.rays);
  const ways = waysOf(sides, cells, rays, rule.turns);
  const coarse = coarseWaysOf(sides, cells, rays, rule.turns);
  const { view, direct, viewChange } = views;
  return { ...base, ways, coarse, view, direct, viewChange, ...reaches(base, views, ways, coarse) };
}

/**
 * The same set for other stations, for a fraction of the cost: the cells stay as they were cut for the first ones, so
 * the new stations should be near those.
 */
export function keptAt(kept: KeptSet, stations: readonly Station[]): KeptSet {
  const { fineness: rule, world, sides, ways, coarse } = kept;
  const base = { ...kept, stations };
  const views = viewsOf(base, gather(world, sides, stations, domeGrid(rule.viewSide, rule.viewSteps)));
  const { view, direct, viewChange } = views;
  return { ...base, view, direct, viewChange, ...reaches(base, views, ways, coarse) };
}

function reflectances(sides: Sides, cells: Cells): Float64Array {
  const rho = new Float64Array(cells.count);
  for (let c = 0; c < rho.length; c++) rho[c] = sides.reflectance[sideOfCell(cells, c)] as number;
  return rho;
}

/** What the stations see of the cells. */
function viewsOf({ stations, sides, cells, rho, fineness: rule }: Base, gathered: Gathered): Views {
  const n = cells.count;
  const view = new Float64Array(stations.length * n);
  const direct = new Float64Array(stations.length * n);
  const viewChange = new Float64Array(stations.length * n);
  const cellOfRay = cellsOfRays(sides, cells, gathered);
  for (let i = 0; i < stations.length; i++) {
    const seen = view.subarray(i * n, (i + 1) * n);
    const change = viewChange.subarray(i * n, (i + 1) * n);
    for (let r = gathered.start[i] as number; r < (gathered.start[i + 1] as number); r++) {
      const cell = cellOfRay[r] as number;
      if (cell < 0) continue;
      const share = gathered.share[r] as number;
      seen[cell] = (seen[cell] as number) + share;
      change[cell] = (change[cell] as number) + (gathered.before[r] as number) - share;
    }
    for (let c = 0; c < n; c++) {
      change[c] = (change[c] as number) * (rho[c] as number);
      const s = seen[c] as number;
      direct[i * n + c] = isHeavy(s, rule.cellShare) ? 0 : s * (rho[c] as number);
    }
  }
  return { view, direct, viewChange, gathered, cellOfRay };
}

/** The greatest share that each cell has in the view of any station. */
function greatestOf(view: Float64Array, cells: number): Float64Array {
  const most = new Float64Array(cells);
  for (let k = 0, c = 0; k < view.length; k++, c = c + 1 === cells ? 0 : c + 1) {
    if ((view[k] as number) > (most[c] as number)) most[c] = view[k] as number;
  }
  return most;
}

/** What direct light on the cells gives the stations by further bounces, and the spots they need. */
function reaches(
  { stations, world, sides, cells, rho, fineness: rule }: Base,
  { view, gathered, cellOfRay }: Views,
  ways: Ways,
  coarse: Ways,
): Pick<KeptSet, "reach" | "reachChange" | "spots"> {
  const n = cells.count;
  const reach = new Float64Array(stations.length * n);
  const reachChange = new Float64Array(stations.length * n);
  const back: BackWork = { share: new Float64Array(n), lit: new Float64Array(n) };
  const look = spotWork(n);
  const light = new Float64Array(n);
  const spots = emptySpots(stations.length);
  for (let i = 0; i < stations.length; i++) {
    const seen = view.subarray(i * n, (i + 1) * n);
    const whole = reach.subarray(i * n, (i + 1) * n);
    const other = reachChange.subarray(i * n, (i + 1) * n);
    const first = spots.count;
    spots.start[i] = first;
    addSeenSpots(spots, i, gathered, cellOfRay, seen, rho, rule.cellShare, look.passed);
    lookOn(world, sides, cells, spots, first, rho, rule.spotRays, rule.cellShare, look);
    for (let c = 0; c < n; c++)
      light[c] = isHeavy(seen[c] as number, rule.cellShare) ? 0 : (seen[c] as number);
    reachBack(cells, light, look.lit, look.spotted, rho, ways, back, whole);
    reachBack(cells, light, look.litHalf, look.spotted, rho, coarse, back, other);
    for (let c = 0; c < n; c++) other[c] = (other[c] as number) - (whole[c] as number);
  }
  spots.start[stations.length] = spots.count;
  return { reach, reachChange, spots };
}

/** The cell that each ray of the stations met; -1 for covered ones. */
function cellsOfRays(sides: Sides, cells: Cells, { count, patch, spot }: Gathered): Int32Array {
  const cell = new Int32Array(count);
  for (let r = 0; r < count; r++) {
    cell[r] = cellIn(sides, cells, patch[r] as number, spot[2 * r] as number, spot[2 * r + 1] as number);
  }
  return cell;
}
