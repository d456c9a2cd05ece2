/** A place on a figure, m: x to the right, y up. */
export type Place = readonly [x: number, y: number];

/** What a stroke or an area stands for; how it looks is the renderer's. */
export type Ink =
  | "wall"
  | "opening"
  | "set"
  | "paper"
  | "person"
  | "lamp"
  | "lit"
  | "beam"
  | "stand"
  | "tube"
  | "lens"
  | "tape"
  | "ground"
  | "shadow"
  | "soft"
  | "missing"
  | "frame"
  | "curve"
  | "second"
  | "third"
  | "fourth"
  | "thin"
  | "grid"
  | "axis"
  | "contour";

/** A line through some places. */
export interface LineMark {
  readonly kind: "line";
  readonly ink: Ink;
  readonly through: readonly Place[];
  /** What it is, where a figure is read by a program. */
  readonly name: string;
}

/** A closed outline. */
export interface AreaMark {
  readonly kind: "area";
  readonly ink: Ink;
  readonly outline: readonly Place[];
  readonly name: string;
}

/** A length as a tape would measure it, with the figure on it; without one where a label beside it says it. */
export interface TapeMark {
  readonly kind: "tape";
  readonly from: Place;
  readonly to: Place;
  readonly text: string;
  /** How far the text stands from the line, m; + on the left of one who goes along it. */
  readonly beside: number;
  /** How far along the line it stands, as a share; in the middle where nothing is said. */
  readonly along?: number;
}

/** A text. */
export interface LabelMark {
  readonly kind: "label";
  readonly at: Place;
  readonly text: string;
  /** Which part of the text stands at `at`; its middle height lies there. */
  readonly anchor: "start" | "middle" | "end";
  readonly weight: "plain" | "strong";
  /** Angle of the text, deg, counter-clockwise. */
  readonly turn: number;
}

/** One thing on a figure. */
export type Mark = LineMark | AreaMark | TapeMark | LabelMark;

/**
 * A figure as a list of what is drawn, later things over earlier ones, in the metres of the set-up (charts: in the
 * units of their axes laid out in metres of paper). Plain data: no look, no colour, no page.
 */
export interface Drawing {
  /** A few words, for the heading and for screen readers. */
  readonly title: string;
  /** What the figure shows, in sentences, for those who cannot see it. */
  readonly description: string;
  /** Scale, units and conventions, a line each, shown under the figure. */
  readonly notes: readonly string[];
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  /** Height of the letters, m. */
  readonly em: number;
  /** Whether lengths on it are lengths of the set-up, so that a scale bar means something. */
  readonly measured: boolean;
  readonly marks: readonly Mark[];
}

/** A line. */
export const line = (ink: Ink, name: string, ...through: readonly Place[]): LineMark => ({
  kind: "line",
  ink,
  through,
  name,
});

/** An area. */
export const area = (ink: Ink, name: string, outline: readonly Place[]): AreaMark => ({
  kind: "area",
  ink,
  outline,
  name,
});

/** A text that stands where it is put. */
export const label = (
  text: string,
  at: Place,
  { anchor = "middle", weight = "plain", turn = 0 }: Partial<Omit<LabelMark, "kind" | "at" | "text">> = {},
): LabelMark => ({ kind: "label", at, text, anchor, weight, turn });
