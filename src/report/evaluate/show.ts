import type { ResultType } from "../../model/values.js";
import { fixed, threeFigures } from "../say/number.js";
import {
  sayAngle,
  sayContrast,
  sayEdge,
  sayFNumber,
  sayKelvin,
  sayLength,
  sayStops,
  sayTime,
} from "../say/quantity.js";
import type { Found } from "./found.js";

/**
 * A value in the words of its own type: `f/8 +0.2`, `2.9:1 (1.5 stop)`, `0.92 deg`, `8.3 mm`; null without one. `fine`
 * gives angles and stops one figure more, for what is held against a tolerance.
 */
export function show(found: Found, fine = false): string | null {
  const { type, value, edge } = found;
  if (value === null) return null;
  switch (type) {
    case "reading":
    case "f-number":
      return sayFNumber(value);
    case "contrast":
      return sayContrast(value);
    case "stops":
      return fine ? `${fixed(value, 2)} stop` : sayStops(value);
    case "angle":
      return fine ? `${fixed(value, Math.abs(value) < 0.995 ? 2 : 1)} deg` : sayAngle(value);
    case "length":
      return edge ? sayEdge(value) : sayLength(value);
    case "number":
      return found.share === true ? `${fixed(value * 100, 1)} %` : threeFigures(value);
    case "exposure":
      return `${threeFigures(value)} lx s`;
    case "illuminance":
      return `${threeFigures(value)} lx`;
    case "ev":
      return `EV ${fixed(value, 1)}`;
    case "colour-temperature":
      return sayKelvin(value);
    case "mired":
      return `${fixed(value, 0)} mired`;
    case "energy":
      return `${threeFigures(value)} Ws`;
    case "luminous-energy":
      return `${threeFigures(value)} lm s`;
    case "time":
      return sayTime(value);
    case "truth":
      return value === 0 ? "no" : "yes";
    default:
      return type satisfies never;
  }
}

/** The unit of a value in the report: metres but millimetres for edges, stops for a contrast. */
export function unitOf(found: Found): string {
  const units: Readonly<Record<ResultType, string>> = {
    reading: "f",
    "f-number": "f",
    contrast: "stop",
    stops: "stop",
    angle: "deg",
    length: found.edge ? "mm" : "m",
    number: "1",
    exposure: "lx s",
    illuminance: "lx",
    ev: "EV",
    "colour-temperature": "K",
    mired: "mired",
    energy: "J",
    "luminous-energy": "lm s",
    time: "s",
    truth: "truth",
  };
  return units[found.type];
}

/** The value in that unit. */
export function reportValue(found: Found): number | null {
  if (found.value === null) return null;
  return found.edge ? found.value * 1000 : found.value;
}
