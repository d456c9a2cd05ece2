import { exp2 } from "../core/exp2.js";
import type { CameraModel, LightModel } from "../model/types.js";
import { keyOf } from "./key.js";
import { gelledColour } from "./lamp/losses.js";
import { stopsBelow } from "./lamp/power.js";
import { lampName } from "./lit/seen.js";
import type { Scene, Source } from "./types.js";

/**
 * A scene with the power or the gels of one lamp changed, without building it anew: the same as building it from the
 * changed recipe, but for the last bits of sums. Null where more would change, such as which light is the key, or where
 * building it would report something.
 */
export function resetLamp(scene: Scene, before: LightModel, after: LightModel): Scene | null {
  const below = after.power === undefined ? 0 : stopsBelow(after, after.power);
  if (below === undefined || (below !== null && below < -1e-9)) return null;
  const share = below === null ? 0 : exp2(-below);
  const passed = exp2(gelLoss(before) - gelLoss(after));
  const colour = gelledColour(after);
  const turned = (source: Source): Source => {
    const fullEnergy = source.fullEnergy * passed;
    const wattSeconds = source.fullWattSeconds === null ? null : source.fullWattSeconds * share;
    return { ...source, fullEnergy, energy: fullEnergy * share, wattSeconds, below, colour };
  };
  const sources = scene.sources.map((source) => (lampName(source) === after.name ? turned(source) : source));
  return keyOf(sources, scene.subjects[0]) === scene.key ? { ...scene, sources } : null;
}

function gelLoss({ gel }: LightModel): number {
  return (gel?.items ?? []).reduce((sum, { loses }) => sum + loses.value, 0);
}

/**
 * A scene with aperture, sensitivity or exposure time of the camera changed. Null where a steady light depends on the
 * time.
 */
export function resetCamera(scene: Scene, lights: readonly LightModel[], after: CameraModel): Scene | null {
  if (scene.camera === null) return null;
  const shutter = after.shutter?.value ?? null;
  const timed = lights.some(({ output }) => output?.kind === "flux" || output?.kind === "intensity");
  if (timed && shutter !== scene.camera.shutter) return null;
  const aperture = after.aperture?.value ?? null;
  return { ...scene, camera: { ...scene.camera, aperture, shutter, iso: after.sensitivity?.value ?? null } };
}
