/** Illuminance (lx) by hand formulas: intensity in cd, luminance in cd/m2, lengths in metres, angles in radians. */

/** A small lamp: I cos / d^2; 0 from behind the receiver. Inverse square and cosine law (ISO 80000-7). */
export function pointIlluminance(intensity: number, distance: number, incidence: number): number {
  return (intensity * Math.max(0, Math.cos(incidence))) / (distance * distance);
}

/** A small lamp above a level surface: I h / (h^2 + x^2)^(3/2), which is I cos^3 / h^2. */
export function levelIlluminance(intensity: number, height: number, offset: number): number {
  const d2 = height * height + offset * offset;
  return (intensity * height) / (d2 * Math.sqrt(d2));
}

/**
 * A narrow uniform strip or tube that faces the point, which lies on its perpendicular bisector:
 * (L w / d)(a + sin a cos a), tan a = half length / d. Handbook form; it follows from the cosine law along a line.
 */
export function stripIlluminance(luminance: number, width: number, length: number, distance: number): number {
  const half = length / 2;
  const a = Math.atan2(half, distance);
  return ((luminance * width) / distance) * (a + (half * distance) / (half * half + distance * distance));
}

/** Luminance (cd/m2) of a matt surface: reflectance times illuminance over pi. */
export function mattLuminance(illuminance: number, reflectance: number): number {
  return (reflectance * illuminance) / Math.PI;
}
