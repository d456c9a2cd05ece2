/** How the angles of a table are laid out: around the axis (C), or as turns about a level axis (B). */
export type AngleSystem = "C" | "B";

/** The edition of the standard that a file says it follows. */
export type Lm63Edition = "1986" | "1991" | "1995" | "2002" | "2019";

/** A keyword line of the head of a file; lines that continue it are joined by line breaks. */
export interface Keyword {
  readonly name: string;
  readonly text: string;
}

/** How the output of the lamp changes with its tilt (`TILT=INCLUDE`); kept, not applied. */
export interface TiltTable {
  /** How the lamp sits in the luminaire: 1 upright, 2 level, 3 level and turned with it. */
  readonly geometry: 1 | 2 | 3;
  /** Angles in degrees, rising. */
  readonly angles: readonly number[];
  /** Factor at each angle. */
  readonly factors: readonly number[];
}

/** Outer size of the luminous opening in metres, signs as in the file: negative sides are round. */
export interface Opening {
  readonly width: number;
  readonly length: number;
  readonly height: number;
}

/** A measured distribution of intensity, as read from an LM-63 file. */
export interface Photometry {
  readonly edition: Lm63Edition;
  readonly keywords: readonly Keyword[];
  readonly system: AngleSystem;
  readonly lamps: number;
  /** Lumens of each lamp, or null for absolute photometry. */
  readonly lumensPerLamp: number | null;
  readonly opening: Opening;
  readonly inputWatts: number;
  readonly tilt: TiltTable | null;
  /** Vertical angles in degrees, rising; in system C from the nadir (0) up to the zenith (180). */
  readonly vertical: readonly number[];
  /** Horizontal angles in degrees, rising. */
  readonly horizontal: readonly number[];
  /**
   * Intensities in candelas with every factor of the file applied, one row a horizontal angle, one value a vertical
   * angle.
   */
  readonly candela: readonly (readonly number[])[];
}

/** The numbers of a distribution, without what else a file says. */
export type CandelaTable = Pick<Photometry, "system" | "vertical" | "horizontal" | "candela">;

/** What came of reading a file: a table with remarks, or one sentence about what is wrong and the line it is on. */
export type Lm63Result =
  | { readonly photometry: Photometry; readonly notes: readonly string[] }
  | { readonly photometry: null; readonly problem: string; readonly line: number };
