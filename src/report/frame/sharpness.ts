import type { Vec3 } from "../../core/vector.js";
import { dot, subtract } from "../../math/vector.js";
import { blurDisc, farLimit, hyperfocalDistance, nearLimit } from "../../physics/depth-of-field.js";
import { airyDisc } from "../../physics/diffraction.js";
import { magnification } from "../../physics/magnification.js";
import type { Scene, SceneCamera } from "../../scene/types.js";
import { closeFocus } from "../light/close-focus.js";

/** A camera whose sharpness can be told. */
export interface Optics {
  readonly camera: SceneCamera;
  /** m. */
  readonly focal: number;
  readonly fNumber: number;
  /** From the lens along its axis to the plane in focus, m. */
  readonly focus: number;
}

/** The optics of a scene; text where something that they need is not known. */
export function opticsOf(scene: Scene): Optics | string {
  const { camera } = scene;
  if (camera === null) return "there is no camera";
  if (camera.focalLength === null) return "the camera's focal length is not known";
  if (camera.aperture === null) return "the camera's aperture is not known";
  const focus = closeFocus(scene);
  if (focus === null) return "the camera's focus is not known";
  return { camera, focal: camera.focalLength, fNumber: camera.aperture, focus: focus.distance };
}

/** The width of a pixel on the sensor, m; null without a count of pixels. */
export function pixelPitch(camera: SceneCamera): number | null {
  return camera.pixels === null ? null : camera.frameWidth / camera.pixels.width;
}

/** What looks sharp with a circle of confusion. Distances along the axis, m; null for one that has no end. */
export interface SharpRange {
  readonly circle: number;
  readonly near: number | null;
  readonly far: number | null;
  readonly hyperfocal: number;
}

/** The range that looks sharp with a circle of confusion, m. */
export function sharpRange({ focal, fNumber, focus }: Optics, circle: number): SharpRange {
  return {
    circle,
    near: nearLimit(focal, fNumber, circle, focus) ?? null,
    far: farLimit(focal, fNumber, circle, focus) ?? null,
    hyperfocal: hyperfocalDistance(focal, fNumber, circle),
  };
}

/** The diameter on the sensor of the blur of a point, m; null behind the lens. */
export function blurOf({ camera, focal, fNumber, focus }: Optics, point: Vec3): number | null {
  const depth = dot(subtract(point, camera.at), camera.forward);
  return blurDisc(focal, fNumber, focus, depth) ?? null;
}

/** The Airy disc of the camera as it is set and focused, m. */
export function airyOf({ focal, fNumber, focus }: Optics): number {
  return airyDisc(fNumber, magnification(focal, focus) ?? 0);
}
