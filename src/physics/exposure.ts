/**
 * The exposure equations of ISO 2720:1974. N is the exact f-number, t the exposure time in seconds, S the ISO speed,
 * E the illuminance in lx, L the luminance in cd/m2, H the luminous exposure in lx s at the subject, C and K the
 * constants of the meter (C = 250 lx s for a flat receptor and K = 12.5 cd s/m2 are common). All are above 0.
 */

/** Exposure time (s) by the incident-light equation: t = N^2 C / (E S). */
export function incidentTime(illuminance: number, iso: number, fNumber: number, c: number): number {
  return (fNumber * fNumber * c) / (illuminance * iso);
}

/** f-number by the incident-light equation: N = sqrt(E S t / C). */
export function incidentFNumber(illuminance: number, iso: number, time: number, c: number): number {
  return Math.sqrt((illuminance * iso * time) / c);
}

/** Illuminance (lx) that settings ask for: E = N^2 C / (t S). */
export function requiredIlluminance(fNumber: number, time: number, iso: number, c: number): number {
  return (fNumber * fNumber * c) / (time * iso);
}

/** Exposure time (s) by the reflected-light equation: t = N^2 K / (L S). */
export function reflectedTime(luminance: number, iso: number, fNumber: number, k: number): number {
  return (fNumber * fNumber * k) / (luminance * iso);
}

/** Luminance (cd/m2) that settings ask for: L = N^2 K / (t S). */
export function requiredLuminance(fNumber: number, time: number, iso: number, k: number): number {
  return (fNumber * fNumber * k) / (time * iso);
}

/** The reflectance (0 to 1) of the matt surface at which both kinds of meter agree: pi K / C. */
export function calibratedReflectance(k: number, c: number): number {
  return (Math.PI * k) / c;
}

/** f-number from the luminous exposure of a flash (lx s): N = sqrt(H S / C). Flash meters: ISO 10157:1991. */
export function flashFNumber(luminousExposure: number, iso: number, c: number): number {
  return Math.sqrt((luminousExposure * iso) / c);
}

/** Luminous exposure (lx s) that an f-number asks for: H = N^2 C / S. */
export function flashRequiredExposure(fNumber: number, iso: number, c: number): number {
  return (fNumber * fNumber * c) / iso;
}

/** f-number from flash and steady light together: exposures add, N^2 = (H + E t) S / C. */
export function mixedFNumber(flash: number, ambient: number, time: number, iso: number, c: number): number {
  return flashFNumber(flash + ambient * time, iso, c);
}

/** Share (0 to 1) of the exposure that comes from the steady light: E t / (H + E t); undefined without any light. */
export function ambientShare(flash: number, ambient: number, time: number): number | undefined {
  const steady = ambient * time;
  const sum = flash + steady;
  return sum > 0 ? steady / sum : undefined;
}

/**
 * Luminous exposure (lx s) on the sensor: H = q L t / N^2, with q = 0.65 for a common lens (the camera equation of
 * ISO 12232; the value of q from memory).
 */
export function focalPlaneExposure(luminance: number, time: number, fNumber: number, q: number): number {
  return (q * luminance * time) / (fNumber * fNumber);
}
