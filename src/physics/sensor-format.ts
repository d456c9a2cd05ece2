/**
 * Diagonal of a rectangle.
 *
 * @param width - Width, 0 or more.
 * @param height - Height in the same unit.
 * @returns Diagonal in that unit.
 */
export function diagonal(width: number, height: number): number {
  return Math.sqrt(width * width + height * height);
}

/**
 * Circle of confusion as a share of the sensor's diagonal. The divisor is convention (1500 and 1730 are both in
 * use), not a standard.
 *
 * @param width - Width of the sensor.
 * @param height - Height of the sensor, same unit.
 * @param divisor - Above 0.
 * @returns Diameter in that unit.
 */
export function circleOfConfusion(width: number, height: number, divisor: number): number {
  return diagonal(width, height) / divisor;
}

/**
 * Crop factor: the diagonal of the 36 mm x 24 mm frame (ISO 1007) over the sensor's diagonal.
 *
 * @param widthMm - Width of the sensor in millimetres, above 0.
 * @param heightMm - Height of the sensor in millimetres, above 0.
 * @returns A plain number, 1 for 36 x 24 mm.
 */
export function cropFactor(widthMm: number, heightMm: number): number {
  return diagonal(36, 24) / diagonal(widthMm, heightMm);
}
