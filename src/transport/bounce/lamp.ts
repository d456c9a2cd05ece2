import type { Vec3 } from "../../core/vector.js";
import { length, subtract } from "../../math/vector.js";
import { type Beam, beamToward } from "../../physics/beam.js";
import { emptyVector, type LightVector } from "../../physics/light-vector.js";
import { emittingArea } from "../../physics/source-shape.js";
import { type PreparedSource, preparedReading } from "../direct.js";
import type { ShadedSource } from "../hiding/shaded.js";
import { type Direction, emptyDirection, turnedFrom } from "./direction.js";
import { CORNER, type EyePaths } from "./eye-paths.js";
import { clearWay, emptyHit, type Hit, insideRoom, isFree } from "./first-hit.js";
import { emptySpan, pointsOf, type SourcePoints, type Span, spanAt } from "./source-points.js";
import type { World } from "./world.js";

/** A source made ready to be asked point by point. */
export interface Lamp {
  readonly prepared: PreparedSource;
  /** True for a flat disc, and for a sphere. */
  readonly round: boolean;
  readonly ball: boolean;
  /** Null for a lamp that is no tube. */
  readonly tube: Tube | null;
  readonly beam: Beam;
  /** True for a lamp of the same luminance in every direction. */
  readonly even: boolean;
  readonly points: SourcePoints;
  readonly centre: Float64Array;
  /** Radius of a sphere round the source, m. */
  readonly bound: number;
  /** Unit vector out of the front of a flat source; null for a body. */
  readonly axis: Float64Array | null;
  readonly area: number;
  /** Luminance on the axis per lumen-second, 1/(m2 sr). */
  readonly luminance: number;
  /** Within this distance the opening is summed whole and a point of it only tells what hides it, m. */
  readonly near: number;
  /** True for a source that lies wholly in the room. */
  readonly indoors: boolean;
  readonly work: {
    readonly hit: Hit;
    readonly span: Span;
    readonly vector: LightVector;
    readonly way: Direction;
  };
}

/** The line between the middles of the round ends of a tube. */
export interface Tube {
  readonly from: Float64Array;
  /** From there to the other end, and the unit vector along it; up for a tube without a length. */
  readonly span: Float64Array;
  readonly axis: Float64Array;
  readonly long: number;
}

function tubeOf(from: Vec3, to: Vec3): Tube {
  const span = subtract(to, from);
  const long = length(span);
  const axis: Vec3 = long > 0 ? [span[0] / long, span[1] / long, span[2] / long] : [0, 0, 1];
  return {
    from: Float64Array.from(from),
    span: Float64Array.from(span),
    axis: Float64Array.from(axis),
    long,
  };
}

/** How many times its half width a source is near. */
const NEAR = 3;
/** What stands this close before a source does not hide it, m. */
const SKIN = 1e-9;

/** Makes a source ready. */
export function lampOf(world: World, source: ShadedSource): Lamp {
  const { prepared, centre, bound } = source;
  const { shape, beam, luminance } = prepared;
  const points = pointsOf(shape, centre);
  const flat = shape.kind === "disc" || shape.kind === "polygon";
  const { room } = world;
  const [x, y, z] = centre;
  return {
    prepared,
    round: shape.kind === "disc",
    ball: shape.kind === "sphere",
    tube: shape.kind === "capsule" ? tubeOf(shape.from, shape.to) : null,
    beam,
    even: beam.kind === "lambert",
    points,
    centre: points.centre,
    bound,
    axis: flat ? Float64Array.from(shape.normal) : null,
    area: emittingArea(shape),
    luminance,
    near: shape.kind === "capsule" ? Number.POSITIVE_INFINITY : NEAR * bound,
    indoors:
      room === null ||
      (insideRoom(room, x - bound, y - bound, z - bound) &&
        insideRoom(room, x + bound, y + bound, z + bound)),
    work: { hit: emptyHit(), span: emptySpan(), vector: emptyVector(), way: emptyDirection() },
  };
}

/** Product of a vector that is kept as a list with another one. */
const along = (list: Float64Array, x: number, y: number, z: number): number =>
  x * (list[0] as number) + y * (list[1] as number) + z * (list[2] as number);

/** Part of the golden section by which a point that cannot be seen is moved on. */
const NEXT = 0.6180339887498949;

/**
 * Luminous exposure of a corner of paths per lumen-second of a lamp, 1/m2, by one point of the lamp, which the corner's
 * two numbers choose: right on average over all points.
 *
 * @param discs - For a round lamp the points of a disc that the corners choose.
 */
export function askLamp(
  world: World,
  lamp: Lamp,
  { data, indoors }: EyePaths,
  corner: number,
  discs: Float64Array | null,
): number {
  const at = CORNER * corner;
  const x = data[at] as number;
  const y = data[at + 1] as number;
  const z = data[at + 2] as number;
  const nx = data[at + 3] as number;
  const ny = data[at + 4] as number;
  const nz = data[at + 5] as number;
  const a = data[at + 9] as number;
  const b = data[at + 10] as number;
  const within = lamp.indoors && indoors[corner] === 1;
  if (lamp.ball) return askBall(world, lamp, x, y, z, nx, ny, nz, a, b, within);
  const { centre, bound, axis } = lamp;
  const cx = (centre[0] as number) - x;
  const cy = (centre[1] as number) - y;
  const cz = (centre[2] as number) - z;
  const d2 = cx * cx + cy * cy + cz * cz;
  if (cx * nx + cy * ny + cz * nz <= -bound) return 0;
  // Behind the opening's plane.
  if (axis !== null && along(axis, cx, cy, cz) >= 0) return 0;
  const { span, vector, hit } = lamp.work;
  spanAt(lamp.points, data, at, span);
  const close = d2 < lamp.near * lamp.near;
  const whole = close ? preparedReading(lamp.prepared, x, y, z, nx, ny, nz, "disc", vector) : 1;
  if (whole === 0) return 0;
  let s = a;
  let t = b;
  let i = discs === null ? 2 * a - 1 : (discs[2 * corner] as number);
  let j = discs === null ? 2 * b - 1 : (discs[2 * corner + 1] as number);
  for (let turn = 0; turn < (close ? 4 : 1); turn++) {
    if (turn > 0) {
      s += NEXT;
      s -= Math.floor(s);
      t += NEXT * NEXT;
      t -= Math.floor(t);
      const r = Math.sqrt(s);
      i = discs === null ? 2 * s - 1 : r * Math.cos(2 * Math.PI * t);
      j = discs === null ? 2 * t - 1 : r * Math.sin(2 * Math.PI * t);
    }
    const px = cx + i * span.ux + j * span.vx;
    const py = cy + i * span.uy + j * span.vy;
    const pz = cz + i * span.uz + j * span.vz;
    const far2 = px * px + py * py + pz * pz;
    const far = Math.sqrt(far2);
    const facing = (px * nx + py * ny + pz * nz) / far;
    if (!(facing > 0)) continue;
    let e = whole;
    if (axis !== null) {
      const away = -along(axis, px, py, pz) / far;
      if (!(away > 0)) continue;
      if (!close) {
        const share = lamp.even ? 1 : beamToward(lamp.beam, away, -px / far, -py / far, -pz / far);
        e = (lamp.luminance * share * facing * away * lamp.area) / far2;
      }
    }
    if (!(e > 0)) return 0;
    const { ray } = hit;
    ray[0] = x;
    ray[1] = y;
    ray[2] = z;
    ray[3] = px / far;
    ray[4] = py / far;
    ray[5] = pz / far;
    hit.way = far - SKIN;
    return isFree(world, within, hit) ? e : 0;
  }
  return 0;
}

/** The same for a ball, by the directions in which it is seen. */
function askBall(
  world: World,
  lamp: Lamp,
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
  a: number,
  b: number,
  within: boolean,
): number {
  const { centre, bound } = lamp;
  const cx = (centre[0] as number) - x;
  const cy = (centre[1] as number) - y;
  const cz = (centre[2] as number) - z;
  const d2 = cx * cx + cy * cy + cz * cz;
  const sine2 = (bound * bound) / d2;
  if (!(sine2 < 1)) return 0;
  const d = Math.sqrt(d2);
  const rest = sine2 / (1 + Math.sqrt(1 - sine2));
  const up = 1 - a * rest;
  const { way, hit } = lamp.work;
  turnedFrom(cx / d, cy / d, cz / d, up, b, way);
  const facing = way.x * nx + way.y * ny + way.z * nz;
  if (!(facing > 0)) return 0;
  const far = d * up - Math.sqrt(Math.max(0, bound * bound - d2 * (1 - up * up)));
  const e = lamp.luminance * 2 * Math.PI * rest * facing;
  return clearWay(world, x, y, z, way.x, way.y, way.z, far - SKIN, within, hit) ? e : 0;
}

/**
 * About what a lamp would give a place that nothing hides from it, per lumen-second, 1/m2: how densely the lamp's own
 * light falls there. It only weighs two ways of finding the same light against each other.
 *
 * @param at - Where the place stands in the list, its normal behind it.
 */
export function density(lamp: Lamp, places: Float64Array, at: number): number {
  const { centre, bound, axis } = lamp;
  const cx = (centre[0] as number) - (places[at] as number);
  const cy = (centre[1] as number) - (places[at + 1] as number);
  const cz = (centre[2] as number) - (places[at + 2] as number);
  const d2 = cx * cx + cy * cy + cz * cz;
  const d = Math.sqrt(d2);
  const facing =
    (cx * (places[at + 3] as number) + cy * (places[at + 4] as number) + cz * (places[at + 5] as number)) / d;
  if (!(facing > 0)) return 0;
  if (axis === null) return facing / (4 * Math.PI * (d2 + bound * bound));
  const away = -along(axis, cx, cy, cz) / d;
  if (!(away > 0)) return 0;
  const share = lamp.even ? 1 : beamToward(lamp.beam, away, -cx / d, -cy / d, -cz / d);
  return (lamp.luminance * share * facing * away * lamp.area) / (d2 + bound * bound);
}
