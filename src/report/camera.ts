import type { Scene } from "../scene/types.js";
import { alongFloor } from "./geometry/directions.js";
import { closeFocus } from "./light/close-focus.js";
import { brightestOf } from "./light/highlights.js";
import type { Plan } from "./plan.js";
import type { Report } from "./schema/report.js";

/** The camera of the report; null without one. */
export function reportCamera(plan: Plan): Report["camera"] {
  const { scene, recipe } = plan;
  const { camera } = scene;
  if (camera === null) return null;
  const focus = closeFocus(scene);
  const brightest = brightestOf(plan);
  return {
    position: [...camera.at],
    distance: alongFloor([0, 0, 0], camera.at),
    height: camera.at[2],
    held: heldOf(scene, recipe.camera?.held),
    frame: [camera.frameWidth * 1000, camera.frameHeight * 1000],
    focal_length: camera.focalLength === null ? null : camera.focalLength * 1000,
    shift: camera.shift * 1000,
    aperture: camera.aperture,
    shutter: camera.shutter,
    sensitivity: camera.iso,
    balance: camera.balance,
    sync: camera.sync,
    focus_distance: focus?.distance ?? null,
    close_focus_loss: focus?.loss ?? null,
    highlight:
      typeof brightest === "string"
        ? { headroom: null, of: null, reflectance: null, reason: brightest }
        : {
            headroom: brightest.headroom,
            of: brightest.what,
            reflectance: brightest.reflectance,
            reason: null,
          },
  };
}

function heldOf(scene: Scene, said: string | undefined): "upright" | "level" {
  if (said === "upright" || said === "level") return said;
  const { camera } = scene;
  return camera !== null && camera.frameHeight > camera.frameWidth ? "upright" : "level";
}
