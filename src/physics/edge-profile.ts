import { findRoot } from "../math/roots.js";

/**
 * The profile of a shadow's edge far from the source (the source looks small from the edge): the share of the light
 * grows across the edge as the share of the source's outline that lies to one side of a line.
 */

/** Share (0 to 1) of a disc that a straight edge leaves uncovered; x from -1 (all covered) to 1, in radii. */
export function discShare(x: number): number {
  if (x <= -1) return 0;
  if (x >= 1) return 1;
  return 0.5 + (x * Math.sqrt((1 - x) * (1 + x)) + Math.asin(x)) / Math.PI;
}

/** Where a disc's edge has a share of its light, as a share (0 to 1) of the full width from the dark end. */
export function discEdgePlace(share: number): number {
  if (share <= 0) return 0;
  if (share >= 1) return 1;
  const x = findRoot((t) => discShare(t) - share, -1, 1) ?? 0;
  return (1 + x) / 2;
}

/**
 * Where the edge of a rectangle has a share of its light, as a share (0 to 1) of the full width. `a` and `b` are the
 * extents across the edge of its two pairs of sides, width |sin| and height |cos|: the profile's slope is a trapezoid
 * with the ramp min(a, b). A square with sides along the edge has a or b = 0, a square corner first has a = b.
 */
export function rectangleEdgePlace(share: number, a: number, b: number): number {
  const ramp = Math.min(a, b);
  const flat = Math.max(a, b);
  const total = ramp + flat;
  if (!(total > 0)) return share;
  if (share > 0.5) return 1 - rectangleEdgePlace(1 - share, a, b);
  if (share <= 0) return 0;
  const inRamp = ramp / (2 * flat);
  const x = share <= inRamp ? Math.sqrt(2 * share * ramp * flat) : share * flat + ramp / 2;
  return x / total;
}

/** Outlines for which the far profile is tabled. */
export type EdgeOutline = "disc" | "sphere" | "square" | "square_edge_parallel" | "square_diagonal_across";

/** Share (0 to 1) of the full width between two shares of the light, for example 0.1 and 0.9. */
export function edgeShareOfWidth(outline: EdgeOutline, low: number, high: number): number {
  switch (outline) {
    case "disc":
    case "sphere":
      return discEdgePlace(high) - discEdgePlace(low);
    case "square":
    case "square_edge_parallel":
      return rectangleEdgePlace(high, 1, 0) - rectangleEdgePlace(low, 1, 0);
    case "square_diagonal_across":
      return rectangleEdgePlace(high, 1, 1) - rectangleEdgePlace(low, 1, 1);
    default:
      return outline satisfies never;
  }
}
