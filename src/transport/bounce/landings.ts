import { power } from "../../math/power.js";
import { type Beam, beamEnergyShare, type RoundBeam } from "../../physics/beam.js";
import { tableCosine, tableLight } from "../../physics/beam-table.js";
import { emptyDirection, turnedFrom } from "./direction.js";
import { emptyHit, firstHit, LIFT } from "./first-hit.js";
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
  let count = 0;
  const shifts = shiftsOf(set);
  const { shape, beam } = lamp;
  const { centre } = lamp.source;
  const d = emptyDirection();
  const n = emptyDirection();
  const hit = emptyHit();
  const long = shape.kind === "capsule" ? lengthOf(shape.from, shape.to) : 0;
  for (let i = 0; i < rays; i++) {
    const a = lattice(shifts, set, i, rays, 8);
    const b = lattice(shifts, set, i, rays, 9);
    const c = lattice(shifts, set, i, rays, 10);
    let [x, y, z] = centre;
    let light = 1;
    let up = Math.sqrt(c);
    if (lamp.axis !== null) {
      const { u, v } = lamp.points;
      const round = shape.kind === "disc";
      const s = round ? Math.sqrt(a) * Math.cos(2 * Math.PI * b) : 2 * a - 1;
      const t = round ? Math.sqrt(a) * Math.sin(2 * Math.PI * b) : 2 * b - 1;
      x += s * u[0] + t * v[0];
      y += s * u[1] + t * v[1];
      z += s * u[2] + t * v[2];
      [n.x, n.y, n.z] = lamp.axis;
      up = beamCosine(beam, c);
      light = beam.kind === "table" ? 1 : beamLight(beam, up);
    } else if (shape.kind === "capsule") {
      // Equal heights of a tube with round ends have equal areas (Archimedes).
      const height = a * (long + 2 * shape.radius) - shape.radius;
      const along = Math.min(long, Math.max(0, height));
      const k = long > 0 ? along / long : 0;
      const axis = axisOf(shape.from, shape.to, long);
      turnedFrom(axis[0], axis[1], axis[2], (height - along) / shape.radius, b, n);
      x = shape.from[0] + k * (shape.to[0] - shape.from[0]) + shape.radius * n.x;
      y = shape.from[1] + k * (shape.to[1] - shape.from[1]) + shape.radius * n.y;
      z = shape.from[2] + k * (shape.to[2] - shape.from[2]) + shape.radius * n.z;
    } else if (shape.kind === "sphere") {
      turnedFrom(0, 0, 1, 2 * a - 1, b, n);
      x += shape.radius * n.x;
      y += shape.radius * n.y;
      z += shape.radius * n.z;
    }
    turnedFrom(n.x, n.y, n.z, up, lattice(shifts, set, i, rays, 11), d);
    if (lamp.axis !== null && beam.kind === "table") light = lightOfTable(beam, lamp.axis, d);
    firstHit(world, x, y, z, d.x, d.y, d.z, hit);
    if (hit.thing < 0 || hit.way === 0) continue;
    const met = 2 * hit.thing + (hit.front ? 1 : 0);
    const rho = surfaces.reflectance[met] as number;
    if (!(rho > 0)) continue;
    x += hit.way * d.x;
    y += hit.way * d.y;
    z += hit.way * d.z;
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
    data[at + 7] = density(lamp, x, y, z, n.x, n.y, n.z);
    side[count++] = met;
  }
  // Paths ask for the landings in turn, so that each is asked for by nearly as many, who share its light.
  for (let k = 0; k < count; k++) {
    const asking = firstAsking(k + 1, count, rays) - firstAsking(k, count, rays);
    data[LANDING * k + 6] = (data[LANDING * k + 6] as number) / asking;
  }
  return { data, side, count };
}

/** The first of the paths, by turn, that asks for a landing. */
const firstAsking = (landing: number, count: number, paths: number): number =>
  Math.ceil((landing * paths) / count);

/** Which landing the path of a turn asks for; there must be one. */
export const landingFor = ({ count }: Landings, turn: number, paths: number): number =>
  Math.floor((turn * count) / paths);

type Point = readonly [number, number, number];

function lengthOf(a: Point, b: Point): number {
  const x = b[0] - a[0];
  const y = b[1] - a[1];
  const z = b[2] - a[2];
  return Math.sqrt(x * x + y * y + z * z);
}

function axisOf(a: Point, b: Point, long: number): Point {
  return long > 0 ? [(b[0] - a[0]) / long, (b[1] - a[1]) / long, (b[2] - a[2]) / long] : [0, 0, 1];
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
  axis: Point,
  { x, y, z }: { readonly x: number; readonly y: number; readonly z: number },
): number {
  return tableLight(
    table,
    x * across[0] + y * across[1] + z * across[2],
    x * along[0] + y * along[1] + z * along[2],
    x * axis[0] + y * axis[1] + z * axis[2],
  );
}

/** The light of such a ray as a share of the mean. */
function beamLight(beam: RoundBeam, cosine: number): number {
  if (beam.kind !== "grid") return 1;
  const most = Math.tan(beam.cutoff / 2);
  const c2 = cosine * cosine;
  return (most * most * c2 * c2) / (3 * beamEnergyShare(beam));
}
