import type { Station } from "../scene/types.js";
import {
  constantOf,
  ev100Of,
  fNumberOf,
  noLight,
  readingAt,
  stopsFromAperture,
  sumOf,
} from "./light/reading.js";
import type { Lit } from "./plan.js";
import { sayFNumber } from "./say/quantity.js";
import type { ReportStation } from "./schema/report.js";

/** The stations of the report in the scene's order. */
export function reportStations(lit: Lit): readonly ReportStation[] {
  return lit.scene.stations.map((station) => reportStation(lit, station));
}

function reportStation(lit: Lit, station: Station): ReportStation {
  const { scene } = lit;
  const { exposure: total, error, shares } = readingAt(lit, station);
  const constant = constantOf(scene, station.receptor);
  const fNumber = fNumberOf(scene, total, constant);
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
      error: total > 0 ? Math.log2(1 + error / total) : null,
      lights: shares.map(({ name, direct, bounced }) => ({ name, direct, bounced })),
    },
    ambient: ambientExposure(scene),
    f_number: fNumber,
    shown: fNumber === null ? null : sayFNumber(fNumber),
    stops_from_aperture: stopsFromAperture(scene, total, constant),
    ev100: ev100Of(scene, total, constant),
    reason: total > 0 ? noNumber(lit, fNumber) : noLight,
  };
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
