import type { Scene, Station } from "../scene/types.js";
import { directOf, type LightField } from "../transport/light-field.js";
import { noDirectLight } from "./evaluate/found.js";
import { constantOf, ev100Of, fNumberOf, stopsFromAperture, sumOf } from "./light/reading.js";
import { sayFNumber } from "./say/quantity.js";
import type { ReportStation } from "./schema/report.js";

/** The stations of the report in the scene's order, from the light field and the lamps' present settings. */
export function reportStations(scene: Scene, field: LightField): readonly ReportStation[] {
  return scene.stations.map((station, index) => reportStation(scene, field, station, index));
}

function reportStation(scene: Scene, field: LightField, station: Station, index: number): ReportStation {
  const lights = scene.sources.map((source, column) => ({
    name: source.name,
    direct: directOf(field, index, column) * source.energy,
    bounced: null,
  }));
  const direct = sumOf(lights.map((light) => light.direct));
  const constant = constantOf(scene, station.receptor);
  const fNumber = fNumberOf(scene, direct, constant);
  return {
    name: station.name,
    subject: station.subject,
    at: [...station.at],
    facing: [...station.facing],
    receptor: station.receptor,
    looks: station.looks,
    exposure: { direct, bounced: null, total: direct, error: null, lights },
    ambient: ambientExposure(scene),
    f_number: fNumber,
    shown: fNumber === null ? null : sayFNumber(fNumber),
    stops_from_aperture: stopsFromAperture(scene, direct, constant),
    ev100: ev100Of(scene, direct, constant),
    reason: direct > 0 ? noNumber(scene, fNumber) : noDirectLight,
  };
}

function noNumber(scene: Scene, fNumber: number | null): string | null {
  if (fNumber !== null) return null;
  return scene.camera === null ? "there is no camera, so no ISO value" : "the camera's ISO is not known";
}

/** The room's own light over the shutter time, lx s; null without a room or a shutter. Not part of any reading. */
export function ambientExposure(scene: Scene): number | null {
  const shutter = scene.camera?.shutter ?? null;
  return scene.room === null || shutter === null ? null : scene.room.ambient * shutter;
}
