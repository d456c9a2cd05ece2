import type { Vec3 } from "../../core/vector.js";
import { clipByPlane } from "../../math/polygon.js";
import { addScaled, dot, scale } from "../../math/vector.js";
import { imageDistance } from "../../scene/lens.js";
import type { SceneCamera } from "../../scene/types.js";
import { framed } from "../geometry/frame.js";

/** Nothing nearer to the lens than this, along its axis, is in the picture, m. */
const NEAR = 0.01;

/** The part of a flat convex surface that lies in the frame, whatever stands before it; null without a focal length. */
export function partInFrame(camera: SceneCamera, vertices: readonly Vec3[]): readonly Vec3[] | null {
  const image = imageDistance(camera);
  if (image === null) return null;
  const { at, forward, right, up, frameWidth, frameHeight } = camera;
  const side = (axis: Vec3, half: number): Vec3 => addScaled(scale(axis, image), forward, half);
  const planes = [
    side(right, frameWidth / 2),
    side(scale(right, -1), frameWidth / 2),
    side(up, frameHeight / 2 - camera.shift),
    side(scale(up, -1), frameHeight / 2 + camera.shift),
  ];
  const ahead = clipByPlane(vertices, forward, dot(forward, at) + NEAR);
  return planes.reduce((left, plane) => clipByPlane(left, plane, dot(plane, at)), ahead);
}

/** A short stretch as the picture shows it. */
export interface InPicture {
  /** As a share of the frame's width. */
  readonly share: number;
  /** In pixels of the camera; null where it does not say how many it has. */
  readonly pixels: number | null;
}

/** How large the stretch between two places is in the picture; null where it is not before the lens. */
export function stretchInPicture(camera: SceneCamera, a: Vec3, b: Vec3): InPicture | null {
  const [p, q] = [framed(camera, a), framed(camera, b)];
  if (p === null || q === null) return null;
  const x = (p.x - q.x) / 2;
  const y = (p.y - q.y) / 2;
  const tall = camera.frameHeight / camera.frameWidth;
  const size = (across: number, up: number): number => Math.sqrt(across * across + up * up);
  const { pixels } = camera;
  return {
    share: size(x, y * tall),
    pixels: pixels === null ? null : size(x * pixels.width, y * pixels.height),
  };
}
