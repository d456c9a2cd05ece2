import { findRoot } from "../math/roots.js";
import { type Chromaticity, uvFromXy } from "./chromaticity.js";
import { planckLocus } from "./planck.js";

/** Greatest distance from the Planckian locus at which a correlated colour temperature has a meaning (CIE 15). */
export const GREATEST_DUV = 0.05;

/** Correlated colour temperature and distance from the Planckian locus. */
export interface CorrelatedTemperature {
  /** Temperature of the nearest black body in kelvin. */
  readonly kelvin: number;
  /** Distance in the CIE 1960 diagram: + above the locus (greenish), - below it (ANSI C78.377). */
  readonly duv: number;
}

/** Searched from 1000 K to 1000000 K, in mired, with steps that grow where the locus is straight. */
const LEAST_MIRED = 1;
const GREATEST_MIRED = 1000;
const STEPS = 40;

/**
 * Correlated colour temperature by its definition: the point of the Planckian locus that lies nearest in the CIE 1960
 * u, v diagram, found where the line to it is square to the locus (CIE 15; Ohno, Leukos 10 (2014) 47).
 *
 * @param colour - Chromaticity.
 * @returns Temperature and Duv; undefined when the nearest point is outside 1000 to 1000000 K or farther than 0.05 away,
 * where the CIE gives the temperature no meaning.
 */
export function correlatedTemperature(colour: Chromaticity): CorrelatedTemperature | undefined {
  const { u, v } = uvFromXy(colour);
  const start = nearestStep(u, v);
  if (start === undefined) return undefined;
  const low = stepMired(start - 1);
  if (lean(u, v, low) < 0) return undefined;
  const mired = findRoot((m) => lean(u, v, m), low, stepMired(start + 1), 1e-9);
  if (mired === undefined) return undefined;
  const point = planckLocus(mired);
  const distance = Math.sqrt((u - point.u) * (u - point.u) + (v - point.v) * (v - point.v));
  if (!(distance <= GREATEST_DUV)) return undefined;
  return { kelvin: 1e6 / mired, duv: above(u, v, point) ? distance : -distance };
}

/** The mired value of a step of the coarse search: evenly spaced in its square root. */
function stepMired(step: number): number {
  const least = Math.sqrt(LEAST_MIRED);
  const root = least + ((Math.sqrt(GREATEST_MIRED) - least) * step) / STEPS;
  return root * root;
}

/** The inner step of the coarse search that lies nearest to a colour, or undefined when an end of the range does. */
function nearestStep(u: number, v: number): number | undefined {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let step = 0; step <= STEPS; step += 1) {
    const point = planckLocus(stepMired(step));
    const square = (u - point.u) * (u - point.u) + (v - point.v) * (v - point.v);
    if (square < least) {
      least = square;
      best = step;
    }
  }
  if (best < 0) return undefined;
  return Math.min(Math.max(best, 1), STEPS - 1);
}

/** How far the line to a colour leans along the locus: 0 where it is square to it. */
function lean(u: number, v: number, mired: number): number {
  const point = planckLocus(mired);
  return (u - point.u) * point.du + (v - point.v) * point.dv;
}

/** Whether a colour lies on the upper side of the locus, seen along its tangent (u grows with mired). */
function above(u: number, v: number, point: { u: number; v: number; du: number; dv: number }): boolean {
  return point.du * (v - point.v) - point.dv * (u - point.u) >= 0;
}
