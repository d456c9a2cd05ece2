/** The wavelength to which the eye answers most by day, m: 555 nm (CIE 018:2019). */
export const GREEN = 555e-9;

/**
 * Diameter of the first dark ring of a round opening over wavelength and f-number: twice the first zero of the Bessel
 * function J1, 3.831705970 (Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 9.5), over pi; the
 * usual 2.44.
 */
const RING = (2 * 3.831_705_970_207_512) / Math.PI;

/**
 * Diameter on the sensor of the first dark ring that diffraction draws round a point, the Airy disc:
 * 2.44 wavelength N (1 + m). Source: Ray, Applied Photographic Optics (2002), on diffraction and the effective
 * aperture; the formula is standard, the page from memory.
 *
 * @param fNumber - The set f-number N, above 0.
 * @param scale - Magnification m, 0 or more.
 * @param wavelength - Of the light, m.
 * @returns Diameter in m.
 */
export function airyDisc(fNumber: number, scale: number, wavelength: number = GREEN): number {
  return RING * wavelength * fNumber * (1 + scale);
}
