import type { Vec3 } from "../core/vector.js";
import type { Beam } from "../physics/beam.js";
import { discReading, domeReading } from "../physics/illuminance.js";
import { emptyVector, type LightVector } from "../physics/light-vector.js";
import { luminancePerEnergy } from "../physics/luminous-energy.js";
import type { SourceShape } from "../physics/source-shape.js";
import { sourceBeam, sourceShape } from "../scene/lamp/optics.js";
import type { Source, Station } from "../scene/types.js";
import { type BeamSum, beamFactor, beamSum } from "./beam-sum.js";

/** A source made ready for many readings; nothing in it depends on the lamp's power. */
export interface PreparedSource {
  readonly shape: SourceShape;
  readonly beam: Beam;
  /** Luminance on the axis per lumen-second, 1/(m2 sr). */
  readonly luminance: number;
  /** For sources with a beam; null for sources of one luminance. */
  readonly sum: BeamSum | null;
}

/** Makes a source ready; a source without area gives no light. */
export function prepareSource(source: Source): PreparedSource {
  const shape = sourceShape(source);
  const beam = sourceBeam(source);
  return { shape, beam, luminance: luminancePerEnergy(shape, beam) ?? 0, sum: beamSum(shape, beam) };
}

/**
 * Luminous exposure at a point per lumen-second of a source (lx s per lm s, that is 1/m2), without any hiding: the hot
 * path, which allocates nothing for sources of one luminance.
 *
 * A disc receptor has a cosine response and a horizon; a dome has the response (1 + cos) / 2 and none. Flat sources
 * give light to their front only. Exact for sources of one luminance; beams as `beamFactor` says.
 */
export function preparedReading(
  source: PreparedSource,
  px: number,
  py: number,
  pz: number,
  nx: number,
  ny: number,
  nz: number,
  receptor: Station["receptor"],
  scratch: LightVector,
): number {
  const dome = receptor === "dome";
  const reading = dome
    ? domeReading(source.shape, px, py, pz, nx, ny, nz, scratch)
    : discReading(source.shape, px, py, pz, nx, ny, nz, scratch);
  if (source.sum === null || reading === 0) return source.luminance * reading;
  return source.luminance * reading * beamFactor(source.sum, px, py, pz, nx, ny, nz, dome);
}

/**
 * Luminous exposure that a receptor gets from a source per lumen-second of it, in 1/m2 (lx s per lm s), without any
 * hiding.
 *
 * @param source - A source of the scene; its own energy and setting do not count.
 * @param at - Place of the receptor, m.
 * @param facing - Unit vector the receptor looks along.
 * @param receptor - Flat (`disc`) or `dome`.
 */
export function directPerLumenSecond(
  source: Source,
  at: Vec3,
  facing: Vec3,
  receptor: Station["receptor"],
): number {
  return preparedReading(
    prepareSource(source),
    at[0],
    at[1],
    at[2],
    facing[0],
    facing[1],
    facing[2],
    receptor,
    emptyVector(),
  );
}
