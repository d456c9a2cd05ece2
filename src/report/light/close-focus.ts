import { dot, subtract } from "../../math/vector.js";
import { closeFocusLoss, magnification } from "../../physics/magnification.js";
import type { Scene } from "../../scene/types.js";

/** What focusing near does to the exposure. */
export interface CloseFocus {
  /** From the lens along its axis to the plane that is in focus, m. */
  readonly distance: number;
  /** Stops lost: 2 log2(1 + m), m the magnification. */
  readonly loss: number;
}

/** Focus distance and loss; null without a camera, a focal length or a focus in front of the lens. */
export function closeFocus(scene: Scene): CloseFocus | null {
  const { camera } = scene;
  if (camera === null || camera.focalLength === null || camera.focus === null) return null;
  const distance = dot(subtract(camera.focus, camera.at), camera.forward);
  const scale = magnification(camera.focalLength, distance);
  return scale === undefined ? null : { distance, loss: closeFocusLoss(scale) };
}
