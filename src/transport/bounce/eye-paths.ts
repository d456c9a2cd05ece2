import type { Meter } from "../meter.js";
import { type Direction, emptyDirection, setTo, turnedFrom } from "./direction.js";
import { emptyHit, firstHit, isIndoors, LIFT } from "./first-hit.js";
import { type Footing, footingOf } from "./footing.js";
import { lattice, mixed, shiftsOf } from "./lattice.js";
import { normalAt } from "./normal.js";
import type { Surfaces } from "./surfaces.js";
import type { World } from "./world.js";

/** Numbers of one corner in `EyePaths.data`: place, normal, weight, chance, going on, point of a lamp. */
export const CORNER = 11;

/**
 * Paths that start at a meter and go from surface to surface, none of which knows a light. Path i has the corners
 * from `ends[i - 1]` (0 for the first) to `ends[i]`.
 */
export interface EyePaths {
  readonly ends: Int32Array;
  /**
   * Of each corner: place, a hair before its surface (0), normal (3), what light that falls on it gives the meter, lx per lx
   * (6), how densely paths from the corner before fall on it, 1/m2 (7), the chance to go on from it (8), and two numbers
   * from 0 to 1 that choose the point of a lamp (9).
   */
  readonly data: Float64Array;
  /** Side of each corner: 2 i for the back of thing i, 2 i + 1 for its front. */
  readonly side: Int32Array;
  /** 1 for each corner that lies in the room, or where there is none. */
  readonly indoors: Uint8Array;
  /** What the corners beyond the longest path would add to the weights of all corners, as a share of them. */
  readonly lost: number;
  /** What `discPoints` has worked out; null before. */
  discs: Float64Array | null;
}

/** The points of a disc of radius 1 that the corners' two numbers choose evenly, two parts each. */
export function discPoints(paths: EyePaths): Float64Array {
  if (paths.discs !== null) return paths.discs;
  const { data, side } = paths;
  const points = new Float64Array(2 * side.length);
  for (let c = 0; c < side.length; c++) {
    const far = Math.sqrt(data[CORNER * c + 9] as number);
    const turn = 2 * Math.PI * (data[CORNER * c + 10] as number);
    points[2 * c] = far * Math.cos(turn);
    points[2 * c + 1] = far * Math.sin(turn);
  }
  paths.discs = points;
  return points;
}

/** Corners that always go on. */
const SURE = 2;
/** From then on those go on whose weight is over 1 in so many, the others only as likely as it is less. */
const KEPT = 3;
/** Corners whose direction and point of a lamp the lattice gives; those of later ones are plain random numbers. */
const EVEN = 2;
/** Longest path. */
const LONGEST = 200;

/** A meter made ready for paths. */
export interface Eye {
  readonly footing: Footing;
  /** Unit vector the receptor looks along. */
  readonly facing: Float64Array;
  /** True for a dome, false for a disc. */
  readonly dome: boolean;
  /** Sets are counted from here, so that two places are not off in the same way. */
  readonly first: number;
}

/** Makes a meter ready. */
export function eyeOf(world: World, meter: Meter): Eye {
  const { at, facing, receptor } = meter;
  const first = mixed(Math.round(at[0] * 1e6), Math.round(at[1] * 1e6), Math.round(at[2] * 1e6));
  return {
    footing: footingOf(world, at, facing),
    facing: Float64Array.from(facing),
    dome: receptor === "dome",
    first: Math.floor(1e9 * first),
  };
}

/** Room for the corners of one set of paths, which grows where they are many; written over by every set. */
export interface Corners {
  data: Float64Array;
  side: Int32Array;
}

/** Room for some corners. */
export function emptyCorners(count: number): Corners {
  return { data: new Float64Array(CORNER * count), side: new Int32Array(count) };
}

/** Follows one set of paths from a meter. */
export function eyePaths(
  world: World,
  surfaces: Surfaces,
  { footing, facing, dome, first }: Eye,
  number: number,
  paths: number,
  corners: Corners,
): EyePaths {
  const set = first + number;
  const shifts = shiftsOf(set);
  const ends = new Int32Array(paths);
  let { data, side } = corners;
  let count = 0;
  const d = emptyDirection();
  const n: Direction = emptyDirection();
  const hit = emptyHit();
  const { reflectance } = surfaces;
  const { at: start, normals, selves } = footing;
  let weights = 0;
  let lost = 0;
  for (let i = 0; i < paths; i++) {
    let x = start[0] as number;
    let y = start[1] as number;
    let z = start[2] as number;
    setTo(n, facing, 0);
    let weight = dome ? 2 : 1;
    let on = 1;
    let given = 0;
    for (let depth = 0; depth < LONGEST; depth++) {
      const a = lattice(shifts, set, i, paths, depth < EVEN ? 2 * depth : 100 + 8 * depth);
      const b = lattice(shifts, set, i, paths, depth < EVEN ? 2 * depth + 1 : 101 + 8 * depth);
      const wide = dome && depth === 0;
      // The cosine's own spread, or that of the dome's response (1 + cos) / 2.
      const up = wide ? 2 * Math.sqrt(a) - 1 : Math.sqrt(a);
      turnedFrom(n.x, n.y, n.z, up, b, d);
      const spread = wide ? (1 + up) / (4 * Math.PI) : up / Math.PI;
      let chance = Number.POSITIVE_INFINITY;
      let met: number;
      const own = depth === 0 ? ownBody(normals, d) : -1;
      if (own >= 0) {
        met = 2 * (selves[own] as number) + 1;
        setTo(n, normals, 3 * own);
      } else {
        firstHit(world, x, y, z, d.x, d.y, d.z, hit);
        if (hit.thing < 0 || hit.way === 0) break;
        met = 2 * hit.thing + (hit.front ? 1 : 0);
        x += hit.way * d.x;
        y += hit.way * d.y;
        z += hit.way * d.z;
        normalAt(world, hit.thing, hit.front, x, y, z, n);
        const cosine = -(n.x * d.x + n.y * d.y + n.z * d.z);
        if (!(cosine > 0)) break;
        chance = (on * spread * cosine) / (hit.way * hit.way);
        x += LIFT * n.x;
        y += LIFT * n.y;
        z += LIFT * n.z;
      }
      const rho = reflectance[met] as number;
      if (rho === 0) break;
      weight *= rho / on;
      weights += weight;
      given += rho;
      // As much again for each further corner as the ones so far gave back, without end.
      if (depth === LONGEST - 1) lost += (weight * given) / (LONGEST - given);
      on = depth + 1 < SURE ? 1 : Math.min(1, KEPT * weight);
      if (count === side.length) {
        widen(corners);
        ({ data, side } = corners);
      }
      const at = CORNER * count;
      data[at] = x;
      data[at + 1] = y;
      data[at + 2] = z;
      data[at + 3] = n.x;
      data[at + 4] = n.y;
      data[at + 5] = n.z;
      data[at + 6] = weight;
      data[at + 7] = chance;
      data[at + 8] = on;
      data[at + 9] = lattice(shifts, set, i, paths, depth < EVEN ? 4 + 2 * depth : 104 + 8 * depth);
      data[at + 10] = lattice(shifts, set, i, paths, depth < EVEN ? 5 + 2 * depth : 105 + 8 * depth);
      side[count++] = met;
      if (on < 1 && !(lattice(shifts, set, i, paths, 102 + 8 * depth) < on)) break;
    }
    ends[i] = count;
  }
  const own = data.slice(0, CORNER * count);
  const indoors = new Uint8Array(count);
  for (let c = 0; c < count; c++) {
    const at = CORNER * c;
    const within = isIndoors(world, own[at] as number, own[at + 1] as number, own[at + 2] as number);
    indoors[c] = within ? 1 : 0;
  }
  return {
    ends,
    data: own,
    side: side.slice(0, count),
    indoors,
    lost: weights > 0 ? lost / weights : 0,
    discs: null,
  };
}

/** The body the station lies on into which a direction goes: its place in the footing's list, or -1. */
function ownBody(normals: Float64Array, d: Direction): number {
  for (let own = 0; 3 * own < normals.length; own++) {
    const k = 3 * own;
    const out =
      (normals[k] as number) * d.x + (normals[k + 1] as number) * d.y + (normals[k + 2] as number) * d.z;
    if (out <= 0) return own;
  }
  return -1;
}

function widen(corners: Corners): void {
  const { data, side } = corners;
  const wider = emptyCorners(2 * side.length);
  wider.data.set(data);
  wider.side.set(side);
  corners.data = wider.data;
  corners.side = wider.side;
}
