import type { FaceAngles } from "./angles.js";

/** The side of the face that a light lights: turned away from the camera, or towards it. */
export type FaceSide = "short" | "broad";

/** A face turned by no more than this from the camera, deg, shows both its sides alike. */
const SQUARE = 5;
/** A light no further than this from the nose line, deg, lights both sides. */
const FRONTAL = 10;

/** The side of a face that a light is on, by the angles of light and camera; a text says why there is none. */
export function sideOfFace(light: FaceAngles, camera: FaceAngles | null): FaceSide | string {
  if (camera === null) return "there is no camera";
  if (Math.abs(camera.azimuth) <= SQUARE) return "the face looks into the lens";
  if (Math.abs(camera.azimuth) >= 90) return "the camera does not see the face";
  const side = Math.abs(light.azimuth);
  if (side <= FRONTAL || side >= 180 - FRONTAL) return "the light stands on the nose line";
  return Math.sign(light.azimuth) === Math.sign(camera.azimuth) ? "broad" : "short";
}
