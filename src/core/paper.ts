/** A place on paper: x to the right, y down. */
export type PaperPlace = readonly [x: number, y: number];

/** Lines or an area on paper. Tones run from 0, the paper, to 1, the strongest ink. */
export interface PaperPath {
  readonly kind: "path";
  /** Lines through some places each; closed where `closed` says so. */
  readonly rings: readonly (readonly PaperPlace[])[];
  readonly closed: boolean;
  /** Tone of an area; null for none. */
  readonly fill: number | null;
  /** Tone and width of its lines, with lengths of strokes and gaps; null for an area without an edge. */
  readonly stroke: { readonly tone: number; readonly width: number; readonly dash: readonly number[] } | null;
  /** What it is made for, where that changes how it is written: a ruler of level and upright lines, a curve. */
  readonly corners: "round" | "plain" | "ruler";
}

/** A text on paper. */
export interface PaperText {
  readonly kind: "text";
  readonly text: string;
  /** Its middle height lies here; `anchor` says which part of its length. */
  readonly at: PaperPlace;
  readonly size: number;
  readonly anchor: "start" | "middle" | "end";
  readonly tone: number;
  readonly strong: boolean;
  /** Angle, deg, counter-clockwise. */
  readonly turn: number;
  /** Whether the paper is kept clear round the letters, over what was drawn before. */
  readonly clear: boolean;
}

/** One thing on paper. */
export type PaperItem = PaperPath | PaperText;

/** A page: what is drawn on it, later things over earlier ones; the unit is that of its size. */
export interface PaperPage {
  readonly width: number;
  readonly height: number;
  readonly items: readonly PaperItem[];
}

/** How wide texts are in the letters that they will be written in. */
export type TextWidth = (text: string, size: number) => number;

/** Light paper with dark ink, or dark paper with light ink. */
export type Theme = "light" | "dark";

/** A tone as a grey of sRGB: 0 is the paper. */
export function grey(tone: number, theme: Theme): string {
  const [paper, ink] = theme === "light" ? [255, 17] : [24, 240];
  const part = Math.round(paper + (ink - paper) * tone)
    .toString(16)
    .padStart(2, "0");
  return `#${part}${part}${part}`;
}
