import type { CandelaTable } from "../photometry/index.js";
import type {
  Angle,
  Efficacy,
  Energy,
  Flux,
  FStop,
  Illuminance,
  Intensity,
  IntensityTime,
  Kelvin,
  Length,
  LuminousEnergy,
  Mass,
  Mired,
  Plain,
  Quantity,
  Sensitivity,
  Stops,
  Time,
  Watts,
} from "../units/quantity.js";

/**
 * The values that properties hold. Whatever is not a bare text or word carries `written`, the canonical way to say it
 * in a recipe, so that a model prints back without knowing any syntax.
 */

/** A point, not yet turned into metres; see `scene` for that. */
export type PointValue =
  | {
      readonly kind: "coordinates";
      readonly x: Length;
      readonly y: Length;
      readonly z: Length;
      readonly written: string;
    }
  | {
      readonly kind: "offset";
      /** Null: from the subject's mark. */
      readonly from: PointValue | null;
      readonly left: Length | null;
      readonly right: Length | null;
      readonly ahead: Length | null;
      readonly behind: Length | null;
      readonly up: Length | null;
      readonly down: Length | null;
      readonly written: string;
    }
  /** Something of the recipe: `key`, `ana.face`, `camera`, `back.left`, `mark`. */
  | { readonly kind: "named"; readonly path: readonly string[]; readonly written: string }
  /** On the line from a to b, `tape` away from one of them. */
  | {
      readonly kind: "between";
      readonly a: PointValue;
      readonly b: PointValue;
      readonly tape: Length;
      readonly from: "a" | "b";
      readonly written: string;
    }
  | { readonly kind: "midpoint"; readonly a: PointValue; readonly b: PointValue; readonly written: string };

/** An angle to one side, as the camera sees it, from the direction towards the camera's side. */
export interface BearingValue {
  readonly side: "left" | "right";
  readonly angle: Angle;
  readonly written: string;
}

/** Where something looks: along a bearing, level; at a point; or straight up or down. */
export type DirectionValue =
  | { readonly kind: "bearing"; readonly bearing: BearingValue; readonly written: string }
  | { readonly kind: "point"; readonly point: PointValue; readonly written: string }
  | { readonly kind: "straight"; readonly word: "up" | "down"; readonly written: string };

/** A tape, and where its zero is if the recipe says so. */
export interface TapeValue {
  readonly length: Length;
  readonly from: PointValue | null;
  readonly written: string;
}

/** Width x height. */
export interface RectangleValue {
  readonly width: Length;
  readonly height: Length;
  readonly written: string;
}

/** Width x depth x height. */
export interface VolumeValue {
  readonly width: Length;
  readonly depth: Length;
  readonly height: Length;
  readonly written: string;
}

/** Width x height of a picture, in pixels. */
export interface PixelsValue {
  readonly width: number;
  readonly height: number;
  readonly written: string;
}

/** The lit opening of a lamp. Flat ones shine to their front, bulbs all round. */
export type ShapeValue =
  | { readonly kind: "disc"; readonly diameter: Length; readonly written: string }
  | { readonly kind: "sphere"; readonly diameter: Length; readonly written: string }
  | { readonly kind: "rectangle"; readonly width: Length; readonly height: Length; readonly written: string }
  /** A round tube with rounded ends; `length` includes them. */
  | {
      readonly kind: "capsule";
      readonly length: Length;
      readonly diameter: Length;
      readonly written: string;
    };

/** How the output at full power is known. */
export type CalibrationValue =
  /** A flat receptor on the lamp's axis at full power, no room bounce. */
  | {
      readonly kind: "metered";
      readonly fNumber: FStop;
      readonly at: Length;
      readonly iso: Sensitivity;
      readonly written: string;
    }
  /** ISO 1230: f-number times metres, at ISO 100 unless said otherwise. */
  | {
      readonly kind: "guide_number";
      readonly number: Length;
      readonly iso: Sensitivity;
      readonly written: string;
    }
  | { readonly kind: "efficacy"; readonly efficacy: Efficacy; readonly written: string }
  /** An LM-63 file; `axial` is what it gives along its axis, taken as candela seconds at full power. */
  | { readonly kind: "candelas"; readonly file: string; readonly axial: number; readonly written: string };

/** An output that is known as such: lumen seconds or candela seconds of a flash, lumens or candelas of a lamp. */
export interface OutputValue {
  readonly kind: "luminous_energy" | "flux" | "intensity" | "intensity_time";
  readonly amount: LuminousEnergy | Flux | Intensity | IntensityTime;
  readonly written: string;
}

/** A power setting as the dial shows it; `below` counts stops under full power. */
export type PowerValue =
  | { readonly kind: "full"; readonly written: string }
  | { readonly kind: "off"; readonly written: string }
  | { readonly kind: "fraction"; readonly fraction: Plain; readonly written: string }
  | { readonly kind: "below"; readonly stops: Stops; readonly written: string }
  | { readonly kind: "energy"; readonly energy: Energy; readonly written: string }
  | { readonly kind: "dial"; readonly number: Plain; readonly written: string };

/** What dial numbers mean: which number is full, and how many numbers make one stop. */
export interface DialValue {
  readonly full: Plain;
  readonly perStop: Plain;
  readonly written: string;
}

/** How the light spreads: the same brightness from everywhere, or intensity as a power of the cosine off the axis. */
export type BeamValue =
  | { readonly kind: "lambertian"; readonly written: string }
  | { readonly kind: "cosine_power"; readonly exponent: Plain; readonly written: string }
  | {
      readonly kind: "measured";
      /** The LM-63 file, as the recipe names it, and what stands in it. */
      readonly file: string;
      readonly photometry: CandelaTable;
      readonly written: string;
    };

/** One gel: its direction, the size of its shift and what it costs. */
export interface GelValue {
  readonly tint: "warm" | "cool" | "neutral";
  /** Size of the shift; 0 for a neutral one. */
  readonly shift: Mired;
  readonly loses: Stops;
  /** The defined gel it came from, if any. */
  readonly written: string;
}

/** Gels in front of a lamp, in order. */
export interface GelsValue {
  readonly items: readonly GelValue[];
  readonly written: string;
}

/** A surface, by name or by its reflectance. */
export interface SurfaceValue {
  /** Null where the reflectance was given as a per cent. */
  readonly name: string | null;
  readonly reflectance: Plain;
  readonly written: string;
}

/** The edge of another flat, left or right as the camera sees it. */
export interface HingeValue {
  readonly edge: "left" | "right";
  readonly of: string;
  readonly written: string;
}

/** Where the mark is in the room; each distance from the wall named. */
export interface MarkValue {
  readonly left: Length | null;
  readonly right: Length | null;
  readonly back: Length | null;
  readonly front: Length | null;
  readonly written: string;
}

/** How the arms are held: hanging, raised, or both reaching out to a side or ahead at an angle above the horizontal. */
export type ArmsValue =
  | { readonly kind: "hanging"; readonly written: string }
  | { readonly kind: "raised"; readonly written: string }
  | { readonly kind: "spread"; readonly elevation: Angle; readonly written: string }
  | { readonly kind: "ahead"; readonly elevation: Angle; readonly written: string };

/** The sun: at an elevation, or at a place and time. */
export type SunValue =
  | { readonly kind: "sunlight"; readonly elevation: Angle; readonly written: string }
  | {
      readonly kind: "sun_at";
      readonly latitude: Angle;
      readonly longitude: Angle;
      readonly on: string;
      readonly time: string;
      readonly written: string;
    };

/** An overcast sky: with the sun behind its clouds, or as a meter finds it on open level ground, or of no known brightness. */
export interface OvercastValue {
  readonly kind: "overcast";
  readonly sun?: SunValue;
  readonly metered?: Illuminance;
  readonly written: string;
}

/** A natural light that a set-up may pass for. */
export type NaturalLightValue =
  | SunValue
  | OvercastValue
  | {
      readonly kind: "window";
      readonly size: RectangleValue;
      readonly distance: Length;
      /** Outside; its brightness is not known where the recipe does not say it. */
      readonly sky?: OvercastValue;
      readonly written: string;
    };

/** A contrast as stops, however it was written. */
export interface ContrastValue {
  readonly stops: number;
  /** Allowed difference in stops, where the recipe gives one. */
  readonly plusMinus: number | null;
  readonly written: string;
}

/** So many stops under or over a reading. */
export interface LevelValue {
  readonly stops: Stops;
  readonly side: "under" | "over";
  readonly of: Expr;
  readonly written: string;
}

/** A photograph that settings are read from, and what was taken from it, in words. */
export interface PhotoValue {
  readonly file: string;
  readonly took: readonly string[];
  readonly written: string;
}

/** TypeScript shape of each type of value of the vocabulary. */
export interface ValueShapes {
  length: Length;
  angle: Angle;
  time: Time;
  energy: Energy;
  watts: Watts;
  mass: Mass;
  illuminance: Illuminance;
  fraction: Plain;
  number: Plain;
  aperture: FStop;
  sensitivity: Sensitivity;
  temperature: Kelvin;
  stops: Stops;
  mired: Mired;
  rectangle: RectangleValue;
  volume: VolumeValue;
  pixels: PixelsValue;
  point: PointValue;
  direction: DirectionValue;
  bearing: BearingValue;
  tape: TapeValue;
  shape: ShapeValue;
  calibration: CalibrationValue;
  output: OutputValue;
  power: PowerValue;
  dial: DialValue;
  beam: BeamValue;
  gels: GelsValue;
  surface: SurfaceValue;
  hinge: HingeValue;
  mark: MarkValue;
  arms: ArmsValue;
  natural_light: NaturalLightValue;
  contrast: ContrastValue;
  level: LevelValue;
  scale: Quantity;
  word: string;
  name: string;
  text: string;
  texts: readonly string[];
  photo: PhotoValue;
}

// ---------------------------------------------------------------- what an expectation says

/** The types that results have; a claim compares like with like. */
export type ResultType =
  | "angle"
  | "length"
  | "number"
  | "contrast"
  | "stops"
  | "reading"
  | "f-number"
  | "exposure"
  | "illuminance"
  | "ev"
  | "colour-temperature"
  | "mired"
  | "energy"
  | "luminous-energy"
  | "time"
  | "truth";

/** A value to be worked out from the light: typed, with every name already found. */
export type Expr =
  | { readonly kind: "value"; readonly type: ResultType; readonly quantity: Quantity }
  /** A reading at a station. `towards` null: the station's own facing. */
  | {
      readonly kind: "reading";
      readonly type: "reading";
      readonly station: string;
      readonly receptor: "disc" | "dome";
      readonly towards: PointValue | null;
      /** Only these lights; empty for all that are on. */
      readonly lights: readonly string[];
    }
  /** A result of the vocabulary, for example `key.angular_size` or `stops(a, b)`. */
  | {
      readonly kind: "result";
      readonly type: ResultType;
      readonly name: string;
      /** The light, station or camera it is taken of; null for functions. */
      readonly of: string | null;
      readonly args: readonly { readonly name: string; readonly value: Expr | PointValue | string }[];
    }
  | {
      readonly kind: "sum";
      readonly type: ResultType;
      readonly terms: readonly { readonly sign: "+" | "-"; readonly value: Expr }[];
    }
  | {
      readonly kind: "product";
      readonly type: ResultType;
      readonly factors: readonly { readonly sign: "*" | "/"; readonly value: Expr }[];
    }
  | { readonly kind: "negation"; readonly type: ResultType; readonly operand: Expr };

/** One claim of an expectation, with every name found and its tolerance on the scale on which it is judged. */
export type ClaimModel =
  | { readonly kind: "true"; readonly value: Expr }
  | {
      readonly kind: "within";
      readonly value: Expr;
      /** Null for `A is 1 stop under B`. */
      readonly target: Expr;
      readonly side: { readonly word: "under" | "over"; readonly of: Expr } | null;
      /** Either a difference on the scale on which the type is judged (stops for readings, ratios, f-numbers; mired
       * for colour temperatures; else the value's own base unit), or a share of the target. */
      readonly tolerance: { readonly value: number; readonly kind: "difference" | "share" };
    }
  | { readonly kind: "between"; readonly value: Expr; readonly low: Expr; readonly high: Expr }
  | {
      readonly kind: "compare";
      readonly value: Expr;
      readonly sign: "<" | "<=" | ">" | ">=";
      readonly target: Expr;
    };
