import { discReading } from "./illuminance.js";
import { emptyVector } from "./light-vector.js";
import { rectangleSource } from "./source-shape.js";

/**
 * Luminous exposure of a flash (lx s) from its electrical energy (J), the efficacy of the unit (lm s/J) and a simple
 * picture of where the light goes. Estimates: efficacies of 15 to 50 lm s/J for whole units are in print. All values
 * are above 0 and distances are in metres.
 */

/** A bare tube that shines alike in all directions: H = energy efficacy / (4 pi d^2). */
export function isotropicExposure(energy: number, efficacy: number, distance: number): number {
  return (energy * efficacy) / (4 * Math.PI * distance * distance);
}

/** A flat diffuser far away, on its axis: H = energy efficacy transmission / (pi d^2). */
export function lambertianExposure(
  energy: number,
  efficacy: number,
  transmission: number,
  distance: number,
): number {
  return (energy * efficacy * transmission) / (Math.PI * distance * distance);
}

/**
 * A reflector that spreads its light evenly over a cone with the full angle `beam` (radians, up to 2 pi):
 * H = energy efficacy utilisation / (2 pi (1 - cos(beam / 2)) d^2).
 */
export function coneExposure(
  energy: number,
  efficacy: number,
  utilisation: number,
  beam: number,
  distance: number,
): number {
  const s = Math.sin(beam / 4);
  return (energy * efficacy * utilisation) / (4 * Math.PI * s * s * distance * distance);
}

/** A uniform flat rectangle at any distance on its axis, the receptor facing it: luminance times projected solid angle. */
export function rectangularDiffuserExposure(
  energy: number,
  efficacy: number,
  transmission: number,
  width: number,
  height: number,
  distance: number,
): number {
  const source = rectangleSource([0, 0, 0], [1, 0, 0], [0, 1, 0], width, height);
  const angle = discReading(source, 0, 0, distance, 0, 0, -1, emptyVector());
  return ((energy * efficacy * transmission) / (Math.PI * width * height)) * angle;
}

/** Distance (m) at which a bare tube gives the wanted exposure: sqrt(energy efficacy S / (4 pi C N^2)). */
export function bareFlashDistance(
  energy: number,
  efficacy: number,
  iso: number,
  fNumber: number,
  c: number,
): number {
  return Math.sqrt((energy * efficacy * iso) / (4 * Math.PI * c)) / fNumber;
}
