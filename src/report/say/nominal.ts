import { exactFNumber, exactIso, exactShutter } from "../../units/nominal.js";

/** A setting of a camera by the number that is on its dial and the exact value that it stands for. */
export interface NominalSetting {
  readonly text: string;
  readonly exact: number;
}

const times =
  "8000 6400 5000 4000 3200 2500 2000 1600 1250 1000 800 640 500 400 320 250 200 160 125 100 80 60 50 40 30 25 20 15 13 10 8 6 5 4";

const shutters: readonly NominalSetting[] = times
  .split(" ")
  .map((n) => ({ text: `1/${n} s`, exact: exactShutter(1 / Number(n)) }));

const speeds: readonly NominalSetting[] =
  "25 32 40 50 64 80 100 125 160 200 250 320 400 500 640 800 1000 1250 1600 2000 2500 3200 4000 5000 6400 12800 25600"
    .split(" ")
    .map((n) => ({ text: `ISO ${n}`, exact: exactIso(Number(n)) }));

const apertures: readonly NominalSetting[] =
  "1 1.1 1.2 1.4 1.6 1.8 2 2.2 2.5 2.8 3.2 3.5 4 4.5 5 5.6 6.3 7.1 8 9 10 11 13 14 16 18 20 22 25 29 32 36 40 45 51 57 64"
    .split(" ")
    .map((n) => ({ text: `f/${n}`, exact: exactFNumber(Number(n)) }));

/** The dial's text for an exact shutter time up to 1/4 s; null for a time that is on no dial. */
export function nominalShutter(seconds: number): string | null {
  return shutters.find((row) => Math.abs(row.exact / seconds - 1) < 1e-9)?.text ?? null;
}

/** The longest time of the series that is not longer than `seconds`; null where the series ends. */
export function shutterAtMost(seconds: number): NominalSetting | null {
  return [...shutters].reverse().find((row) => row.exact <= seconds * (1 + 1e-9)) ?? null;
}

/** The lowest ISO value of the series that is not below `iso`; null beyond ISO 25600. */
export function isoAtLeast(iso: number): NominalSetting | null {
  return speeds.find((row) => row.exact >= iso * (1 - 1e-9)) ?? null;
}

/** The highest ISO value of the series that is not above `iso`; null below ISO 25. */
export function isoAtMost(iso: number): NominalSetting | null {
  return [...speeds].reverse().find((row) => row.exact <= iso * (1 + 1e-9)) ?? null;
}

/** The widest aperture of the series that is not wider than `fNumber` (its number not below it); null beyond f/64. */
export function apertureAtLeast(fNumber: number): NominalSetting | null {
  return apertures.find((row) => row.exact >= fNumber * (1 - 1e-9)) ?? null;
}

/** The closest aperture of the series that is not above `fNumber`; null below f/1. */
export function apertureAtMost(fNumber: number): NominalSetting | null {
  return [...apertures].reverse().find((row) => row.exact <= fNumber * (1 + 1e-9)) ?? null;
}
