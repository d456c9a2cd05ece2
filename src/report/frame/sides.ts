import {
  type Box,
  boxOf,
  difference,
  intersection,
  type Region,
  regionOf,
  shareOf,
  union,
} from "./region.js";

/** The sides of the picture, and what lies within the outline of the set. */
export const sideNames = ["left", "right", "top", "bottom", "within"] as const;
/** One of them. */
export type FrameSide = (typeof sideNames)[number];

/** What is bare at one side of the picture. */
export interface BareSide {
  readonly side: FrameSide;
  /** Share of the picture's area, 0 to 1. */
  readonly share: number;
  /** How far it reaches in from that side at most, as a share of the width or height; 0 for `within`. */
  readonly depth: number;
}

/** The smallest stretch of a side of the box that counts as touching it, in halves of the frame. */
const TOUCH = 1e-6;

/** The stretch that a part shares with each side of a box. */
function touches(part: Region, box: Box): Readonly<Record<Exclude<FrameSide, "within">, number>> {
  const found = { left: 0, right: 0, top: 0, bottom: 0 };
  const near = (a: number, b: number): boolean => Math.abs(a - b) < TOUCH;
  for (const ring of part) {
    ring.forEach(([x, y], i) => {
      const [nextX, nextY] = ring[i + 1 < ring.length ? i + 1 : 0] ?? [x, y];
      if (near(x, nextX)) {
        if (near(x, box.left)) found.left += Math.abs(nextY - y);
        if (near(x, box.right)) found.right += Math.abs(nextY - y);
      }
      if (near(y, nextY)) {
        if (near(y, box.top)) found.top += Math.abs(nextX - x);
        if (near(y, box.bottom)) found.bottom += Math.abs(nextX - x);
      }
    });
  }
  return found;
}

/** The side to which a piece of bare picture within the box of the set belongs: the one that it touches most. */
function sideOf(part: Region, box: Box): FrameSide {
  const found = touches(part, box);
  const order = ["top", "bottom", "left", "right"] as const;
  const most = order.reduce((best, side) => (found[side] > found[best] + TOUCH ? side : best), order[0]);
  return found[most] > TOUCH ? most : "within";
}

/**
 * Bare picture by the sides from which it has to be filled. Beside the smallest upright rectangle round the set lie
 * the strips left and right, as high as the frame, and between them those above and below. What is bare inside of that
 * rectangle, such as the wedge above a slanting edge, goes to the side of it that it touches most, or to `within`. Areas
 * add up to the whole.
 *
 * @param bare - What is bare, as a region of the picture.
 * @param set - What of the picture is set, people left out.
 */
export function bareSides(bare: Region, set: Region): readonly BareSide[] {
  const box = boxOf(set);
  if (box === null) return sideNames.map((side) => ({ side, share: 0, depth: 0 }));
  const parts: Record<FrameSide, Region> = {
    left: intersection(bare, regionOf({ left: -1, right: box.left, bottom: -1, top: 1 })),
    right: intersection(bare, regionOf({ left: box.right, right: 1, bottom: -1, top: 1 })),
    top: intersection(bare, regionOf({ ...box, bottom: box.top, top: 1 })),
    bottom: intersection(bare, regionOf({ ...box, bottom: -1, top: box.bottom })),
    within: [],
  };
  for (const piece of piecesOf(intersection(bare, regionOf(box)))) {
    const side = sideOf(piece, box);
    parts[side] = union(parts[side], piece);
  }
  return sideNames.map((side) => ({
    side,
    share: shareOf(parts[side]),
    depth: depthOf(side, boxOf(parts[side])),
  }));
}

/** The pieces of a region that hang together; holes stay with the piece that they are in. */
function piecesOf(region: Region): readonly Region[] {
  const outer = region.filter((ring) => shareOf([ring]) > 0);
  const holes = region.filter((ring) => shareOf([ring]) < 0).map((ring) => [...ring].reverse());
  return outer.map((ring) => (holes.length === 0 ? [ring] : difference([ring], holes)));
}

function depthOf(side: FrameSide, box: Box | null): number {
  if (box === null) return 0;
  switch (side) {
    case "left":
      return (box.right + 1) / 2;
    case "right":
      return (1 - box.left) / 2;
    case "top":
      return (1 - box.bottom) / 2;
    case "bottom":
      return (box.top + 1) / 2;
    case "within":
      return 0;
    default:
      return side satisfies never;
  }
}
