import type { BaseUnit } from "./dimension.js";

/** How far a value may be off. Relative ones are shares of the value (0.05 for 5 %). */
export interface Spread {
  readonly value: number;
  /** `%` for a share of the value, `stop` or `mired` on a scale, else the value's own unit. */
  readonly unit: BaseUnit | "%";
  readonly written: string;
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
}

export type Length = Quantity<"m">;
export type Angle = Quantity<"deg">;
export type Time = Quantity<"s">;
export type Energy = Quantity<"J">;
export type Watts = Quantity<"W">;
export type Mass = Quantity<"kg">;
export type Plain = Quantity<"1">;
export type FStop = Quantity<"f">;
export type Sensitivity = Quantity<"ISO">;
export type ExposureValue = Quantity<"EV">;
export type Kelvin = Quantity<"K">;
export type Stops = Quantity<"stop">;
export type Mired = Quantity<"mired">;
export type Illuminance = Quantity<"lx">;
export type LuminousEnergy = Quantity<"lm s">;
export type Flux = Quantity<"lm">;
export type Intensity = Quantity<"cd">;
export type IntensityTime = Quantity<"cd s">;
export type Efficacy = Quantity<"lm/W">;
