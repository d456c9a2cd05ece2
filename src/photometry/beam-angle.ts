import { candelaAt } from "./candela.js";
import type { Photometry } from "./photometry.js";

/**
 * Full angle of the cone in which a beam has at least a share of its intensity along the axis: 50 % for the beam
 * angle, 10 % for the field angle; linear between the angles of the table. The edge of the table counts as the end of
 * the beam.
 *
 * @param photometry - A table of system C whose axis is the nadir.
 * @param share - Above 0, below 1.
 * @param horizontal - Horizontal angle of the plane in degrees; the two halves of the plane are added.
 * @returns Degrees, or undefined when nothing is emitted along the axis.
 */
export function beamAngle(photometry: Photometry, share: number, horizontal = 0): number | undefined {
  const axial = candelaAt(photometry, 0, horizontal);
  if (!(axial > 0)) return undefined;
  const wanted = share * axial;
  return halfAngle(photometry, wanted, horizontal) + halfAngle(photometry, wanted, horizontal + 180);
}

function halfAngle(photometry: Photometry, wanted: number, horizontal: number): number {
  const angles = photometry.vertical;
  let before = candelaAt(photometry, 0, horizontal);
  for (let i = 1; i < angles.length; i += 1) {
    const from = angles[i - 1] ?? 0;
    const to = angles[i] ?? 0;
    const now = candelaAt(photometry, to, horizontal);
    if (now < wanted) return from + ((to - from) * (before - wanted)) / (before - now);
    before = now;
  }
  return angles[angles.length - 1] ?? 0;
}
