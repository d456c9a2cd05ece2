import { exp2 } from "../core/exp2.js";

/**
 * The nominal series of the trade. A value on it stands for its exact third-stop value, so that stops add up:
 * f/11 is 11.31, 1/60 s is 1/64 s, ISO 320 is 317.5. Anything else is taken as written.
 * The nominal values are common practice (ISO 517, ISO 2720 and ISO 12232 list rounded series; from memory).
 */

/** An exact power of two to thirds of a stop: halves and doubles without rounding, the thirds between by `exp`. */
function thirdStop(thirds: number): number {
  const whole = Math.floor(thirds / 3);
  const rest = thirds - whole * 3;
  let value = rest === 0 ? 1 : exp2(rest / 3);
  for (let i = 0; i < Math.abs(whole); i++) value = whole > 0 ? value * 2 : value / 2;
  return value;
}

const apertures = [
  "0.7 0.8 0.9 1 1.1 1.2 1.4 1.6 1.8 2 2.2 2.5 2.8 3.2 3.5 4 4.5 5 5.6 6.3 7.1 8 9 10 11 13 14 16 18 20 22 25 29 32",
  "36 40 45 51 57 64 72 80 90",
]
  .join(" ")
  .split(" ");

const apertureByNumber: ReadonlyMap<number, number> = new Map(
  apertures.map((text, index) => {
    const thirds = index - 3;
    return [Number(text), Math.sqrt(thirdStop(thirds))] as const;
  }),
);

/** The exact f-number that a nominal one stands for (f/11 is the square root of 128); others come back unchanged. */
export function exactFNumber(written: number): number {
  return apertureByNumber.get(written) ?? written;
}

/** The nominal number of an exact series f-number, as on a lens: 5.6 for the square root of 32; null for others. */
export function nominalFNumber(exact: number): number | null {
  for (const [number, own] of apertureByNumber) if (Math.abs(own / exact - 1) < 1e-9) return number;
  return null;
}

const shutterFractions = (
  "1.3 1.6 2 2.5 3 4 5 6 8 10 13 15 20 25 30 40 50 60 80 100 125 160 200 250 320 400 500 640 800 1000 1250 1600 " +
  "2000 2500 3200 4000 5000 6400 8000"
)
  .split(" ")
  .map(Number);
const shutterSeconds = "1 1.3 1.6 2 2.5 3.2 4 5 6 8 10 13 15 20 25 30".split(" ").map(Number);

/** The exact exposure time that a nominal one stands for, in seconds (1/60 is 1/64); others come back unchanged. */
export function exactShutter(seconds: number): number {
  for (const [index, n] of shutterFractions.entries()) {
    if (Math.abs(seconds * n - 1) < 1e-9) return 1 / thirdStop(index + 1);
  }
  for (const [index, n] of shutterSeconds.entries()) {
    if (Math.abs(seconds - n) < 1e-9 * n) return thirdStop(index);
  }
  // 0.3 to 0.8 s are written as decimals as often as fractions.
  for (const [text, thirds] of [
    [0.8, -1],
    [0.6, -2],
    [0.4, -4],
    [0.3, -5],
  ] as const) {
    if (Math.abs(seconds - text) < 1e-12) return thirdStop(thirds);
  }
  return seconds;
}

/**
 * The nominal writing of an exact series time, as on a camera: `1/200` for 1/203.19 s, `30` for 32 s. Null for a time
 * that is not on the series.
 */
export function nominalShutter(seconds: number): string | null {
  const same = (exact: number): boolean => Math.abs(exact / seconds - 1) < 1e-6;
  const under = shutterFractions.find((n) => same(exactShutter(1 / n)));
  if (under !== undefined) return `1/${under}`;
  const over = shutterSeconds.find((n) => same(exactShutter(n)));
  return over === undefined ? null : String(over);
}

const isoSeries = (
  "25 32 40 50 64 80 100 125 160 200 250 320 400 500 640 800 1000 1250 1600 2000 2500 3200 4000 5000 6400 8000 " +
  "10000 12800 16000 20000 25600 32000 40000 51200 64000 80000 102400"
)
  .split(" ")
  .map(Number);

/** The nominal number of an exact series ISO value; null for others. */
export function nominalIso(exact: number): number | null {
  return isoSeries.find((number) => Math.abs(exactIso(number) / exact - 1) < 1e-9) ?? null;
}

/** The exact ISO value that a nominal one stands for, counted from ISO 100; others come back unchanged. */
export function exactIso(written: number): number {
  const index = isoSeries.indexOf(written);
  return index < 0 ? written : 100 * thirdStop(index - 6);
}
