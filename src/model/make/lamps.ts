import { quote } from "../../core/quote.js";
import type { CandelaTable } from "../../photometry/index.js";
import { say } from "../../units/make.js";
import type {
  Angle,
  Efficacy,
  Energy,
  Flux,
  FStop,
  Intensity,
  IntensityTime,
  Length,
  LuminousEnergy,
  Mired,
  Plain,
  Sensitivity,
  Stops,
} from "../../units/quantity.js";
import type {
  ArmsValue,
  BeamValue,
  CalibrationValue,
  DialValue,
  GelsValue,
  GelValue,
  OutputValue,
  PowerValue,
  ShapeValue,
} from "../values.js";
import { writeBy } from "./sizes.js";

/** A round flat opening of this diameter. */
export function disc(diameter: Length): ShapeValue {
  return { kind: "disc", diameter, written: `disc(${say(diameter)})` };
}

/** A bare round bulb of this diameter. */
export function sphere(diameter: Length): ShapeValue {
  return { kind: "sphere", diameter, written: `sphere(${say(diameter)})` };
}

/** A flat rectangular opening. */
export function rectangle(width: Length, height: Length): ShapeValue {
  return { kind: "rectangle", width, height, written: `rectangle(${writeBy([width, height])})` };
}

/** A bare tube; `length` includes its rounded ends. */
export function capsule(length: Length, diameter: Length): ShapeValue {
  return { kind: "capsule", length, diameter, written: `capsule(${say(length)}, ${say(diameter)})` };
}

/** One reading of a flat receptor on the lamp's axis at full power, without room bounce. */
export function metered(fNumber: FStop, distance: Length, iso: Sensitivity): CalibrationValue {
  return {
    kind: "metered",
    fNumber,
    at: distance,
    iso,
    written: `metered(${say(fNumber)}, at: ${say(distance)}, ${say(iso)})`,
  };
}

/** A guide number in metres at an ISO value (ISO 1230 states it for ISO 100). */
export function guideNumber(metres: Length, iso: Sensitivity): CalibrationValue {
  return { kind: "guide_number", number: metres, iso, written: `guide_number(${say(metres)}, ${say(iso)})` };
}

/** Watt-seconds of full power with a luminous efficacy of head and modifier together. */
export function efficacy(value: Efficacy): CalibrationValue {
  return { kind: "efficacy", efficacy: value, written: `efficacy(${say(value)})` };
}

/** An LM-63 file, with the candela seconds that it gives along its axis. */
export function candelas(file: string, axial: number): CalibrationValue {
  return { kind: "candelas", file, axial, written: `candelas(${quote(file)})` };
}

/** Output stated as luminous energy, flux, intensity or intensity over the flash. */
export function output(amount: LuminousEnergy | Flux | Intensity | IntensityTime): OutputValue {
  const kind =
    amount.unit === "lm s"
      ? "luminous_energy"
      : amount.unit === "lm"
        ? "flux"
        : amount.unit === "cd"
          ? "intensity"
          : "intensity_time";
  return { kind, amount, written: say(amount) };
}

/** Full power. */
export const full: PowerValue = { kind: "full", written: "full" };
/** Switched off. */
export const off: PowerValue = { kind: "off", written: "off" };

/** A fraction of full power; `share` keeps how it is written, for example `1/4`. */
export function fractionOfFull(share: Plain): PowerValue {
  return { kind: "fraction", fraction: share, written: say(share) };
}

/** So many stops below full power. */
export function belowFull(stops: Stops): PowerValue {
  return { kind: "below", stops, written: `full - ${say(stops)}` };
}

/** A setting in watt-seconds. */
export function setTo(energy: Energy): PowerValue {
  return { kind: "energy", energy, written: say(energy) };
}

/** A number on the dial. */
export function dialNumber(number: Plain): PowerValue {
  return { kind: "dial", number, written: `dial(${say(number)})` };
}

/** What dial numbers mean: the number of full power, and the step of numbers that is one stop. */
export function dial(full: Plain, perStop: Plain): DialValue {
  return { full, perStop, written: `numbers(${say(full)} is full, ${say(perStop)} is 1 stop)` };
}

/** The same brightness from every direction in front. */
export const lambertian: BeamValue = { kind: "lambertian", written: "lambertian" };

/** The beam that an LM-63 file gives. */
export function measured(file: string, { system, vertical, horizontal, candela }: CandelaTable): BeamValue {
  const photometry = { system, vertical, horizontal, candela };
  return { kind: "measured", file, photometry, written: `measured(${quote(file)})` };
}

/** Intensity as a power of the cosine off the axis; 1 is Lambertian. */
export function cosinePower(exponent: Plain): BeamValue {
  return { kind: "cosine_power", exponent, written: `cosine_power(${say(exponent)})` };
}

/** One gel. `shift` is its size; its direction is the tint. */
export function gel(tint: GelValue["tint"], shift: Mired, loses: Stops): GelValue {
  const said = [tint === "neutral" ? "" : say(shift), loses.value === 0 ? "" : `loses: ${say(loses)}`];
  return { tint, shift, loses, written: `${tint}(${said.filter((part) => part !== "").join(", ")})` };
}

/** Gels in front of a lamp. */
export function gels(...items: readonly GelValue[]): GelsValue {
  const said = items.map((item) => item.written);
  return { items, written: said.length === 1 ? (said[0] ?? "") : `[${said.join(", ")}]` };
}

/** How the arms are held; `elevation` is above the horizontal. */
export function arms(kind: "hanging" | "raised"): ArmsValue;
export function arms(kind: "spread" | "ahead", elevation: Angle): ArmsValue;
export function arms(kind: ArmsValue["kind"], elevation?: Angle): ArmsValue {
  if (kind === "hanging" || kind === "raised") return { kind, written: kind };
  if (elevation === undefined) throw new Error(`arms that are ${kind} need an elevation`);
  return { kind, elevation, written: `${kind}(${say(elevation)})` };
}
