import type { Ink } from "../../report/figures/drawing.js";

/** How one ink looks; lengths in px of a figure at its own size. */
export interface Stroke {
  readonly width: number;
  /** Lengths of strokes and gaps; empty for a whole line. */
  readonly dash: readonly number[];
  /** 0 is the paper, 1 the strongest tone. */
  readonly tone: number;
  /** The tone an area is filled with; null for none. */
  readonly fill: number | null;
}

/**
 * The look of every ink. Tones alone tell things apart, with width and dash, so that a black-and-white print and every
 * eye sees the same: no ink is a colour.
 */
export const strokes: Readonly<Record<Ink, Stroke>> = {
  wall: { width: 3, dash: [], tone: 0.85, fill: null },
  opening: { width: 0.8, dash: [], tone: 0.5, fill: null },
  set: { width: 1.6, dash: [], tone: 0.8, fill: 0.1 },
  paper: { width: 1, dash: [], tone: 0.55, fill: 0.05 },
  person: { width: 1, dash: [], tone: 0.75, fill: 0.16 },
  lamp: { width: 2.6, dash: [], tone: 1, fill: 0 },
  // Seen through: a lamp over or before somebody hides nothing.
  lit: { width: 2.6, dash: [], tone: 1, fill: null },
  beam: { width: 1.2, dash: [7, 4], tone: 0.9, fill: null },
  stand: { width: 0.9, dash: [2, 2], tone: 0.6, fill: null },
  tube: { width: 0.9, dash: [], tone: 0.6, fill: 0.45 },
  lens: { width: 1.1, dash: [10, 3, 2, 3], tone: 0.85, fill: 1 },
  tape: { width: 0.7, dash: [], tone: 0.7, fill: null },
  ground: { width: 1.6, dash: [], tone: 0.9, fill: null },
  shadow: { width: 0.8, dash: [4, 2], tone: 0.5, fill: 0.22 },
  soft: { width: 0.8, dash: [2, 2], tone: 0.7, fill: 0.26 },
  missing: { width: 0.7, dash: [], tone: 0.6, fill: null },
  frame: { width: 2.8, dash: [], tone: 1, fill: null },
  curve: { width: 2.2, dash: [], tone: 1, fill: null },
  second: { width: 1.8, dash: [6, 4], tone: 0.7, fill: null },
  third: { width: 1.4, dash: [9, 3, 2, 3], tone: 0.85, fill: null },
  fourth: { width: 1.8, dash: [14, 4], tone: 0.8, fill: null },
  thin: { width: 1.5, dash: [1.5, 3], tone: 0.9, fill: null },
  grid: { width: 0.5, dash: [], tone: 0.22, fill: null },
  axis: { width: 1.2, dash: [], tone: 0.85, fill: null },
  contour: { width: 0.8, dash: [], tone: 0.7, fill: null },
};
