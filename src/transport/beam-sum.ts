import type { Beam } from "../physics/beam.js";
import { type BeamOpening, beamOpening } from "../physics/beam-opening.js";
import { beamReading } from "../physics/beam-reading.js";
import { discReading, domeReading } from "../physics/illuminance.js";
import { emptyVector, type LightVector } from "../physics/light-vector.js";
import { openingReading } from "../physics/opening-reading.js";
import type { DiscSource, PolygonSource, SourceShape } from "../physics/source-shape.js";

/** The opening of a source with a measured beam, made ready. */
export interface TableSum {
  readonly shape: DiscSource | PolygonSource;
  readonly table: Beam;
  readonly scratch: LightVector;
}

/** Points across a smooth part of an opening with a measured beam. */
const FINENESS = 8;

/** The opening of a source with a beam that is the same all round, made ready. */
export interface RoundSum {
  readonly shape: SourceShape;
  readonly opening: BeamOpening;
  readonly scratch: LightVector;
}

/** The opening of a source with a beam, made ready. */
export type BeamSum = RoundSum | TableSum;

/** Prepares a flat source with a beam; null for a source of one luminance, which needs no sum. */
export function beamSum(shape: SourceShape, beam: Beam): BeamSum | null {
  if (beam.kind === "lambert" || (shape.kind !== "disc" && shape.kind !== "polygon")) return null;
  if (beam.kind === "table") return { shape, table: beam, scratch: emptyVector() };
  return { shape, opening: beamOpening(shape, beam), scratch: emptyVector() };
}

/**
 * The mean beam share over a source, weighted by what each of its points gives the receptor: the factor that turns the
 * exact reading of a Lambertian source into that of the beam, from the reading of the beam as `openingReading` sums it.
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
  if ("table" in sum) return tableFactor(sum, px, py, pz, mx, my, mz, dome);
  const beamed = openingReading(sum.opening, px, py, pz, mx, my, mz, dome);
  if (beamed === 0) return 0;
  const reading = dome ? domeReading : discReading;
  const whole = reading(sum.shape, px, py, pz, mx, my, mz, sum.scratch);
  if (!(whole > 0)) return 0;
  // A power below 1 is stronger off the axis than on it.
  return sum.opening.power > 0 && sum.opening.power < 1 ? beamed / whole : Math.min(1, beamed / whole);
}

/** The same for a measured beam, summed over points of the opening. */
function tableFactor(
  { shape, table, scratch }: TableSum,
  px: number,
  py: number,
  pz: number,
  mx: number,
  my: number,
  mz: number,
  dome: boolean,
): number {
  const reading = dome ? domeReading : discReading;
  const whole = reading(shape, px, py, pz, mx, my, mz, scratch);
  if (!(whole > 0)) return 0;
  const receptor = dome ? "dome" : "disc";
  return beamReading(shape, table, [px, py, pz], [mx, my, mz], receptor, FINENESS).value / whole;
}
