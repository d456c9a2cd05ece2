import type { Vec3 } from "../../core/vector.js";
import { degrees } from "../../math/rotation.js";
import { angularWidths, equivalentCone, timesSun } from "../../physics/angular-size.js";
import { discReading, solidAngle } from "../../physics/illuminance.js";
import { emptyVector } from "../../physics/light-vector.js";
import { sourceShape } from "../../scene/lamp/optics.js";
import type { Source } from "../../scene/types.js";
import { directionTo } from "../geometry/directions.js";

/** How large a light looks from a point; angles in degrees, solid angles in sr. */
export interface AngularSize {
  /** Full angle of the cone with the same solid angle. */
  readonly equivalent: number;
  readonly least: number;
  readonly greatest: number;
  /** Across the diagonal of a rectangle; null for other shapes. */
  readonly diagonal: number | null;
  readonly timesSun: number;
  readonly solidAngle: number;
  /** On a flat receptor that looks at the light. */
  readonly projected: number;
}

/** The size of a light from a point; null from behind a flat opening or inside a bulb. */
export function sizeFrom(source: Source, eye: Vec3): AngularSize | null {
  const shape = sourceShape(source);
  const omega = solidAngle(shape, eye[0], eye[1], eye[2]);
  const widths = angularWidths(shape, eye);
  const facing = directionTo(eye, source.centre);
  if (widths === undefined || facing === null || !(omega > 0)) return null;
  const equivalent = degrees(equivalentCone(omega));
  return {
    equivalent,
    least: degrees(widths.least),
    greatest: degrees(widths.greatest),
    diagonal: widths.diagonal === undefined ? null : degrees(widths.diagonal),
    timesSun: timesSun(equivalent),
    solidAngle: omega,
    projected: discReading(shape, eye[0], eye[1], eye[2], facing[0], facing[1], facing[2], emptyVector()),
  };
}
