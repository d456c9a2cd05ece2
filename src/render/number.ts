import { nominalShutter } from "../units/nominal.js";

/** The only place where numbers of a report are rounded. Nothing here computes with what it has rounded. */

/** What stands where a value cannot be had. */
export const NOTHING = "-";

/** Halves go away from zero, as people round; a result of zero has no sign. Not finite: a dash. */
export function fixed(value: number | null, digits: number): string {
  if (value === null || !Number.isFinite(value)) return NOTHING;
  const nudged = value * (1 + 4 * Number.EPSILON);
  const text = (Number.isFinite(nudged) ? nudged : value).toFixed(digits);
  return /^-[0.]+$/.test(text) ? text.slice(1) : text;
}

/** So many significant digits, without an exponent between 0.001 and 10 million. */
export function significant(value: number | null, digits: number): string {
  if (value === null || !Number.isFinite(value)) return NOTHING;
  if (value === 0) return "0";
  const size = Math.abs(value);
  if (size < 0.001 || size >= 1e7) return value.toExponential(digits - 1).replace("e+", "e");
  const rounded = Number(value.toPrecision(digits));
  const whole = Math.floor(Math.log10(Math.abs(rounded))) + 1;
  return rounded.toFixed(Math.max(0, digits - whole));
}

/** The same without zeros at the end behind the point: for what people set and do not measure. */
export function shortest(value: number | null, digits: number): string {
  const text = significant(value, digits);
  return /^-?\d+\.\d+$/.test(text) ? text.replace(/\.?0+$/, "") : text;
}

const withUnit = (text: string, unit: string): string => (text === NOTHING ? text : `${text} ${unit}`);

/** A length in metres to the centimetre: `2.61 m`. */
export const metres = (value: number | null): string => withUnit(fixed(value, 2), "m");

/** A length in metres shown in centimetres: `12 cm`. */
export function centimetres(value: number | null): string {
  if (value === null) return NOTHING;
  const cm = value * 100;
  return withUnit(fixed(cm, Math.abs(cm) < 9.95 && Math.abs(cm - Math.round(cm)) > 0.05 ? 1 : 0), "cm");
}

/** A length in millimetres: one decimal below 10 mm, none above. */
export const millimetres = (value: number | null): string =>
  withUnit(fixed(value, value !== null && Math.abs(value) < 9.95 ? 1 : 0), "mm");

/** An angle in degrees to a tenth: `19.8 deg`; whole degrees from 100 on. */
export const degrees = (value: number | null): string =>
  withUnit(fixed(value, value !== null && Math.abs(value) >= 99.95 ? 0 : 1), "deg");

/** Stops to a tenth, without a sign for those above zero. */
export const stops = (value: number | null): string => withUnit(fixed(value, 1), "stop");

/** Stops to a tenth with their sign: `+0.7`, `-1.0`, `0.0`. */
export function signedStops(value: number | null): string {
  const text = fixed(value, 1);
  return text === NOTHING || text.startsWith("-") || text === "0.0" ? text : `+${text}`;
}

/** A luminous exposure, three digits: `27.9 lx s`. */
export const luxSeconds = (value: number | null): string => withUnit(significant(value, 3), "lx s");

/** A luminous energy, three digits: `2860 lm s`. */
export const lumenSeconds = (value: number | null): string => withUnit(significant(value, 3), "lm s");

/** A colour temperature to ten kelvin: `5600 K`. */
export const kelvin = (value: number | null): string =>
  withUnit(fixed(value === null ? null : Math.round(value / 10) * 10, 0), "K");

/** A share of a whole in per cent: `42 %`. */
export const perCent = (share: number | null): string =>
  withUnit(fixed(share === null ? null : share * 100, 0), "%");

/** A shutter time as people set it: `1/200 s`, `0.4 s`, `2 s`; times of the series by their nominal writing. */
export function shutterTime(seconds: number | null): string {
  if (seconds === null || !Number.isFinite(seconds) || seconds <= 0) return NOTHING;
  const nominal = nominalShutter(seconds);
  if (nominal !== null) return `${nominal} s`;
  if (seconds < 0.3)
    return `1/${fixed(1 / seconds, 1 / seconds < 9.95 && !isNearWhole(1 / seconds) ? 1 : 0)} s`;
  return `${fixed(seconds, isNearWhole(seconds) ? 0 : 1)} s`;
}

const isNearWhole = (value: number): boolean => Math.abs(value - Math.round(value)) < 0.05;

/** A number for JSON and CSV: 12 significant digits, so that the last bits of a machine never show; never -0. */
export function exact(value: number): number {
  if (!Number.isFinite(value)) return value;
  return Number(value.toPrecision(12)) + 0;
}

/** Mired without decimals, with their sign: `+134`, `-20`, `0`. */
export function signedMired(value: number | null): string {
  const text = fixed(value, 0);
  return text === NOTHING || text.startsWith("-") || text === "0" ? text : `+${text}`;
}
