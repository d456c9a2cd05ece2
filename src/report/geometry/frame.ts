import type { Vec3 } from "../../core/vector.js";
import { dot, subtract } from "../../math/vector.js";
import { imageDistance } from "../../scene/lens.js";
import type { SceneCamera } from "../../scene/types.js";

/** A point in the picture: from the middle, in halves of the frame; inside where both lie within -1 and 1. */
export interface Framed {
  /** + to the right of the picture. */
  readonly x: number;
  /** + to its top. */
  readonly y: number;
  /** Along the lens axis, m. */
  readonly depth: number;
}

/** Where a point lies in the picture (pinhole at the entrance pupil); null behind the lens or without a focal length. */
export function framed(camera: SceneCamera, point: Vec3): Framed | null {
  const image = imageDistance(camera);
  const sight = subtract(point, camera.at);
  const depth = dot(sight, camera.forward);
  if (image === null || !(depth > 1e-6)) return null;
  return {
    x: (dot(sight, camera.right) / depth) * (image / (camera.frameWidth / 2)),
    y: ((dot(sight, camera.up) / depth) * image - camera.shift) / (camera.frameHeight / 2),
    depth,
  };
}

/** Whether a point lies in the picture, `margin` in halves of the frame added all round. */
export function inFrame(camera: SceneCamera, point: Vec3, margin = 0): boolean {
  const place = framed(camera, point);
  return place !== null && Math.abs(place.x) <= 1 + margin && Math.abs(place.y) <= 1 + margin;
}
