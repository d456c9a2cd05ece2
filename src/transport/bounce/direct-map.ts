import type { Vec3 } from "../../core/vector.js";
import { discReading, lightVector } from "../../physics/illuminance.js";
import { emptyVector, type LightVector } from "../../physics/light-vector.js";
import { beamFactor } from "../beam-sum.js";
import type { ShadedSource } from "../hiding/shaded.js";
import { cellSpan, sideOfCell } from "./cells.js";
import { emptyHit, type Hit, meet } from "./first-hit.js";
import type { KeptSet } from "./kept-set.js";
import { emptyPlace, type Place, placeAt } from "./place.js";
import { emptySpan, pointsOf, SOURCE_POINTS, type SourcePoints, type Span, spanAt } from "./source-points.js";
import { type Suspects, suspectsAt, suspectsOf } from "./suspects.js";
import { POLYGON } from "./world.js";

/** Direct light on the cells of a kept set. */
export interface DirectMap {
  /** Mean illuminance of each cell, lx per lm. */
  readonly light: Float64Array;
  /** Variance of that mean, as far as its parts tell. */
  readonly variance: Float64Array;
  /** Illuminance at each spot, and its variance. */
  readonly spotLight: Float64Array;
  readonly spotVariance: Float64Array;
}

/** Most places along a side of a cell near a source. */
const MOST_PLACES = 6;

/** Scratch of one map. */
interface Work {
  readonly at: Place;
  readonly hit: Hit;
  readonly vector: LightVector;
  /** Low corner and size of a cell. */
  readonly span: Float64Array;
  readonly points: SourcePoints;
  readonly opening: Span;
  readonly suspects: Suspects;
  readonly near: Int32Array;
  /** Next point of the source to ask for. */
  next: number;
  /** How much the share seen last may differ, as a variance of one asked point over the share squared. */
  doubt: number;
}

/** Finds the direct light of a source on all cells, with what hides it. */
export function directMap(kept: KeptSet, source: ShadedSource): DirectMap {
  const { cells, sides, world } = kept;
  const { edgePlaces, sourcePoints } = kept.fineness;
  const light = new Float64Array(cells.count);
  const variance = new Float64Array(cells.count);
  const spotLight = new Float64Array(kept.spots.count);
  const spotVariance = new Float64Array(kept.spots.count);
  const map: DirectMap = { light, variance, spotLight, spotVariance };
  if (!(source.prepared.luminance > 0)) return map;
  const suspects = suspectsOf(world, source);
  const work: Work = {
    at: emptyPlace(),
    hit: emptyHit(),
    vector: emptyVector(),
    span: new Float64Array(4),
    points: pointsOf(source.prepared.shape, source.centre),
    opening: emptySpan(),
    suspects,
    near: new Int32Array(suspects.count),
    next: 0,
    doubt: 0,
  };
  const { shape } = source.prepared;
  const flatNormal: Vec3 | null = shape.kind === "disc" || shape.kind === "polygon" ? shape.normal : null;
  const [cx, cy, cz] = source.centre;
  for (let c = 0; c < cells.count; c++) {
    const k = 6 * c;
    const px = cells.place[k] as number;
    const py = cells.place[k + 1] as number;
    const pz = cells.place[k + 2] as number;
    const radius = cells.radius[c] as number;
    const gx = cx - px;
    const gy = cy - py;
    const gz = cz - pz;
    if (flatNormal !== null && gx * flatNormal[0] + gy * flatNormal[1] + gz * flatNormal[2] >= radius)
      continue;
    const far = Math.sqrt(gx * gx + gy * gy + gz * gz);
    const facing =
      gx * (cells.place[k + 3] as number) +
      gy * (cells.place[k + 4] as number) +
      gz * (cells.place[k + 5] as number);
    const side = sideOfCell(cells, c);
    const thing = sides.thing[side] as number;
    const flat = world.kind[thing] === POLYGON;
    if (facing <= -source.bound - (flat ? 0 : 0.75 * far + radius)) continue;
    const count = suspectsAt(world, suspects, source, px, py, pz, radius, thing, work.near);
    const gap = Math.max(far - source.bound, 0.3 * far, 1e-3);
    let places = Math.min(MOST_PLACES, Math.ceil((2 * radius) / gap));
    if (!flat) places = Math.max(2, places);
    if (count > 0) places = Math.max(edgePlaces, places);
    // Part of the cell is closed: its sixteenths are looked at one by one.
    if (places > 1 && cells.open[c] !== 0xffff) places = 4;
    cellLight(kept, source, c, places, count, count > 0 ? sourcePoints : 0, work, light, variance);
  }
  for (let k = 0; k < spotLight.length; k++) spotAt(kept, source, k, work, map);
  return map;
}

/** Light at one spot. */
function spotAt(kept: KeptSet, source: ShadedSource, k: number, work: Work, map: DirectMap): void {
  const { cells, sides, world, spots } = kept;
  const { at } = work;
  const cell = spots.cell[k] as number;
  const side = sideOfCell(cells, cell);
  const thing = sides.thing[side] as number;
  placeAt(
    world,
    thing,
    sides.front[side] === 1,
    spots.spot[2 * k] as number,
    spots.spot[2 * k + 1] as number,
    at,
  );
  const count = suspectsAt(world, work.suspects, source, at.x, at.y, at.z, 0, thing, work.near);
  const points = 2 * kept.fineness.sourcePoints;
  const e = seenLight(kept, source, count, points, work);
  map.spotLight[k] = e;
  // Seen through a half-shadow by a few points of the source: a share that is neither all nor nothing is uncertain.
  map.spotVariance[k] = count > 0 ? (e * e * work.doubt) / points : 0;
}

/** Mean light of one cell over `places` by `places` places in it, and how much the mean may be off. */
function cellLight(
  kept: KeptSet,
  source: ShadedSource,
  c: number,
  places: number,
  suspects: number,
  points: number,
  work: Work,
  light: Float64Array,
  variance: Float64Array,
): void {
  const { cells, sides, world } = kept;
  const { at, span } = work;
  const side = sideOfCell(cells, c);
  const thing = sides.thing[side] as number;
  const front = sides.front[side] === 1;
  const open = cells.open[c] as number;
  const { place } = cells;
  if (places === 1) {
    const k = 6 * c;
    at.x = place[k] as number;
    at.y = place[k + 1] as number;
    at.z = place[k + 2] as number;
    at.nx = place[k + 3] as number;
    at.ny = place[k + 4] as number;
    at.nz = place[k + 5] as number;
    light[c] = seenLight(kept, source, suspects, points, work);
    return;
  }
  cellSpan(sides, cells, c, span);
  const u = span[0] as number;
  const v = span[1] as number;
  const du = (span[2] as number) / places;
  const dv = (span[3] as number) / places;
  let whole = 0;
  let sum = 0;
  let squares = 0;
  let count = 0;
  for (let j = 0; j < places; j++) {
    for (let i = 0; i < places; i++) {
      const bit = 4 * Math.floor(((j + 0.5) * 4) / places) + Math.floor(((i + 0.5) * 4) / places);
      if ((open & (1 << bit)) === 0) continue;
      placeAt(world, thing, front, u + (i + 0.5) * du, v + (j + 0.5) * dv, at);
      if (at.stretch === 0) continue;
      const e = seenLight(kept, source, suspects, points, work);
      whole += at.stretch;
      sum += at.stretch * e;
      squares += e * e;
      count++;
    }
  }
  if (!(whole > 0)) return;
  const mean = sum / whole;
  light[c] = mean;
  variance[c] = Math.max(0, squares / count - mean * mean) / count;
}

/** Light of the source at the place in `work.at`, with what hides it. */
function seenLight(
  kept: KeptSet,
  source: ShadedSource,
  suspects: number,
  points: number,
  work: Work,
): number {
  const { at } = work;
  const { prepared, centre, bound } = source;
  const height = (centre[0] - at.x) * at.nx + (centre[1] - at.y) * at.ny + (centre[2] - at.z) * at.nz;
  if (height <= -bound) return 0;
  const share = suspects > 0 ? seenPart(kept, suspects, points, work) : 1;
  if (share === 0) return 0;
  let e: number;
  if (height >= bound) {
    // Nothing of it is below the horizon.
    const { vector } = work;
    lightVector(prepared.shape, at.x, at.y, at.z, vector);
    e = Math.max(0, vector.x * at.nx + vector.y * at.ny + vector.z * at.nz);
  } else e = discReading(prepared.shape, at.x, at.y, at.z, at.nx, at.ny, at.nz, work.vector);
  if (e === 0) return 0;
  const beam =
    prepared.sum === null ? 1 : beamFactor(prepared.sum, at.x, at.y, at.z, at.nx, at.ny, at.nz, false);
  return prepared.luminance * e * beam * share;
}

/** Share of some points of the source that is seen from the place in `work.at`. */
function seenPart(kept: KeptSet, suspects: number, points: number, work: Work): number {
  const { at, hit, near, opening } = work;
  const { centre, spread } = work.points;
  spanAt(work.points, at.x, at.y, at.z, opening);
  let asked = 0;
  let seen = 0;
  for (let n = 0; n < points; n++) {
    const k = 2 * (work.next & (SOURCE_POINTS - 1));
    work.next++;
    const a = spread[k] as number;
    const b = spread[k + 1] as number;
    const x = centre[0] + a * opening.ux + b * opening.vx - at.x;
    const y = centre[1] + a * opening.uy + b * opening.vy - at.y;
    const z = centre[2] + a * opening.uz + b * opening.vz - at.z;
    if (x * at.nx + y * at.ny + z * at.nz <= 0) continue;
    asked++;
    const far = Math.sqrt(x * x + y * y + z * z);
    hit.thing = -1;
    hit.way = far - 1e-6;
    for (let s = 0; s < suspects && hit.thing < 0; s++) {
      meet(kept.world, near[s] as number, at.x, at.y, at.z, x / far, y / far, z / far, hit);
    }
    if (hit.thing < 0) seen++;
  }
  work.doubt = seen > 0 ? (asked - seen) / seen : 0;
  return asked === 0 ? 1 : seen / asked;
}
