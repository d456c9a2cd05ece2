import { type Beam, beamShare } from "../physics/beam.js";
import { samples } from "../physics/beam-reading.js";
import type { SourceShape } from "../physics/source-shape.js";

/** Points to a side of the rule near to a source and far from it. */
const nearFineness = 16;
const farFineness = 7;
/** From this many times the greatest half width on, the coarse rule serves. */
const farDistance = 5;

/** The opening of a source with a beam, cut into points: x, y, z and area of each, in a row. */
export interface BeamSum {
  readonly beam: Beam;
  readonly near: Float64Array;
  readonly far: Float64Array;
  /** Beyond this distance from the centre the coarse points serve, squared, m2. */
  readonly farSquared: number;
  readonly nx: number;
  readonly ny: number;
  readonly nz: number;
  readonly cx: number;
  readonly cy: number;
  readonly cz: number;
}

function rowOf(shape: Extract<SourceShape, { kind: "disc" | "polygon" }>, fineness: number): Float64Array {
  const points = samples(shape, fineness);
  const row = new Float64Array(points.length * 4);
  for (let i = 0; i < points.length; i++) {
    const point = points[i];
    if (point === undefined) continue;
    row[4 * i] = point.at[0];
    row[4 * i + 1] = point.at[1];
    row[4 * i + 2] = point.at[2];
    row[4 * i + 3] = point.area;
  }
  return row;
}

/** Prepares a flat source with a beam; null for a source of one luminance, which needs no sum. */
export function beamSum(shape: SourceShape, beam: Beam): BeamSum | null {
  if (beam.kind === "lambert" || (shape.kind !== "disc" && shape.kind !== "polygon")) return null;
  const near = rowOf(shape, nearFineness);
  let cx = 0;
  let cy = 0;
  let cz = 0;
  let area = 0;
  for (let i = 0; i < near.length; i += 4) {
    const a = near[i + 3] as number;
    area += a;
    cx += a * (near[i] as number);
    cy += a * (near[i + 1] as number);
    cz += a * (near[i + 2] as number);
  }
  cx /= area;
  cy /= area;
  cz /= area;
  let half = 0;
  for (let i = 0; i < near.length; i += 4) {
    const x = (near[i] as number) - cx;
    const y = (near[i + 1] as number) - cy;
    const z = (near[i + 2] as number) - cz;
    half = Math.max(half, x * x + y * y + z * z);
  }
  return {
    beam,
    near,
    far: rowOf(shape, farFineness),
    farSquared: half * farDistance * farDistance,
    nx: shape.normal[0],
    ny: shape.normal[1],
    nz: shape.normal[2],
    cx,
    cy,
    cz,
  };
}

/**
 * The mean beam share over a source, weighted by what each of its points gives the receptor: the factor that turns the
 * exact reading of a Lambertian source into that of the beam. Quadrature, measured against a rule of 36 points to a
 * side: within 0.02 % of the reading for a power of the cosine, and within 0.2 % of the reading on the axis for a grid
 * whose cone takes in the opening from the receptor. Nearer than that, where the grid's dark rim crosses the opening,
 * the fixed points miss part of it: with a grid of 10 deg at 1 m a strip of 1.4 m reads up to 22 % too little and a
 * disc of 1.5 m 12 % too much.
 */
export function beamFactor(
  sum: BeamSum,
  px: number,
  py: number,
  pz: number,
  mx: number,
  my: number,
  mz: number,
  dome: boolean,
): number {
  const { nx, ny, nz, beam } = sum;
  const gx = px - sum.cx;
  const gy = py - sum.cy;
  const gz = pz - sum.cz;
  const row = gx * gx + gy * gy + gz * gz > sum.farSquared ? sum.far : sum.near;
  let whole = 0;
  let beamed = 0;
  for (let i = 0; i < row.length; i += 4) {
    const x = (row[i] as number) - px;
    const y = (row[i + 1] as number) - py;
    const z = (row[i + 2] as number) - pz;
    const d2 = x * x + y * y + z * z;
    if (!(d2 > 0)) continue;
    const d = Math.sqrt(d2);
    const away = -(x * nx + y * ny + z * nz) / d;
    const facing = (x * mx + y * my + z * mz) / d;
    const response = dome ? (1 + facing) / 2 : facing;
    if (!(away > 0) || !(response > 0)) continue;
    const weight = ((row[i + 3] as number) * away * response) / d2;
    whole += weight;
    beamed += weight * beamShare(beam, away);
  }
  return whole > 0 ? beamed / whole : 0;
}
