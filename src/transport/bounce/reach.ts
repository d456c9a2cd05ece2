import type { ShadedSource } from "../hiding/shaded.js";
import { CORNER, discPoints, type Eye, type EyePaths } from "./eye-paths.js";
import { clearWay, emptyHit, type Hit } from "./first-hit.js";
import type { KeptView } from "./kept-set.js";
import { askLamp, density, type Lamp } from "./lamp.js";
import { LANDING, type Landings, landingFor } from "./landings.js";
import type { Patience } from "./types.js";
import type { World } from "./world.js";

/** Bounced light of one source at one station, lx s per lm s. */
export interface Reach {
  readonly bounced: number;
  /** How far it may be off: nearly always less. */
  readonly error: number;
  /** How many sets of paths it is the mean of. */
  readonly sets: number;
  /** How many of them any place is worth: no more than a search in short would follow. */
  readonly usual: number;
}

/** What is not known of a reading is wide beyond this share of it: 0.05 stop. */
const WIDE = 0.035;

/**
 * Bounced light of a source at a station: sets of paths are followed until their means agree well enough. The stated
 * error is some standard errors of the mean of the sets, widened for the small number of sets.
 *
 * @param direct - What the source gives the meter straight, lx s per lm s.
 */
export function reachOf(kept: KeptView, source: ShadedSource, direct: number, patience: Patience): Reach {
  const lamp = kept.lamp(source);
  if (!(lamp.luminance > 0)) return { bounced: 0, error: 0, sets: 0, usual: 0 };
  const { leastSets, mostCorners, hardCorners, target, errors, paths } = kept.fineness;
  let sum = 0;
  let squares = 0;
  let sets = 0;
  let usual = 0;
  let corners = 0;
  let lost = 0;
  for (;;) {
    const own = kept.paths(sets);
    const mean = setMean(kept, lamp, sets, own, null);
    corners += paths + own.side.length;
    lost += own.lost;
    sets++;
    sum += mean;
    squares += mean * mean;
    if (sets < leastSets) continue;
    const bounced = sum / sets;
    const spread = Math.sqrt(Math.max(0, squares / sets - bounced * bounced) / (sets - 1));
    const light = direct + bounced;
    const unsure = errors * Math.sqrt((sets - 1) / (sets - 3)) * spread;
    // It falls with the root of the corners: more of them are worth it where it would come out narrow.
    const wide = unsure / (WIDE * light);
    const worth = patience === "long" && wide > 1 && wide * wide * corners < hardCorners;
    const next = corners + corners / sets;
    if (usual === 0 && next > mostCorners) usual = sets;
    const full = next > (worth ? hardCorners : mostCorners);
    // What was cut off gives about what the corners before it gave, hardly twice as much.
    if (full || spread <= target * light)
      return { bounced, error: unsure + (2 * bounced * lost) / sets, sets, usual: usual || sets };
  }
}

/** Bounced light of a source at a station by so many sets of paths, lx s per lm s. */
export function bouncedBy(kept: KeptView, source: ShadedSource, sets: number): number {
  const lamp = kept.lamp(source);
  let sum = 0;
  for (let set = 0; set < sets; set++) sum += setMean(kept, lamp, set, kept.paths(set), null);
  return sum / Math.max(1, sets);
}

/**
 * For each owner of surfaces, the derivative of the bounced light by the logarithm of its reflectances, lx s per lm s:
 * light that came by way of n of its surfaces goes with the n-th power of them.
 *
 * @param sets - How many sets of paths the bounced light is the mean of.
 */
export function slopesOf(kept: KeptView, source: ShadedSource, sets: number): Float64Array {
  const slopes = new Float64Array(kept.surfaces.owners.length);
  const lamp = kept.lamp(source);
  for (let set = 0; set < sets; set++) setMean(kept, lamp, set, kept.paths(set), slopes);
  return slopes.map((slope) => slope / Math.max(1, sets));
}

/** The mean of one set of paths; `slopes`, where given, gets for each owner what changes where its reflectances do. */
function setMean(
  kept: KeptView,
  lamp: Lamp,
  number: number,
  corners: EyePaths,
  slopes: Float64Array | null,
): number {
  const { world, surfaces, black } = kept;
  const eye = kept.eye();
  const { ends, data, side } = corners;
  const discs = lamp.round ? discPoints(corners) : null;
  const landings = kept.landings(lamp, number);
  const paths = ends.length;
  const { owner } = surfaces;
  const hit = emptyHit();
  let sum = 0;
  let first = 0;
  let last = -1;
  let seen = 0;
  for (let i = 0; i < paths; i++) {
    if (landings.count > 0) {
      const ray = landingFor(landings, i, paths);
      // Neighbours share a landing where many rays of the lamp meet nothing.
      if (ray !== last) seen = seenFromMeter(world, eye, owner, black, landings, ray, hit);
      last = ray;
      sum += seen;
      if (slopes !== null && seen > 0)
        count(slopes, owner[landings.side[ray] as number] as number, seen / paths);
    }
    const end = ends[i] as number;
    for (let c = first; c < end; c++) {
      if (owner[side[c] as number] === black) break;
      const at = CORNER * c;
      const depth = c - first;
      const light = askLamp(world, lamp, corners, c, discs);
      let own = 0;
      if (light > 0) {
        const chance = data[at + 7] as number;
        own =
          chance < Number.POSITIVE_INFINITY ? light * (chance / (chance + density(lamp, data, at))) : light;
      }
      const weight = data[at + 6] as number;
      if (landings.count > 0) {
        // Another landing for each corner of a path.
        const ray = landingFor(landings, (i + 37 * (depth + 1)) % paths, paths);
        const met = landed(world, owner, black, landings, ray, corners, c, hit);
        own += met;
        if (slopes !== null && met > 0)
          count(slopes, owner[landings.side[ray] as number] as number, (weight * met) / paths);
      }
      sum += weight * own;
      if (slopes === null || !(own > 0)) continue;
      for (let k = first; k <= c; k++)
        count(slopes, owner[side[k] as number] as number, (weight * own) / paths);
    }
    first = end;
  }
  return sum / paths;
}

function count(slopes: Float64Array, owner: number, amount: number): void {
  slopes[owner] = (slopes[owner] as number) + amount;
}

/** Light of one ray's landing at a corner, weighed against the chance that the path goes there by itself. */
function landed(
  world: World,
  owner: Int32Array,
  black: number,
  { data, side, indoors }: Landings,
  ray: number,
  corners: EyePaths,
  corner: number,
  hit: Hit,
): number {
  const at = LANDING * ray;
  const light = data[at + 6] as number;
  const dense = data[at + 7] as number;
  const met = side[ray] as number;
  if (!(light > 0 && dense > 0) || owner[met] === black) return 0;
  const own = corners.data;
  const from = CORNER * corner;
  const x = own[from] as number;
  const y = own[from + 1] as number;
  const z = own[from + 2] as number;
  const dx = (data[at] as number) - x;
  const dy = (data[at + 1] as number) - y;
  const dz = (data[at + 2] as number) - z;
  const here =
    dx * (own[from + 3] as number) + dy * (own[from + 4] as number) + dz * (own[from + 5] as number);
  const there = -(
    dx * (data[at + 3] as number) +
    dy * (data[at + 4] as number) +
    dz * (data[at + 5] as number)
  );
  if (!(here > 0 && there > 0)) return 0;
  const d2 = dx * dx + dy * dy + dz * dz;
  const form = (here * there) / (Math.PI * d2 * d2);
  const share = dense / (dense + (own[from + 8] as number) * form);
  const within = corners.indoors[corner] === 1 && indoors[ray] === 1;
  return connected(world, x, y, z, dx, dy, dz, d2, within, hit) ? light * form * share : 0;
}

/** The same at the station itself, by the response of its receptor. */
function seenFromMeter(
  world: World,
  { footing, facing, dome }: Eye,
  owner: Int32Array,
  black: number,
  { data, side, indoors }: Landings,
  ray: number,
  hit: Hit,
): number {
  const at = LANDING * ray;
  const light = data[at + 6] as number;
  const dense = data[at + 7] as number;
  const met = side[ray] as number;
  if (!(light > 0 && dense > 0) || owner[met] === black) return 0;
  const { at: start, normals } = footing;
  const x = start[0] as number;
  const y = start[1] as number;
  const z = start[2] as number;
  const dx = (data[at] as number) - x;
  const dy = (data[at + 1] as number) - y;
  const dz = (data[at + 2] as number) - z;
  for (let k = 0; k < normals.length; k += 3) {
    const out =
      (normals[k] as number) * dx + (normals[k + 1] as number) * dy + (normals[k + 2] as number) * dz;
    if (out <= 0) return 0;
  }
  const d2 = dx * dx + dy * dy + dz * dz;
  const d = Math.sqrt(d2);
  const cosine = (dx * (facing[0] as number) + dy * (facing[1] as number) + dz * (facing[2] as number)) / d;
  const response = dome ? (1 + cosine) / 2 : cosine;
  const there =
    -(dx * (data[at + 3] as number) + dy * (data[at + 4] as number) + dz * (data[at + 5] as number)) / d;
  if (!(response > 0 && there > 0)) return 0;
  const form = (response * there) / (Math.PI * d2);
  const share = dense / (dense + (dome ? form / 2 : form));
  const within = footing.indoors && indoors[ray] === 1;
  return connected(world, x, y, z, dx, dy, dz, d2, within, hit) ? light * form * share : 0;
}

/** How near to its end a way is free, m. */
const SKIN = 1e-9;

/** True when nothing stands between two places on things. */
function connected(
  world: World,
  x: number,
  y: number,
  z: number,
  dx: number,
  dy: number,
  dz: number,
  d2: number,
  indoors: boolean,
  hit: Hit,
): boolean {
  const d = Math.sqrt(d2);
  return clearWay(world, x, y, z, dx / d, dy / d, dz / d, d - SKIN, indoors, hit);
}
