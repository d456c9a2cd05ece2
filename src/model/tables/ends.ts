import type { Quantity } from "../../units/quantity.js";
import { findUnit, fromBase, toBase } from "../../units/spellings.js";
import type { ValueType } from "../../vocabulary/value-types.js";
import type {
  BearingValue,
  DirectionValue,
  OutputValue,
  PowerValue,
  SurfaceValue,
  TapeValue,
} from "../values.js";
import type { StepForm } from "./types.js";

/** One end of a stepped sweep as a number. */
export interface End {
  readonly form: StepForm;
  readonly number: number;
  /** The unit of the number: one of the language's, `f`, `ISO`, or nothing for a plain number. */
  readonly unit: string;
  /** The base unit. */
  readonly base: Quantity["unit"];
}

/** A quantity in the unit in which it was written. */
export function quantityEnd(q: Quantity, form: StepForm = "plain"): End {
  if (q.unit === "f" || q.unit === "ISO") return { form, number: q.value, unit: q.unit, base: q.unit };
  const row = findUnit(/(?:^|\d)\s*([^\d\s][^\d]*)$/.exec(q.written)?.[1]?.trim() ?? "");
  if (row === null || row.base !== q.unit) return { form, number: q.value, unit: baseUnit(q), base: q.unit };
  return { form, number: Number(fromBase(row, q.value).toPrecision(15)), unit: row.name, base: q.unit };
}

const baseUnit = (q: Quantity): string => (q.unit === "1" ? "" : q.unit === "J" ? "Ws" : q.unit);

/** The value of a property as an end of a sweep; null where its type, or this value of it, has no steps. */
export function endOf(type: ValueType, value: unknown, name: string): End | null {
  switch (type) {
    case "length":
    case "angle":
    case "energy":
    case "watts":
    case "mass":
    case "illuminance":
    case "fraction":
    case "number":
    case "aperture":
    case "sensitivity":
    case "temperature":
    case "stops":
    case "mired":
    case "scale":
      return quantityEnd(value as Quantity);
    case "time":
      return quantityEnd(value as Quantity, name === "shutter" || name === "sync" ? "shutter" : "plain");
    case "tape": {
      const { length, from } = value as TapeValue;
      return from === null ? quantityEnd(length, "tape") : null;
    }
    case "bearing":
      return bearingEnd(value as BearingValue, "bearing");
    case "direction": {
      const direction = value as DirectionValue;
      return direction.kind === "bearing" ? bearingEnd(direction.bearing, "direction") : null;
    }
    case "power":
      return powerEnd(value as PowerValue);
    case "output":
      return quantityEnd((value as OutputValue).amount, "output");
    case "surface": {
      const surface = value as SurfaceValue;
      return surface.name === null ? quantityEnd(surface.reflectance, "surface") : null;
    }
    default:
      return null;
  }
}

/** Types of value that go in steps. */
export const stepped: ReadonlySet<ValueType> = new Set([
  "length",
  "angle",
  "time",
  "energy",
  "watts",
  "mass",
  "illuminance",
  "fraction",
  "number",
  "aperture",
  "sensitivity",
  "temperature",
  "stops",
  "mired",
  "scale",
  "tape",
  "bearing",
  "direction",
  "power",
  "output",
  "surface",
]);

function bearingEnd({ side, angle }: BearingValue, form: StepForm): End {
  const end = quantityEnd(angle, form);
  return side === "left" ? { ...end, number: -end.number + 0 } : end;
}

/** Powers go in stops below full; watt-seconds and dial numbers as they are. */
function powerEnd(power: PowerValue): End | null {
  const stops = (number: number): End => ({ form: "stops-below", number, unit: "stop", base: "stop" });
  switch (power.kind) {
    case "full":
      return stops(0);
    case "below":
      return stops(power.stops.value);
    case "fraction":
      return stops(-Math.log2(power.fraction.value) + 0);
    case "energy":
      return quantityEnd(power.energy, "energy");
    case "dial":
      return quantityEnd(power.number, "dial");
    case "off":
      return null;
    default:
      return power satisfies never;
  }
}

/** A number in the unit of the other end. */
export function converted(end: End, unit: string): number {
  const [own, other] = [findUnit(end.unit), findUnit(unit)];
  if (end.unit === unit || own === null || other === null) return end.number;
  return Number(fromBase(other, toBase(own, end.number)).toPrecision(15));
}
