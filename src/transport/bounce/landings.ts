import { power } from "../../math/power.js";
import { type Beam, beamEnergyShare, type RoundBeam } from "../../physics/beam.js";
import { tableCosine, tableLight } from "../../physics/beam-table.js";
import { type Direction, emptyDirection, setTo, turnedFrom } from "./direction.js";
import { emptyHit, firstHit, isIndoors, LIFT } from "./first-hit.js";
import { density, type Lamp } from "./lamp.js";
import { lattice, shiftsOf } from "./lattice.js";
import { normalAt } from "./normal.js";
import type { Surfaces } from "./surfaces.js";
import type { World } from "./world.js";

/** Numbers of one landing in `Landings.data`: place, normal, light, density. */
export const LANDING = 8;

/**
 * Where the light of a lamp first falls: as many rays as a set has paths, each with the same share of it. Only those
 * that meet something that gives light back are kept.
 */
export interface Landings {
  /**
   * Of each landing: place, a hair before its surface (0), normal (3), light that goes on from there for one of the
   * paths that ask for it, as a share of a ray's (6), and how densely the lamp's light falls there, 1/m2 (7).
   */
  readonly data: Float64Array;
  /** Side that is met: 2 i for the back of thing i, 2 i + 1 for its front. */
  readonly side: Int32Array;
  /** 1 for each that lies in the room, or where there is none. */
  readonly indoors: Uint8Array;
  /** How many there are. */
  readonly count: number;
}

/** Sends one set of rays from a lamp. */
export function landingsOf(
  world: World,
  surfaces: Surfaces,
  lamp: Lamp,
  set: number,
  rays: number,
): Landings {
  const data = new Float64Array(LANDING * rays);
  const side = new Int32Array(rays);
  const indoors = new Uint8Array(rays);
  let count = 0;
  const shifts = shiftsOf(set);
  const { axis, beam } = lamp;
  const p = emptyDirection();
  const d = emptyDirection();
  const n = emptyDirection();
  const hit = emptyHit();
  for (let i = 0; i < rays; i++) {
    const a = lattice(shifts, set, i, rays, 8);
    const b = lattice(shifts, set, i, rays, 9);
    const c = lattice(shifts, set, i, rays, 10);
    leave(lamp, a, b, p, n);
    let light = 1;
    let up = Math.sqrt(c);
    if (axis !== null) {
      up = beamCosine(beam, c);
      light = beam.kind === "table" ? 1 : beamLight(beam, up);
    }
    turnedFrom(n.x, n.y, n.z, up, lattice(shifts, set, i, rays, 11), d);
    if (axis !== null && beam.kind === "table") light = lightOfTable(beam, axis, d);
    firstHit(world, p.x, p.y, p.z, d.x, d.y, d.z, hit);
    if (hit.thing < 0 || hit.way === 0) continue;
    const met = 2 * hit.thing + (hit.front ? 1 : 0);
    const rho = surfaces.reflectance[met] as number;
    if (!(rho > 0)) continue;
    let x = p.x + hit.way * d.x;
    let y = p.y + hit.way * d.y;
    let z = p.z + hit.way * d.z;
    normalAt(world, hit.thing, hit.front, x, y, z, n);
    x += LIFT * n.x;
    y += LIFT * n.y;
    z += LIFT * n.z;
    const at = LANDING * count;
    data[at] = x;
    data[at + 1] = y;
    data[at + 2] = z;
    data[at + 3] = n.x;
    data[at + 4] = n.y;
    data[at + 5] = n.z;
    data[at + 6] = rho * light;
    data[at + 7] = density(lamp, data, at);
    indoors[count] = isIndoors(world, x, y, z) ? 1 : 0;
    side[count++] = met;
  }
  // Paths ask for the landings in turn, so that each is asked for by nearly as many, who share its light.
  for (let k = 0; k < count; k++) {
    const asking = firstAsking(k + 1, count, rays) - firstAsking(k, count, rays);
    data[LANDING * k + 6] = (data[LANDING * k + 6] as number) / asking;
  }
  return { data, side, indoors, count };
}

/** The first of the paths, by turn, that asks for a landing. */
const firstAsking = (landing: number, count: number, paths: number): number =>
  Math.ceil((landing * paths) / count);

/** Which landing the path of a turn asks for; there must be one. */
export const landingFor = ({ count }: Landings, turn: number, paths: number): number =>
  Math.floor((turn * count) / paths);

/** Writes a place on what shines of a lamp, which two numbers from 0 to 1 choose evenly, and the way out of it there. */
function leave(
  { axis, centre, points, tube, round }: Lamp,
  a: number,
  b: number,
  place: Direction,
  out: Direction,
): void {
  if (axis !== null) {
    const s = round ? Math.sqrt(a) * Math.cos(2 * Math.PI * b) : 2 * a - 1;
    const t = round ? Math.sqrt(a) * Math.sin(2 * Math.PI * b) : 2 * b - 1;
    const { u, v } = points;
    place.x = (centre[0] as number) + (s * (u[0] as number) + t * (v[0] as number));
    place.y = (centre[1] as number) + (s * (u[1] as number) + t * (v[1] as number));
    place.z = (centre[2] as number) + (s * (u[2] as number) + t * (v[2] as number));
    setTo(out, axis, 0);
    return;
  }
  const { radius } = points;
  if (tube === null) {
    turnedFrom(0, 0, 1, 2 * a - 1, b, out);
    setTo(place, centre, 0);
  } else {
    // Equal heights of a tube with round ends have equal areas (Archimedes).
    const { from, span, axis: way, long } = tube;
    const height = a * (long + 2 * radius) - radius;
    const along = Math.min(long, Math.max(0, height));
    turnedFrom(way[0] as number, way[1] as number, way[2] as number, (height - along) / radius, b, out);
    const k = long > 0 ? along / long : 0;
    place.x = (from[0] as number) + k * (span[0] as number);
    place.y = (from[1] as number) + k * (span[1] as number);
    place.z = (from[2] as number) + k * (span[2] as number);
  }
  place.x += radius * out.x;
  place.y += radius * out.y;
  place.z += radius * out.z;
}

/** The cosine of a ray's angle from the axis for a number from 0 to 1. */
function beamCosine(beam: Beam, c: number): number {
  switch (beam.kind) {
    case "table":
      return tableCosine(beam.table, c);
    case "lambert":
      return Math.sqrt(c);
    case "cosine-power":
      return power(c, 1 / (beam.n + 1));
    case "grid": {
      // Tangents up to the cut-off's, as densely as t (1 - t): the smooth step turned round.
      const t = 0.5 - Math.sin(Math.asin(1 - 2 * c) / 3);
      const tangent = t * Math.tan(beam.cutoff / 2);
      return 1 / Math.sqrt(1 + tangent * tangent);
    }
    default:
      return beam satisfies never;
  }
}

/** The light of a ray from a lamp with a measured beam as a share of the mean. */
function lightOfTable(
  { table, across, along }: Extract<Beam, { kind: "table" }>,
  axis: Float64Array,
  { x, y, z }: Direction,
): number {
  return tableLight(
    table,
    x * across[0] + y * across[1] + z * across[2],
    x * along[0] + y * along[1] + z * along[2],
    x * (axis[0] as number) + y * (axis[1] as number) + z * (axis[2] as number),
  );
}

/** The light of such a ray as a share of the mean. */
function beamLight(beam: RoundBeam, cosine: number): number {
  if (beam.kind !== "grid") return 1;
  const most = Math.tan(beam.cutoff / 2);
  const c2 = cosine * cosine;
  return (most * most * c2 * c2) / (3 * beamEnergyShare(beam));
}
