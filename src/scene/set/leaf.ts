import type { Vec3 } from "../../core/vector.js";

/** An upright leaf: where it stands and which way its front looks. */
export interface Leaf {
  /** The middle of its bottom edge. */
  readonly foot: Vec3;
  readonly width: number;
  readonly height: number;
  /** Unit vector out of its front, level. */
  readonly front: Vec3;
  /** Unit vector along its width, to the right as the camera sees it. */
  readonly right: Vec3;
}

/**
 * Whether the camera's side sees the front of something upright that stands at a place: the front looks to the
 * camera's side, or, where it is seen edge on, to the mark.
 */
export function frontIsSeen(front: Vec3, place: Vec3): boolean {
  if (Math.abs(front[1]) > 1e-6) return front[1] < 0;
  return looksAtMark(front, place);
}

/** Whether a front looks to the side on which the mark lies. */
export function looksAtMark(front: Vec3, place: Vec3): boolean {
  return front[0] * place[0] + front[1] * place[1] <= 0;
}

/** A leaf by its foot and the way its front looks. */
export function leafAt(foot: Vec3, front: Vec3, width: number, height: number): Leaf {
  const sign = frontIsSeen(front, foot) ? 1 : -1;
  return { foot, width, height, front, right: [-front[1] * sign, front[0] * sign, 0] };
}

/**
 * A leaf joined to an edge of another, left or right as the camera sees it, with the inside angle `opening` (radians)
 * between them on the camera's side. Its front looks into that angle.
 */
export function hingedLeaf(
  other: Leaf,
  edge: "left" | "right",
  opening: number,
  width: number,
  height: number,
): Leaf {
  const sign = edge === "left" ? -1 : 1;
  const half = (sign * other.width) / 2;
  // Into the other leaf, away from the hinge; and out of the side that the camera sees.
  const dx = -sign * other.right[0];
  const dy = -sign * other.right[1];
  const mx = other.right[1];
  const my = -other.right[0];
  const c = Math.cos(opening);
  const s = Math.sin(opening);
  const foot: Vec3 = [
    other.foot[0] + half * other.right[0] + ((c * dx + s * mx) * width) / 2,
    other.foot[1] + half * other.right[1] + ((c * dy + s * my) * width) / 2,
    other.foot[2],
  ];
  return leafAt(foot, [s * dx - c * mx, s * dy - c * my, 0], width, height);
}

/** A place on a leaf: `side` metres to the camera's right of its middle, `up` metres above its foot. */
export function onLeaf(leaf: Leaf, side: number, up: number): Vec3 {
  const { foot, right } = leaf;
  return [foot[0] + side * right[0], foot[1] + side * right[1], foot[2] + up];
}
