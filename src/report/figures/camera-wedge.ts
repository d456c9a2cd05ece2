import type { Vec3 } from "../../core/vector.js";
import { addScaled } from "../../math/vector.js";
import type { Scene } from "../../scene/types.js";
import { wayTo } from "../frame/look.js";
import { lensOf } from "../frame/project.js";
import { sightOf } from "../geometry/sight.js";
import { withoutPeople } from "../without-people.js";
import { line, type Mark } from "./drawing.js";
import { onSheet, type Sheet } from "./outlines.js";

/** How far the edges of the picture are drawn in the open, m beyond the mark. */
const BEYOND = 2;

/**
 * Lines of sight through the middles of two opposite edges of the frame, as far as the set or the room, or a little past the
 * mark. People do not end them. Without a camera or a focal length there is none.
 */
export function pictureEdges(
  sheet: Sheet,
  scene: Scene,
  edges: "left and right" | "top and bottom",
): readonly Mark[] {
  const { camera } = scene;
  const lens = camera === null ? null : lensOf(camera);
  if (camera === null || lens === null) return [];
  const look = sightOf(withoutPeople(scene));
  return [-1, 1].map((side) => {
    const way = wayTo(lens, edges === "left and right" ? [side, 0] : [0, side]);
    const far = look(camera.at, way)?.way ?? openEnd(camera.at, way);
    return line(
      "lens",
      "edge of the picture",
      onSheet(sheet, camera.at),
      onSheet(sheet, addScaled(camera.at, way, far)),
    );
  });
}

/** How far a line of sight goes in the open, m: to the floor, or a little past the mark. */
function openEnd(from: Vec3, way: Vec3): number {
  const past = way[1] > 0 ? (BEYOND - from[1]) / way[1] : Number.POSITIVE_INFINITY;
  const down = way[2] < 0 ? -from[2] / way[2] : Number.POSITIVE_INFINITY;
  const end = Math.min(past, down);
  return Number.isFinite(end) ? Math.max(0, end) : 0;
}
