import type { Chromaticity, Uv } from "./chromaticity.js";

/**
 * Cubic approximation of the Planckian locus by Kang and others (J. Korean Phys. Soc. 41 (2002) 865). Up to 3e-4 off;
 * `planckChromaticity` is exact.
 *
 * @param kelvin - Temperature, 1667 to 25000 K.
 * @returns Chromaticity, or undefined outside that range.
 */
export function planckKang(kelvin: number): Chromaticity | undefined {
  if (!(kelvin >= 1667 && kelvin <= 25_000)) return undefined;
  const r = 1000 / kelvin;
  const x =
    kelvin <= 4000
      ? ((-0.2661239 * r - 0.234358) * r + 0.8776956) * r + 0.17991
      : ((-3.0258469 * r + 2.1070379) * r + 0.2226347) * r + 0.24039;
  let y: number;
  if (kelvin <= 2222) y = ((-1.1063814 * x - 1.3481102) * x + 2.18555832) * x - 0.20219683;
  else if (kelvin <= 4000) y = ((-0.9549476 * x - 1.37418593) * x + 2.09137015) * x - 0.16748867;
  else y = ((3.081758 * x - 5.8733867) * x + 3.75112997) * x - 0.37001483;
  return { x, y };
}

/**
 * Rational approximation of the Planckian locus by Krystek (Color Res. Appl. 10 (1985) 38). Up to 1e-4 off.
 *
 * @param kelvin - Temperature, 1000 to 15000 K.
 * @returns CIE 1960 u, v, or undefined outside that range.
 */
export function planckKrystek(kelvin: number): Uv | undefined {
  if (!(kelvin >= 1000 && kelvin <= 15_000)) return undefined;
  const t = kelvin;
  const u =
    ((1.28641212e-7 * t + 1.54118254e-4) * t + 0.860117757) / ((7.08145163e-7 * t + 8.42420235e-4) * t + 1);
  const v =
    ((4.20481691e-8 * t + 4.22806245e-5) * t + 0.317398726) / ((1.61456053e-7 * t - 2.89741816e-5) * t + 1);
  return { u, v };
}
