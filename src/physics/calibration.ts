import type { Vec3 } from "../core/vector.js";
import { addScaled, frameAround, normalise, scale, subtract } from "../math/vector.js";
import { type Beam, beamEnergyShare } from "./beam.js";
import { beamOpening } from "./beam-opening.js";
import { beamReading } from "./beam-reading.js";
import { flashRequiredExposure } from "./exposure.js";
import { discReading } from "./illuminance.js";
import { emptyVector } from "./light-vector.js";
import { axialIntensityPerEnergy, luminancePerEnergy } from "./luminous-energy.js";
import { openingReading } from "./opening-reading.js";
import { type SourceShape, sourceCentre } from "./source-shape.js";

/** One reading of a flat-receptor flash meter on a lamp's axis, without bounce. */
export interface MeterReading {
  /** The exact f-number, not the engraved one. */
  readonly fNumber: number;
  readonly iso: number;
  /** Metres from the centre of the lit opening, above 0. */
  readonly distance: number;
  /** Incident-light constant of the meter, lx s; 250 is common for a flat receptor (ISO 2720). */
  readonly c: number;
}

/** The unit vector along which a lamp is metered: the normal of a flat source, square to a tube, any for a sphere. */
export function meteringAxis(source: SourceShape): Vec3 {
  switch (source.kind) {
    case "disc":
    case "polygon":
      return source.normal;
    case "sphere":
      return [0, -1, 0];
    case "capsule": {
      const axis = normalise(subtract(source.to, source.from));
      return axis === undefined ? [0, -1, 0] : frameAround(axis)[0];
    }
    default:
      return source satisfies never;
  }
}

/**
 * Luminous exposure on the axis, per unit of luminous energy, in 1/m2, on a flat receptor that faces the lamp: the
 * area formula, right at any distance. Undefined for a source without area or a point inside it.
 */
export function axialExposurePerEnergy(
  source: SourceShape,
  distance: number,
  beam: Beam = { kind: "lambert" },
): number | undefined {
  const axis = meteringAxis(source);
  const point = addScaled(sourceCentre(source), axis, distance);
  const facing = scale(axis, -1);
  const luminance = luminancePerEnergy(source, beam);
  const [x, y, z] = point;
  const [nx, ny, nz] = facing;
  const angle =
    beam.kind === "lambert" || (source.kind !== "disc" && source.kind !== "polygon")
      ? discReading(source, x, y, z, nx, ny, nz, emptyVector())
      : beam.kind === "table"
        ? beamReading(source, beam, point, facing, "disc").value
        : openingReading(beamOpening(source, beam), x, y, z, nx, ny, nz, false);
  return luminance !== undefined && angle > 0 ? luminance * angle : undefined;
}

/** Luminous energy (lm s) of a lamp from one meter reading on its axis. Undefined where no light reaches the meter. */
export function energyFromReading(
  source: SourceShape,
  reading: MeterReading,
  beam: Beam = { kind: "lambert" },
): number | undefined {
  const perEnergy = axialExposurePerEnergy(source, reading.distance, beam);
  if (perEnergy === undefined) return undefined;
  return flashRequiredExposure(reading.fNumber, reading.iso, reading.c) / perEnergy;
}

/** Luminous energy (lm s) from the intensity on the axis over the flash (cd s). */
export function energyFromAxialIntensity(
  source: SourceShape,
  candelaSeconds: number,
  beam: Beam = { kind: "lambert" },
): number {
  return candelaSeconds / axialIntensityPerEnergy(source, beam);
}

/**
 * Luminous energy (lm s) from a guide number in metres at ISO 100 (ISO 1230): the axial intensity is GN^2 C / 100.
 * The guide number is taken as measured far enough away for the inverse square.
 */
export function energyFromGuideNumber(
  source: SourceShape,
  guideNumber: number,
  c: number,
  beam: Beam = { kind: "lambert" },
): number {
  return energyFromAxialIntensity(source, (guideNumber * guideNumber * c) / 100, beam);
}

/**
 * Luminous energy (lm s) from electrical energy: watt-seconds times the efficacy of the whole unit (lm s per J) times
 * the share that the head and its cloth let out. An estimate: efficacies of 15 to 50 lm s/J are in print.
 */
export function energyFromWattSeconds(wattSeconds: number, efficacy: number, headShare: number): number {
  return wattSeconds * efficacy * headShare;
}

/** Luminous energy left of a lamp when a beam shape is put on that keeps the intensity on the axis. */
export function energyBehindBeam(energy: number, beam: Beam): number {
  return energy * beamEnergyShare(beam);
}
