import type { Vec3 } from "../../core/vector.js";
import type { BearingValue } from "../../model/values.js";
import type { Angle } from "../../units/quantity.js";
import { type Frame, rolledFrame, uprightFrame } from "../frame.js";

/** The unit vector from a lamp to its aim; null where both are the same point. */
export function axisTo(centre: Vec3, aim: Vec3): Vec3 | null {
  const x = aim[0] - centre[0];
  const y = aim[1] - centre[1];
  const z = aim[2] - centre[2];
  const size = Math.sqrt(x * x + y * y + z * z);
  return size > 1e-9 ? [x / size, y / size, z / size] : null;
}

/**
 * An axis turned about the vertical, left or right as the camera sees the beam go: clockwise from above is right for a
 * head that points away from the camera's side (or square to it), and left for one that points back.
 */
export function feathered(axis: Vec3, feather: BearingValue | undefined): Vec3 {
  if (feather === undefined || feather.angle.value === 0) return axis;
  const clockwise = (feather.side === "right") === axis[1] >= -1e-9;
  const angle = ((clockwise ? -1 : 1) * feather.angle.value * Math.PI) / 180;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return [axis[0] * c - axis[1] * s, axis[0] * s + axis[1] * c, axis[2]];
}

/** Width and height of a lamp's opening: upright, then rolled about its axis. */
export function lampFrame(axis: Vec3, roll: Angle | undefined): Frame {
  const upright = uprightFrame(axis);
  return roll === undefined || roll.value === 0
    ? upright
    : rolledFrame(upright, (roll.value * Math.PI) / 180);
}
