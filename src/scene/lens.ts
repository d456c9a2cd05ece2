import type { Vec3 } from "../core/vector.js";
import { addScaled, dot, subtract } from "../math/vector.js";
import type { SceneCamera } from "./types.js";

/** The distance from the lens to its image for the point in focus, m; null without a focal length. */
export function imageDistance(camera: SceneCamera): number | null {
  const { focalLength, focus } = camera;
  if (focalLength === null) return null;
  if (focus === null) return focalLength;
  const away = dot(subtract(focus, camera.at), camera.forward);
  return away > focalLength ? (focalLength * away) / (away - focalLength) : focalLength;
}

/**
 * The direction in which the lens sees a place of the picture, its length along the lens axis 1; null without a focal
 * length.
 *
 * @param x - From the middle of the picture to the right, in halves of the frame.
 * @param y - To its top.
 */
export function sightOfPicture(camera: SceneCamera, x: number, y: number): Vec3 | null {
  const image = imageDistance(camera);
  if (image === null) return null;
  const across = (x * camera.frameWidth) / 2 / image;
  const up = ((y * camera.frameHeight) / 2 + camera.shift) / image;
  return addScaled(addScaled(camera.forward, camera.right, across), camera.up, up);
}
