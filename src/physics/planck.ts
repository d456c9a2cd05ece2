import { type Chromaticity, type Uv, uvFromXy } from "./chromaticity.js";
import { FIRST_NM, X_BAR, Y_BAR, Z_BAR } from "./data/cie-1931-observer.js";

/** Second radiation constant in metre kelvin, as CIE 15 uses it for colorimetry. */
export const SECOND_RADIATION_CONSTANT = 1.4388e-2;

/** Lowest and highest temperature in kelvin for which the sums below are meant. */
export const PLANCK_RANGE_K = { least: 500, greatest: 1_000_000 } as const;

/** A point of the Planckian locus in u, v, and how it moves with reciprocal temperature. */
interface LocusPoint extends Uv {
  readonly du: number;
  readonly dv: number;
}

/**
 * Chromaticity of a black body: Planck's law with c2 = 1.4388e-2 m K, CIE 1931 2-degree observer, 1 nm sum from
 * 360 nm to 830 nm (CIE 15:2018).
 *
 * @param kelvin - Temperature, 500 to 1000000 K.
 */
export function planckChromaticity(kelvin: number): Chromaticity {
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0; i < Y_BAR.length; i += 1) {
    const micrometres = (FIRST_NM + i) * 1e-3;
    const power = planckPower(micrometres, (SECOND_RADIATION_CONSTANT * 1e6) / (micrometres * kelvin));
    x += power * X_BAR[i]!;
    y += power * Y_BAR[i]!;
    z += power * Z_BAR[i]!;
  }
  const sum = x + y + z;
  return { x: x / sum, y: y / sum };
}

/**
 * CIE 1960 u, v of a black body, by the same sum.
 *
 * @param kelvin - Temperature, 500 to 1000000 K.
 */
export function planckUv(kelvin: number): Uv {
  return uvFromXy(planckChromaticity(kelvin));
}

/**
 * A point of the locus and its derivative by reciprocal temperature, both from one pass over the table.
 *
 * @param mired - Reciprocal temperature in mired, 1 to 2000.
 */
export function planckLocus(mired: number): LocusPoint {
  let x = 0;
  let y = 0;
  let z = 0;
  let dx = 0;
  let dy = 0;
  let dz = 0;
  for (let i = 0; i < Y_BAR.length; i += 1) {
    const micrometres = (FIRST_NM + i) * 1e-3;
    const perMired = SECOND_RADIATION_CONSTANT / micrometres;
    const power = planckPower(micrometres, perMired * mired);
    const slope = -power * perMired * (1 + power * fifthPower(micrometres));
    x += power * X_BAR[i]!;
    y += power * Y_BAR[i]!;
    z += power * Z_BAR[i]!;
    dx += slope * X_BAR[i]!;
    dy += slope * Y_BAR[i]!;
    dz += slope * Z_BAR[i]!;
  }
  const below = x + 15 * y + 3 * z;
  const belowChange = dx + 15 * dy + 3 * dz;
  const u = (4 * x) / below;
  const v = (6 * y) / below;
  return { u, v, du: (4 * dx - u * belowChange) / below, dv: (6 * dy - v * belowChange) / below };
}

/** Planck's law up to a constant factor. */
function planckPower(micrometres: number, exponent: number): number {
  return 1 / (fifthPower(micrometres) * Math.expm1(exponent));
}

function fifthPower(value: number): number {
  const square = value * value;
  return square * square * value;
}
