import type { Vec3 } from "../core/vector.js";
import type { PointValue } from "../model/values.js";
import { resolvePoint } from "./points.js";
import type { Landmark, Scene, Station } from "./types.js";

/** The landmark of a name in a finished scene; stations count too. */
function landmarkIn(scene: Scene, name: string): Landmark | null {
  const landmark = scene.landmarks.get(name);
  if (landmark !== undefined) return landmark;
  const station = scene.stations.find((candidate) => candidate.name === name);
  return station === undefined ? null : { at: station.at, ahead: null };
}

/** A point of the language in metres, in a finished scene; null where a name has no place. */
export function placeOf(scene: Scene, point: PointValue): Vec3 | null {
  const resolved = resolvePoint(
    point,
    (name) => landmarkIn(scene, name),
    () => undefined,
  );
  return resolved === null ? null : resolved.at;
}

/** The place of a station or of anything else with a name (`back.left`, `ana.face`, `key`); null where there is none. */
export function stationPoint(scene: Scene, name: string): Vec3 | null {
  return landmarkIn(scene, name)?.at ?? null;
}

/**
 * The index of a standing station by its name and receptor (`face` has a disc and a dome); null where there is none.
 * The only subject's stations answer to `ana.face` as well as to `face`.
 */
export function stationIndex(scene: Scene, name: string, receptor?: Station["receptor"]): number | null {
  const only = scene.subjects.length === 1 ? scene.subjects[0]?.name : undefined;
  const short =
    only !== undefined && only !== "" && name.startsWith(`${only}.`) ? name.slice(only.length + 1) : name;
  const { stations } = scene;
  for (let i = 0; i < stations.length; i++) {
    const station = stations[i] as Station;
    if (station.name !== name && station.name !== short) continue;
    if (receptor === undefined || station.receptor === receptor) return i;
  }
  return null;
}
