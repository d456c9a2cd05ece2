import type { Vec3 } from "../core/vector.js";
import { cross } from "../math/vector.js";

/** Unit vectors along the width and height of something flat: `across x along` is its axis. */
export interface Frame {
  readonly across: Vec3;
  readonly along: Vec3;
}

/**
 * The frame of an upright flat thing whose front looks along the unit vector `axis`: `across` is horizontal, to the
 * right of one who looks at the front, and `along` completes it upwards. For an axis straight up or down `across` is +x.
 */
export function uprightFrame(axis: Vec3): Frame {
  const size = Math.sqrt(axis[0] * axis[0] + axis[1] * axis[1]);
  const across: Vec3 = size > 1e-9 ? [-axis[1] / size, axis[0] / size, 0] : [1, 0, 0];
  return { across, along: cross(axis, across) };
}

/** The frame turned about its axis by an angle in radians, right-handed: along the axis, clockwise. */
export function rolledFrame(frame: Frame, angle: number): Frame {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const { across: a, along: b } = frame;
  return {
    across: [a[0] * c + b[0] * s, a[1] * c + b[1] * s, a[2] * c + b[2] * s],
    along: [b[0] * c - a[0] * s, b[1] * c - a[1] * s, b[2] * c - a[2] * s],
  };
}

/** Corners of a rectangle by its centre, counter-clockwise for one who looks at its front. */
export function rectangleCorners(
  centre: Vec3,
  { across, along }: Frame,
  width: number,
  height: number,
): readonly [Vec3, Vec3, Vec3, Vec3] {
  const ax = (across[0] * width) / 2;
  const ay = (across[1] * width) / 2;
  const az = (across[2] * width) / 2;
  const bx = (along[0] * height) / 2;
  const by = (along[1] * height) / 2;
  const bz = (along[2] * height) / 2;
  const [x, y, z] = centre;
  return [
    [x - ax - bx, y - ay - by, z - az - bz],
    [x + ax - bx, y + ay - by, z + az - bz],
    [x + ax + bx, y + ay + by, z + az + bz],
    [x - ax + bx, y - ay + by, z - az + bz],
  ];
}
