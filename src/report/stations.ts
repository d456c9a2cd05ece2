import type { Station } from "../scene/types.js";
import type { MeasuredInput } from "./evaluate/inputs.js";
import { intervalOf } from "./evaluate/spread.js";
import { keyReading } from "./light/key-reading.js";
import { whyNoLight } from "./light/no-light.js";
import {
  constantOf,
  errorOf,
  ev100Of,
  fNumberOf,
  type Reading,
  readingAt,
  stopsFromAperture,
  stopsOver,
  sumOf,
} from "./light/reading.js";
import { reflectanceAt, toneOf } from "./light/surface-tone.js";
import type { Lit, Plan } from "./plan.js";
import { sayFNumber } from "./say/quantity.js";
import type { ReportStation } from "./schema/report.js";

/** The stations of the report in the scene's order. */
export function reportStations(plan: Plan, inputs: readonly MeasuredInput[]): readonly ReportStation[] {
  const key = keyReading(plan);
  return plan.scene.stations.map((station, index) => ({
    ...reportStation(plan, station, key),
    interval: stationInterval(plan, index, inputs),
  }));
}

/** Stops under and over a reading within which it lies, the error of its bounced light included; null without light. */
function stationInterval(
  plan: Plan,
  index: number,
  inputs: readonly MeasuredInput[],
): ReportStation["interval"] {
  const readingOf = ({ scene, light }: Lit): Reading | null => {
    const station = scene.stations[index];
    return station === undefined ? null : readingAt({ scene, light }, station);
  };
  const found = intervalOf({ plan, alarms: null }, inputs, (there) => {
    const exposure = readingOf(there.plan)?.exposure ?? 0;
    return exposure > 0 ? Math.log2(exposure) : null;
  });
  const reading = readingOf(plan);
  if (found === null || reading === null) return null;
  const error = errorOf(reading) ?? 0;
  const end = (off: number): number => Math.sqrt(off * off + error * error);
  return [end(found.below), end(found.above)];
}

function reportStation(lit: Lit, station: Station, key: Reading | null): Omit<ReportStation, "interval"> {
  const { scene } = lit;
  const reading = readingAt(lit, station);
  const { exposure: total, shares } = reading;
  const constant = constantOf(scene, station.receptor);
  const fromKey = key === null ? null : stopsOver(reading, key);
  const reflectance = reflectanceAt(scene, station);
  const fNumber = fNumberOf(scene, total, constant);
  const ambient = ambientExposure(scene);
  return {
    name: station.name,
    subject: station.subject,
    at: [...station.at],
    facing: [...station.facing],
    receptor: station.receptor,
    looks: station.looks,
    exposure: {
      direct: sumOf(shares.map((share) => share.direct)),
      bounced: sumOf(shares.map((share) => share.bounced)),
      total,
      error: total > 0 ? errorOf(reading) : null,
      lights: shares.map(({ name, direct, bounced }) => ({ name, direct, bounced })),
    },
    contributors: contributorsAt(lit, station, reading),
    from_key: fromKey,
    tone: reflectance === null || fromKey === null ? null : { ...toneOf(reflectance, fromKey) },
    ambient,
    ambient_adds: ambient !== null && total > 0 ? Math.log2(1 + ambient / total) : null,
    f_number: fNumber,
    shown: fNumber === null ? null : sayFNumber(fNumber),
    stops_from_aperture: stopsFromAperture(scene, total, constant),
    ev100: ev100Of(scene, total, constant),
    reason: total > 0 ? noNumber(lit, fNumber) : whyNoLight(scene, station.at, station.facing),
  };
}

/** Surfaces that give less than this are left out, stops. */
const LEAST = 0.05;

/**
 * What the surfaces do for a shaded reading: that of a shaded cheek, and any that gets more by bounce than straight.
 * Null for others.
 */
function contributorsAt(
  { scene, light }: Lit,
  station: Station,
  { exposure, shares }: Reading,
): ReportStation["contributors"] {
  const bounced = sumOf(shares.map((share) => share.bounced));
  const shaded = station.name.endsWith("shaded_cheek") || bounced > exposure / 2;
  if (!shaded || !(bounced > 0)) return null;
  const lights = scene.sources
    .filter((source) => source.energy > 0)
    .map((source) => ({ source, energy: source.energy }));
  return light
    .contributors(lights, station)
    .map(({ surface, takes, without }) => ({
      surface,
      takes,
      stops: without > 0 ? Math.log2((without + takes) / without) : null,
    }))
    .filter(({ stops }) => stops === null || stops >= LEAST);
}

function noNumber({ scene }: Lit, fNumber: number | null): string | null {
  if (fNumber !== null) return null;
  return scene.camera === null ? "there is no camera, so no ISO value" : "the camera's ISO is not known";
}

/** The room's own light over the shutter time, lx s; null without a room or a shutter. Not part of any reading. */
export function ambientExposure(scene: Lit["scene"]): number | null {
  const shutter = scene.camera?.shutter ?? null;
  return scene.room === null || shutter === null ? null : scene.room.ambient * shutter;
}
