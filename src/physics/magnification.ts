/**
 * Magnification of a thin lens: m = f / (s - f).
 *
 * @param focal - Focal length, above 0.
 * @param subject - Distance from the lens to the subject, same unit.
 * @returns Image size over subject size, or undefined when the subject is within the focal length and has no real image.
 */
export function magnification(focal: number, subject: number): number | undefined {
  return subject > focal ? focal / (subject - focal) : undefined;
}

/**
 * Light lost by focusing near: 2 log2(1 + m) stops, symmetric pupil (Ray, Applied Photographic Optics (2002)).
 *
 * @param scale - Magnification m, 0 or more.
 * @returns Stops, 0 or more.
 */
export function closeFocusLoss(scale: number): number {
  return 2 * Math.log2(1 + scale);
}
