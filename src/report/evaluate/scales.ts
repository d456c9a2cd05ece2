import { exp2 } from "../../core/exp2.js";
import type { ResultType } from "../../model/values.js";
import type { Found } from "./found.js";

/** The scale on which two values of a type are compared. */
export type Judged = "stops" | "mired" | "own";

/** The scale of a type: stops for whatever is read on a meter or a dial, mired for colour, else the value itself. */
export function judgedScale(type: ResultType): Judged {
  switch (type) {
    case "reading":
    case "f-number":
    case "contrast":
    case "exposure":
    case "illuminance":
    case "luminous-energy":
    case "ev":
    case "stops":
      return "stops";
    case "colour-temperature":
    case "mired":
      return "mired";
    case "angle":
    case "length":
    case "number":
    case "energy":
    case "time":
    case "truth":
      return "own";
    default:
      return type satisfies never;
  }
}

/**
 * The place of a value on the scale on which its type is judged, higher for more light: twice the logarithm of an
 * f-number, the logarithm of an exposure, the stops of a contrast. Null where it has none.
 */
export function placeOnScale(found: Found): number | null {
  const { type, value } = found;
  if (value === null) return null;
  switch (type) {
    case "reading":
    case "f-number":
      return value > 0 ? 2 * Math.log2(value) : null;
    case "exposure":
    case "illuminance":
    case "luminous-energy":
      return value > 0 ? Math.log2(value) : null;
    case "colour-temperature":
      return value > 0 ? 1e6 / value : null;
    default:
      return value;
  }
}

/** The value of a type at a place on its scale; the way back of `placeOnScale`. */
export function valueAtPlace(type: ResultType, place: number): number | null {
  switch (type) {
    case "reading":
    case "f-number":
      return exp2(place / 2);
    case "exposure":
    case "illuminance":
    case "luminous-energy":
      return exp2(place);
    case "colour-temperature":
      return place > 0 ? 1e6 / place : null;
    default:
      return place;
  }
}

/** True for values that are points on a scale and take differences, not sums: f/8 + 1 stop. */
export function isPoint(type: ResultType): boolean {
  return (
    type === "reading" ||
    type === "f-number" ||
    type === "ev" ||
    type === "contrast" ||
    type === "colour-temperature"
  );
}
