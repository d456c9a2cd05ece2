import type { Vec3 } from "../../core/vector.js";
import { addScaled } from "../../math/vector.js";
import type { SceneCamera, SceneRoom } from "../../scene/types.js";
import { wayTo } from "../frame/look.js";
import { lensOf } from "../frame/project.js";

/** How far the edges of the picture are drawn in the open, m beyond the mark. */
const BEYOND = 2;

/** A line of sight of the lens from the lens to where it is drawn to. */
export type SightLine = readonly [from: Vec3, to: Vec3];

/**
 * Lines of sight through the middles of two opposite edges of the frame, as far as the room goes, or a little past the mark.
 * Without a focal length there is none.
 */
export function frameEdges(
  camera: SceneCamera,
  room: SceneRoom | null,
  edges: "left and right" | "top and bottom",
): readonly SightLine[] {
  const lens = lensOf(camera);
  if (lens === null) return [];
  return [-1, 1].map((side) => {
    const way = wayTo(lens, edges === "left and right" ? [side, 0] : [0, side]);
    return [camera.at, addScaled(camera.at, way, endOf(camera.at, way, room))] as const;
  });
}

/** How far it is along the unit vector `way` to the room's far side, floor or ceiling, or the open's end. */
function endOf(from: Vec3, way: Vec3, room: SceneRoom | null): number {
  const least: Vec3 = room === null ? [-1e9, -1e9, 0] : [room.left, room.front, 0];
  const most: Vec3 = room === null ? [1e9, BEYOND, 1e9] : [room.right, room.back, room.height];
  let end = Number.POSITIVE_INFINITY;
  for (const i of [0, 1, 2] as const) {
    const bound = way[i] > 0 ? most[i] : least[i];
    if (way[i] === 0) continue;
    const t = (bound - from[i]) / way[i];
    if (t > 0) end = Math.min(end, t);
  }
  return Number.isFinite(end) ? end : 0;
}
