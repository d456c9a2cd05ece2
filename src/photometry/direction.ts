import { candelaAt } from "./candela.js";
import type { Photometry } from "./photometry.js";

const DEGREES = 180 / Math.PI;

/**
 * Intensity in a direction given in the luminaire's own frame. Lengths cancel: any vector along the direction will do.
 *
 * System C: the axis is the nadir, the horizontal angle 0 lies towards `right`. System B: the axis is both angles 0,
 * vertical angles turn it towards `up`, horizontal angles lean it towards `right` (layout of system B from memory).
 *
 * @param photometry - The table.
 * @param axis - Part of the direction along the luminaire's axis.
 * @param right - Part along the direction of horizontal angle 0 (C) or to the right (B).
 * @param up - Part along the direction of horizontal angle 90 (C) or upwards (B).
 * @returns Candelas; 0 for a vector without length.
 */
export function candelaTowards(photometry: Photometry, axis: number, right: number, up: number): number {
  const flat = Math.sqrt(right * right + up * up);
  if (axis === 0 && flat === 0) return 0;
  if (photometry.system === "C") {
    return candelaAt(photometry, Math.atan2(flat, axis) * DEGREES, Math.atan2(up, right) * DEGREES);
  }
  const horizontal = Math.atan2(right, Math.sqrt(axis * axis + up * up));
  return candelaAt(photometry, Math.atan2(up, axis) * DEGREES, horizontal * DEGREES);
}
