import type { Vec3 } from "../../core/vector.js";
import { addScaled } from "../../math/vector.js";
import type { Body, SceneRoom, Source } from "../types.js";

/** Radius of a column or an arm, m (common practice, no source). */
const RADIUS = 0.015;
/** What stays free of the column under a head, and of the arm behind it, m. */
const FREE = 0.15;

/**
 * The column of a lamp's stand and the arm of its boom, as thin black tubes that throw shade and give nothing back.
 * The column ends 15 cm under the head. A boom lies level and leads straight back from the light, starting 15 cm
 * behind its opening; its column stands below the far end. A column that would stand outside the room is left out.
 */
export function standBodies(source: Source, room: SceneRoom | null): readonly Body[] {
  const { stand, centre, axis } = source;
  if (stand === null) return [];
  const name = source.spillOf ?? source.name;
  if (stand.boom === null) {
    const top = centre[2] - source.headHeight / 2 - FREE;
    return [column(name, [centre[0], centre[1], top], room)].filter((body) => body !== null);
  }
  const size = Math.sqrt(axis[0] * axis[0] + axis[1] * axis[1]);
  // A head that looks straight down hangs from an arm that comes from behind the subject.
  const back: Vec3 = size > 1e-6 ? [-axis[0] / size, -axis[1] / size, 0] : [0, 1, 0];
  const from = addScaled(centre, axis, -FREE);
  const to = addScaled(from, back, stand.boom);
  const arm: Body = {
    kind: "capsule",
    of: "stand",
    name: `${name} boom`,
    from,
    to,
    radius: RADIUS,
    reflectance: 0,
  };
  return [column(name, to, room), inside(to, room) ? arm : null].filter((body) => body !== null);
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
