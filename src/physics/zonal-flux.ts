/**
 * Solid angle of the zone between two cones around the nadir: 2 pi (cos t1 - cos t2), the zonal constant of the IES
 * Lighting Handbook.
 *
 * @param inner - Half angle of the inner cone in radians, 0 to pi.
 * @param outer - Half angle of the outer cone in radians, `inner` to pi.
 * @returns Steradians.
 */
export function zonalConstant(inner: number, outer: number): number {
  return 4 * Math.PI * Math.sin((inner + outer) / 2) * Math.sin((outer - inner) / 2);
}

/**
 * Luminous flux of a flat matt source: Phi = pi I0.
 *
 * @param axial - Intensity along the axis in candelas.
 * @returns Lumens.
 */
export function lambertianFlux(axial: number): number {
  return Math.PI * axial;
}

/**
 * Luminous flux of a beam whose intensity falls as a power of the cosine, I = I0 cos^n: Phi = 2 pi I0 / (n + 1).
 *
 * @param axial - Intensity along the axis in candelas.
 * @param power - n, above -1; 1 is a matt source, greater is narrower.
 * @returns Lumens.
 */
export function cosinePowerFlux(axial: number, power: number): number {
  return (2 * Math.PI * axial) / (power + 1);
}
