import type { BaseUnit } from "./dimension.js";

/** How far a value may be off. Relative ones are shares of the value (0.05 for 5 %). */
export interface Spread {
  readonly value: number;
  /** `%` for a share of the value, `stop` or `mired` on a scale, else the value's own unit. */
  readonly unit: BaseUnit | "%";
  readonly written: string;
}

/** By how much of its own tolerance a value is off with a measured number that other values may be off with as well. */
export interface SharedSpread {
  /** The measured number: a `let` by its file and place. */
  readonly tape: string;
  /** Its name. */
  readonly name: string;
  /** A share of the value's tolerance, with its sign; squares of all shares and of what is its own add up to 1. */
  readonly share: number;
}

/**
 * A number with its unit. `value` is always in the base unit `unit` (metres, degrees, seconds, joules ...);
 * `written` is how a recipe would say it, kept as the author wrote it. The unit is part of the type, so a length
 * cannot be handed over where an angle is wanted.
 */
export interface Quantity<U extends BaseUnit = BaseUnit> {
  readonly value: number;
  readonly unit: U;
  readonly written: string;
  readonly plusMinus?: Spread;
  /** Where its tolerance comes from, as far as that is a `let`. Like all origins, no part of the model as plain data. */
  readonly origin?: readonly SharedSpread[];
}

/** A length in metres. */
export type Length = Quantity<"m">;
/** An angle in degrees. */
export type Angle = Quantity<"deg">;
/** A time in seconds. */
export type Time = Quantity<"s">;
/** An energy in joules, which are watt-seconds. */
export type Energy = Quantity<"J">;
/** A power in watts. */
export type Watts = Quantity<"W">;
/** A mass in kilograms. */
export type Mass = Quantity<"kg">;
/** A plain number; a per cent is a share, 0.18 for 18 %. */
export type Plain = Quantity<"1">;
/** An f-number; nominal ones hold their exact series value. */
export type FStop = Quantity<"f">;
/** An ISO sensitivity; nominal ones hold their exact series value. */
export type Sensitivity = Quantity<"ISO">;
/** An exposure value. */
export type ExposureValue = Quantity<"EV">;
/** A colour temperature in kelvin. */
export type Kelvin = Quantity<"K">;
/** A difference in stops. */
export type Stops = Quantity<"stop">;
/** A difference in mired (1e6 over kelvin). */
export type Mired = Quantity<"mired">;
/** An illuminance in lux. */
export type Illuminance = Quantity<"lx">;
/** Luminous energy in lumen seconds. */
export type LuminousEnergy = Quantity<"lm s">;
/** Luminous flux in lumens. */
export type Flux = Quantity<"lm">;
/** Luminous intensity in candelas. */
export type Intensity = Quantity<"cd">;
/** Luminous intensity over a flash, in candela seconds. */
export type IntensityTime = Quantity<"cd s">;
/** Luminous efficacy in lumens to the watt, which are lumen seconds to the watt-second. */
export type Efficacy = Quantity<"lm/W">;
