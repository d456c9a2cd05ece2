import { magnification } from "./magnification.js";

/**
 * Angle of view of a rectilinear lens focused at infinity: 2 atan(w / 2 f).
 *
 * @param sensor - Width, height or diagonal of the sensor, above 0.
 * @param focal - Focal length in the same unit, above 0.
 * @returns Full angle in radians.
 */
export function angleOfView(sensor: number, focal: number): number {
  return 2 * Math.atan2(sensor, 2 * focal);
}

/**
 * How much of the plane of focus the frame takes in: w (s - f) / f, thin lens.
 *
 * @param sensor - Width or height of the sensor.
 * @param focal - Focal length, above 0, same unit.
 * @param subject - Distance from the lens to the plane of focus, same unit.
 * @returns Width or height in that unit, or undefined when the subject is within the focal length.
 */
export function fieldAtDistance(sensor: number, focal: number, subject: number): number | undefined {
  const scale = magnification(focal, subject);
  return scale === undefined ? undefined : sensor / scale;
}

/**
 * Distance at which the frame takes in a wanted size: s = f (1 + W / w), thin lens focused there.
 *
 * @param sensor - Width or height of the sensor, above 0.
 * @param focal - Focal length, same unit.
 * @param frame - Wanted width or height of the field, same unit.
 * @returns Distance from the lens in that unit.
 */
export function distanceForFrame(sensor: number, focal: number, frame: number): number {
  return focal * (1 + frame / sensor);
}

/**
 * Width of backdrop that fills the frame behind a subject: similar triangles from the entrance pupil.
 *
 * @param subjectFrame - Width (or height) of the field at the subject.
 * @param subject - Distance from the lens to the subject, above 0, same unit.
 * @param backdrop - Distance from the lens to the backdrop, same unit.
 * @returns Width (or height) in that unit.
 */
export function backdropWidth(subjectFrame: number, subject: number, backdrop: number): number {
  return (subjectFrame * backdrop) / subject;
}
