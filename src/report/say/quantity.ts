import { exp2 } from "../../core/exp2.js";
import { splitFNumber } from "../../physics/aperture-scale.js";
import { nominalShutter } from "./nominal.js";
import { fixed, twoFigures } from "./number.js";

/** A length in metres as one would read it off a tape: `2.30 m`, `35 cm`, `5 cm`, `8.3 mm`. */
export function sayLength(metres: number): string {
  const size = Math.abs(metres);
  if (size >= 0.995) return `${fixed(metres, 2)} m`;
  if (size >= 0.0995) return `${fixed(metres * 100, 0)} cm`;
  if (size >= 0.00995) return `${twoFigures(metres * 100)} cm`;
  return size === 0 ? "0 cm" : `${twoFigures(metres * 1000)} mm`;
}

/** A length in centimetres without decimals: a room that is left, a clearance. */
export function sayCentimetres(metres: number): string {
  return `${fixed(metres * 100, 0)} cm`;
}

/** The width of a shadow's edge, in metres, said in millimetres: a decimal below 100 mm, two figures below 1 mm. */
export function sayEdge(metres: number): string {
  const size = metres * 1000;
  return `${size < 0.95 ? twoFigures(size) : fixed(size, size < 99.95 ? 1 : 0)} mm`;
}

/** An angle in degrees: two decimals below 1, one below 10, none above. */
export function sayAngle(degrees: number): string {
  const size = Math.abs(degrees);
  return `${fixed(degrees, size < 0.995 ? 2 : size < 9.95 ? 1 : 0)} deg`;
}

/** A number of stops with one decimal. */
export function sayStops(stops: number): string {
  return `${fixed(stops, 1)} stop`;
}

/** An exact f-number as meters show it, full stop and tenths: `f/8 +0.7`, and `f/8` where nothing is over. */
export function sayFNumber(fNumber: number): string {
  const { base, tenths } = splitFNumber(fNumber);
  return tenths === 0 ? `f/${base}` : `f/${base} +0.${tenths}`;
}

/** A contrast in stops, as ratio and stops: `2.9:1 (1.5 stop)`. */
export function sayContrast(stops: number): string {
  const ratio = exp2(Math.abs(stops));
  const text =
    ratio > 500 ? "more than 500" : ratio >= 9.95 ? fixed(ratio, 0) : fixed(ratio, 1).replace(/\.0$/, "");
  return stops < 0 ? `1:${text} (${sayStops(stops)})` : `${text}:1 (${sayStops(stops)})`;
}

/** A share as a whole per cent. */
export function sayPercent(share: number): string {
  return `${fixed(share * 100, 0)} %`;
}

/** An exposure time: `1/200 s`, `0.5 s`, `2 s`; a series value by its nominal number (1/60 s for 1/64 s). */
export function sayTime(seconds: number): string {
  const nominal = nominalShutter(seconds);
  if (nominal !== null) return nominal;
  return seconds < 0.3 ? `1/${fixed(1 / seconds, 0)} s` : `${twoFigures(seconds)} s`;
}

/** A temperature of colour. */
export function sayKelvin(kelvin: number): string {
  return `${fixed(kelvin, 0)} K`;
}

/** A mass in kilograms. */
export function sayMass(kilograms: number): string {
  return `${fixed(kilograms, 1).replace(/\.0$/, "")} kg`;
}
