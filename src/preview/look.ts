import { exp2 } from "../core/exp2.js";
import { closeFocus } from "../report/light/close-focus.js";
import { keyReading } from "../report/light/key-reading.js";
import type { Plan } from "../report/plan.js";
import type { Scene } from "../scene/types.js";
import { sceneLight } from "../transport/scene-light.js";
import { addBounced } from "./bounced.js";
import { addDirect } from "./direct.js";
import { showLamps } from "./lamps.js";
import { type View, viewOf } from "./view.js";

/** The set-up as the camera would record it, in grey. */
export interface Look {
  readonly width: number;
  readonly height: number;
  /** Luminance of each pixel from the top left; 1 is a white of reflectance 1 in the light that the exposure is right for. */
  readonly luminance: Float64Array;
  readonly view: View;
}

/**
 * Luminous exposure for which a camera's settings are right by the meter's constant, C N^2 / S, lx s, more by what the lens
 * loses by focusing near; null where a setting is not known.
 */
export function exposureAsSet(scene: Scene): number | null {
  const { camera, meter } = scene;
  if (camera === null || camera.aperture === null || camera.iso === null) return null;
  const near = exp2(closeFocus(scene)?.loss ?? 0);
  return (near * meter.flat * camera.aperture * camera.aperture) / camera.iso;
}

/**
 * Works out the picture: direct light with true half-shades, all that the surfaces bounce, and the lit openings that
 * the lens sees. A text says why there is none. The same set-up gives the same numbers.
 *
 * @param width - Pixels across; the height follows from the frame.
 */
export function lookOf(plan: Plan, width: number): Look | string {
  const { scene } = plan;
  const view = viewOf(scene, width);
  if (view === null) return noLens;
  const right = rightExposure(plan);
  if (right === null)
    return "Aperture and sensitivity are not known, and there is no reading at a face to expose for.";
  const luminance = recorded(scene, view, right);
  showLamps(scene, scene.sources, view, right, luminance);
  return { width: view.width, height: view.height, luminance, view };
}

/** Why there is no picture. */
export const noLens = "There is no camera with a focal length.";

/** The exposure that the picture is right for, as the camera is set, else at the face; null where neither is known. */
export function rightExposure(plan: Plan): number | null {
  const right = exposureAsSet(plan.scene) ?? keyReading(plan)?.exposure ?? null;
  return right !== null && right > 0 ? right : null;
}

/** The luminance of all that a view sees, for an exposure that makes white 1. */
export function recorded(scene: Scene, view: View, right: number): Float64Array {
  const exposure = new Float64Array(view.width * view.height);
  addDirect(scene, view, exposure);
  addBounced(scene, sceneLight(scene, "look"), view, exposure);
  return exposure.map((light, pixel) => ((view.reflectance[pixel] as number) * light) / right);
}
