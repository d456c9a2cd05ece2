import type { Vec3 } from "../core/vector.js";
import { formFactorByContour } from "./form-factor.js";

/**
 * View factor of two rectangles that share an edge at any angle (Howell C-16; Feingold 1966), by the contour integral.
 *
 * @param common - Length of the shared edge, above 0.
 * @param from - Width of the rectangle that sends, above 0, same unit.
 * @param to - Width of the rectangle that receives, above 0, same unit.
 * @param angle - Angle between their lit faces in radians, above 0, below pi.
 * @returns Share of the light leaving the first that reaches the second, 0 to 1.
 */
export function viewFactorAtAngle(common: number, from: number, to: number, angle: number): number {
  const first: readonly Vec3[] = [
    [0, 0, 0],
    [from, 0, 0],
    [from, common, 0],
    [0, common, 0],
  ];
  const x = to * Math.cos(angle);
  const z = to * Math.sin(angle);
  const second: readonly Vec3[] = [
    [0, 0, 0],
    [0, common, 0],
    [x, common, z],
    [x, 0, z],
  ];
  return formFactorByContour(first, second);
}
