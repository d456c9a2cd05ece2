import type { Vec3 } from "../../core/vector.js";
import { addScaled } from "../../math/vector.js";
import type { Body, SceneRoom, Source } from "../types.js";

/** Radius of a column or an arm, m (common practice, no source). */
const RADIUS = 0.015;
/** What stays free of the column under a head, and of the arm behind it, m. */
const FREE = 0.15;

/** What carries a lamp, by its places. */
interface Carrier {
  /** Where the column ends at the top. */
  readonly top: Vec3;
  /** The arm of a boom, from behind the head to the column; null without one. */
  readonly arm: readonly [from: Vec3, to: Vec3] | null;
}

/**
 * The places of a stand: a column that ends 15 cm under the head, or the arm of a boom, which lies level and leads
 * straight back from the light, starting 15 cm behind its opening, with the column below its far end. Null without a stand.
 */
function carrierOf({ stand, centre, axis, headHeight }: Source): Carrier | null {
  if (stand === null) return null;
  if (stand.boom === null)
    return { top: [centre[0], centre[1], centre[2] - headHeight / 2 - FREE], arm: null };
  const size = Math.sqrt(axis[0] * axis[0] + axis[1] * axis[1]);
  // A head that looks straight down hangs from an arm that comes from behind the subject.
  const back: Vec3 = size > 1e-6 ? [-axis[0] / size, -axis[1] / size, 0] : [0, 1, 0];
  const from = addScaled(centre, axis, -FREE);
  const to = addScaled(from, back, stand.boom);
  return { top: to, arm: [from, to] };
}

/** The middle between the feet of a lamp's stand, on the floor; null without a stand. */
export function standFoot(source: Source): Vec3 | null {
  const carrier = carrierOf(source);
  return carrier === null ? null : [carrier.top[0], carrier.top[1], 0];
}

/**
 * The column of a lamp's stand and the arm of its boom, as thin black tubes that throw shade and give nothing back.
 * What would stand outside the room is left out.
 */
export function standBodies(source: Source, room: SceneRoom | null): readonly Body[] {
  const carrier = carrierOf(source);
  if (carrier === null) return [];
  const name = source.spillOf ?? source.name;
  const upright = column(name, carrier.top, room);
  if (carrier.arm === null || !inside(carrier.top, room)) return upright === null ? [] : [upright];
  const [from, to] = carrier.arm;
  const arm: Body = {
    kind: "capsule",
    of: "stand",
    name: `${name} boom`,
    from,
    to,
    radius: RADIUS,
    reflectance: 0,
  };
  return upright === null ? [arm] : [upright, arm];
}

function column(name: string, top: Vec3, room: SceneRoom | null): Body | null {
  if (top[2] <= 3 * RADIUS || !inside(top, room)) return null;
  return {
    kind: "capsule",
    of: "stand",
    name: `${name} stand`,
    from: [top[0], top[1], RADIUS],
    to: [top[0], top[1], top[2] - RADIUS],
    radius: RADIUS,
    reflectance: 0,
  };
}

function inside([x, y, z]: Vec3, room: SceneRoom | null): boolean {
  if (room === null) return true;
  return (
    x > room.left + RADIUS &&
    x < room.right - RADIUS &&
    y > room.front + RADIUS &&
    y < room.back - RADIUS &&
    z < room.height - RADIUS
  );
}
