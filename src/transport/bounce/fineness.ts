import type { Quality } from "./types.js";

/** How finely bounced light is worked out. */
export interface Fineness {
  /** Most patches that exchange light, about. */
  readonly patches: number;
  /** Rays that find out what the cells see of each other. */
  readonly rays: number;
  /** Cells along a side of a station's view, and how often cells at edges are quartered. */
  readonly viewSide: number;
  readonly viewSteps: number;
  /** A cell of a patch has no more than this share of any station's view, as far as `cellsAcross` allows. */
  readonly cellShare: number;
  /** A cell is no larger than this, m. */
  readonly cellSize: number;
  /** Most cells along a side of a patch. */
  readonly cellsAcross: number;
  /** Rays that look on from each spot. */
  readonly spotRays: number;
  /** Turns of light that go from cell to cell; the rest go from patch to patch. */
  readonly turns: number;
  /** Places along a side of a cell that may lie in the edge of a shadow. */
  readonly edgePlaces: number;
  /** Points of a source that are asked for from each of them. */
  readonly sourcePoints: number;
}

/** What each quality means. */
export const fineness: Readonly<Record<Quality, Fineness>> = {
  usual: {
    patches: 110,
    rays: 6000,
    viewSide: 16,
    viewSteps: 2,
    cellShare: 0.02,
    cellSize: 0.5,
    cellsAcross: 6,
    spotRays: 8,
    turns: 2,
    edgePlaces: 2,
    sourcePoints: 2,
  },
  fine: {
    patches: 440,
    rays: 40_000,
    viewSide: 32,
    viewSteps: 3,
    cellShare: 0.005,
    cellSize: 0.3,
    cellsAcross: 8,
    spotRays: 16,
    turns: 3,
    edgePlaces: 3,
    sourcePoints: 3,
  },
};
