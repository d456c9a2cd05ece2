import type { Scene } from "../../scene/types.js";
import { cutsOf, footInside } from "./cuts.js";
import { emptyHit, firstHit } from "./first-hit.js";
import { emptyPlace, placeAt } from "./place.js";
import { CAPSULE, POLYGON, STRIDE, type World } from "./world.js";

/**
 * The sides of a scene's things that give light back, each cut into a grid of fields by its u and v, and those parted
 * into patches where a sheet stands on them. Black sides only hide and take.
 */
export interface Sides {
  readonly count: number;
  /** Index of the thing in the world, and 1 for a polygon's front or a body. */
  readonly thing: Int32Array;
  readonly front: Uint8Array;
  readonly reflectance: Float64Array;
  /** Index into `names`. */
  readonly surface: Int32Array;
  /** Surfaces as a recipe names them. */
  readonly names: readonly string[];
  /** Fields along u and along v, and the first field of the side. */
  readonly across: Int32Array;
  readonly along: Int32Array;
  readonly first: Int32Array;
  readonly fields: number;
  /** A field has one patch, or one on either side of each sheet that stands on it: its first patch, and the sheets. */
  readonly patchStart: Int32Array;
  readonly cuts: Int32Array;
  readonly patches: number;
  /** The side of a thing's back (2 i) and front (2 i + 1), or -1 for a black one. */
  readonly of: Int32Array;
}

/** A side gives back no more than this: with nothing lost the light in a closed room would never end. */
const MOST = 0.999;
/** Sides that give back less than this count as black. */
const LEAST = 1e-6;

/** A foot that crosses less of a field than this, by the field's sides, does not part it. */
const SHORT_FOOT = 0.15;

/** Name of the surface that a polygon or body is a part of: strips and pieces lose their number. */
function surfaceName(name: string): string {
  return name.replace(/\.\d+$/, "");
}

/** Finds the sides of a scene and cuts them so that there are about `wanted` patches at most. */
export function sidesOf(scene: Scene, world: World, wanted: number): Sides {
  const thing: number[] = [];
  const front: number[] = [];
  const reflectance: number[] = [];
  const surface: number[] = [];
  const names: string[] = [];
  const places = new Map<string, number>();
  const of = new Int32Array(2 * world.count).fill(-1);
  const add = (i: number, isFront: boolean, share: number, name: string): void => {
    if (world.present[i] !== 1 || !(share >= LEAST)) return;
    of[2 * i + (isFront ? 1 : 0)] = thing.length;
    thing.push(i);
    front.push(isFront ? 1 : 0);
    reflectance.push(Math.min(share, MOST));
    const called = surfaceName(name);
    const place = places.get(called) ?? names.push(called) - 1;
    places.set(called, place);
    surface.push(place);
  };
  scene.polygons.forEach((polygon, i) => {
    add(i, true, polygon.frontReflectance, polygon.name);
    add(i, false, polygon.backReflectance, polygon.name);
  });
  scene.bodies.forEach((body, b) => {
    add(world.polygons + b, true, body.reflectance, body.name);
  });
  const across = new Int32Array(thing.length);
  const along = new Int32Array(thing.length);
  const room = thing.map((i, side) => clearance(world, i, front[side] === 1));
  let size = 0.25;
  let fields = 0;
  do {
    size *= 1.15;
    fields = 0;
    for (let s = 0; s < thing.length; s++) {
      gridOf(world, thing[s] as number, size, room[s] as number, across, along, s);
      fields += (across[s] as number) * (along[s] as number);
    }
  } while (fields > wanted && size < 1000);
  const first = new Int32Array(thing.length);
  const patchStart = new Int32Array(fields + 1);
  const cuts = new Int32Array(2 * fields).fill(-1);
  let field = 0;
  for (let s = 0; s < thing.length; s++) {
    first[s] = field;
    const i = thing[s] as number;
    const nu = across[s] as number;
    const nv = along[s] as number;
    const found = world.kind[i] === POLYGON ? cutsOf(scene, world, i, front[s] === 1) : [];
    for (let k = 0; k < nu * nv; k++) {
      let parts = 1;
      for (const cut of found) {
        const inside = footInside(cut, (k % nu) / nu, Math.floor(k / nu) / nv, 1 / nu, 1 / nv);
        if (inside < SHORT_FOOT || parts === 4) continue;
        cuts[2 * field + (parts >> 1)] = cut.thing;
        parts *= 2;
      }
      patchStart[field + 1] = (patchStart[field] as number) + parts;
      field++;
    }
  }
  return {
    count: thing.length,
    thing: Int32Array.from(thing),
    front: Uint8Array.from(front),
    reflectance: Float64Array.from(reflectance),
    surface: Int32Array.from(surface),
    names,
    across,
    along,
    first,
    fields,
    patchStart,
    cuts,
    patches: patchStart[fields] as number,
    of,
  };
}

/** How far off the next thing before a side is, m: the lower quarter of some ways along its normal. */
function clearance(world: World, thing: number, front: boolean): number {
  if (world.kind[thing] !== POLYGON || world.inShell[thing] === 1) return Number.POSITIVE_INFINITY;
  const at = emptyPlace();
  const hit = emptyHit();
  const ways: number[] = [];
  for (let k = 0; k < 16; k++) {
    placeAt(world, thing, front, ((k % 4) + 0.5) / 4, ((k >> 2) + 0.5) / 4, at);
    firstHit(world, at.x, at.y, at.z, at.nx, at.ny, at.nz, thing, hit);
    ways.push(hit.thing < 0 ? Number.POSITIVE_INFINITY : hit.way);
  }
  ways.sort((a, b) => a - b);
  const near = ways[4] as number;
  return near < 0.02 ? Number.POSITIVE_INFINITY : near;
}

/** How a side is cut for patches of about a size; the room's own surfaces get larger ones, bodies a few round them. */
function gridOf(
  world: World,
  thing: number,
  size: number,
  room: number,
  across: Int32Array,
  along: Int32Array,
  side: number,
): void {
  const at = thing * STRIDE;
  const d = world.data;
  const kind = world.kind[thing] as number;
  if (kind === POLYGON) {
    const edge = Math.min(world.inShell[thing] === 1 ? size : 0.7 * size, Math.max(0.3 * size, 1.2 * room));
    across[side] = Math.max(1, Math.round((d[at + 13] as number) / edge));
    along[side] = Math.max(1, Math.round((d[at + 14] as number) / edge));
    return;
  }
  const long =
    kind === CAPSULE ? (d[at + 6] as number) + 2 * (d[at + 7] as number) : 2 * vectorLength(d, at + 18);
  const wide =
    kind === CAPSULE ? 2 * (d[at + 7] as number) : vectorLength(d, at + 12) + vectorLength(d, at + 15);
  across[side] = Math.max(4, 2 * Math.round((Math.PI * wide) / size));
  along[side] = Math.max(1, Math.round((2 * long) / size));
}

function vectorLength(d: Float64Array, at: number): number {
  const x = d[at] as number;
  const y = d[at + 1] as number;
  const z = d[at + 2] as number;
  return Math.sqrt(x * x + y * y + z * z);
}

/** The field of a side at u and v, both from 0 to below 1. */
export function fieldAt(sides: Sides, side: number, u: number, v: number): number {
  const n = sides.across[side] as number;
  const i = Math.floor(u * n);
  const j = Math.floor(v * (sides.along[side] as number));
  return (sides.first[side] as number) + j * n + i;
}

/** The patch of a field in which a point lies. */
export function patchIn(world: World, sides: Sides, field: number, x: number, y: number, z: number): number {
  let patch = sides.patchStart[field] as number;
  for (let k = 0; k < 2; k++) {
    const cut = sides.cuts[2 * field + k] as number;
    if (cut < 0) break;
    const at = cut * STRIDE;
    const d = world.data;
    const side =
      (d[at] as number) * x + (d[at + 1] as number) * y + (d[at + 2] as number) * z - (d[at + 3] as number);
    if (side > 0) patch += 1 << k;
  }
  return patch;
}
