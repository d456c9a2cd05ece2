/*
 * Thin lens with a symmetric pupil (Ray, Applied Photographic Optics (2002); Conrad, Depth of Field in Depth (2006);
 * the formulae are standard, the pages from memory). All lengths of a call are in one unit, whichever it is, and are
 * measured from the lens.
 */

/**
 * Hyperfocal distance: the nearest focus at which a point at infinity still looks sharp, H = f*f / (N c) + f.
 *
 * @param focal - Focal length, above 0.
 * @param fNumber - Aperture as an f-number, above 0.
 * @param circle - Diameter of the largest blur disc that counts as sharp, above 0.
 * @returns Distance in the unit of the lengths.
 */
export function hyperfocalDistance(focal: number, fNumber: number, circle: number): number {
  return (focal * focal) / (fNumber * circle) + focal;
}

/**
 * Nearest distance that looks sharp: s (H - f) / (H + s - 2 f).
 *
 * @param focal - Focal length, above 0.
 * @param fNumber - Aperture as an f-number, above 0.
 * @param circle - Largest blur disc that counts as sharp, above 0.
 * @param subject - Distance that is focused on, above the focal length.
 * @returns Distance, at most `subject`; undefined when the subject is within the focal length and has no image.
 */
export function nearLimit(
  focal: number,
  fNumber: number,
  circle: number,
  subject: number,
): number | undefined {
  if (subject <= focal) return undefined;
  const reach = hyperfocalDistance(focal, fNumber, circle) - focal;
  return (subject * reach) / (reach + subject - focal);
}

/**
 * Farthest distance that looks sharp: s (H - f) / (H - s).
 *
 * @param focal - Focal length, above 0.
 * @param fNumber - Aperture as an f-number, above 0.
 * @param circle - Largest blur disc that counts as sharp, above 0.
 * @param subject - Distance that is focused on, above the focal length.
 * @returns Distance, at least `subject`; undefined when it is infinite (focus at or beyond the hyperfocal distance) or
 * when the subject is within the focal length.
 */
export function farLimit(
  focal: number,
  fNumber: number,
  circle: number,
  subject: number,
): number | undefined {
  const hyperfocal = hyperfocalDistance(focal, fNumber, circle);
  if (subject <= focal || subject >= hyperfocal) return undefined;
  return (subject * (hyperfocal - focal)) / (hyperfocal - subject);
}

/**
 * Depth of field: far limit less near limit.
 *
 * @param focal - Focal length, above 0.
 * @param fNumber - Aperture as an f-number, above 0.
 * @param circle - Largest blur disc that counts as sharp, above 0.
 * @param subject - Distance that is focused on, above the focal length.
 * @returns Length, or undefined when the far limit is infinite or there is no image.
 */
export function depthOfField(
  focal: number,
  fNumber: number,
  circle: number,
  subject: number,
): number | undefined {
  const near = nearLimit(focal, fNumber, circle, subject);
  const far = farLimit(focal, fNumber, circle, subject);
  return near === undefined || far === undefined ? undefined : far - near;
}

/**
 * Diameter on the sensor of the blur disc of a point out of focus: f*f |x - s| / (N x (s - f)).
 *
 * @param focal - Focal length, above 0.
 * @param fNumber - Aperture as an f-number, above 0.
 * @param subject - Distance that is focused on, above the focal length.
 * @param point - Distance of the blurred point, above 0.
 * @returns Diameter in the unit of the lengths, or undefined when the subject is within the focal length.
 */
export function blurDisc(focal: number, fNumber: number, subject: number, point: number): number | undefined {
  if (subject <= focal || point <= 0) return undefined;
  return (focal * focal * Math.abs(point - subject)) / (fNumber * point * (subject - focal));
}
