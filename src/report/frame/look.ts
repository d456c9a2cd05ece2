import type { Vec3 } from "../../core/vector.js";
import { add, addScaled, distance, normalise, scale, subtract } from "../../math/vector.js";
import type { Sight } from "../geometry/sight.js";
import type { Lens } from "./project.js";
import type { Place } from "./region.js";

/** What lies before a point by less than this share of the way to it does not hide it: sheets that lie on each other. */
const TOUCH = 2e-4;

/** The unit vector from the lens through a place of the picture. */
export function wayTo({ camera, across, up, rise }: Lens, [x, y]: Place): Vec3 {
  const side = scale(camera.right, x / across);
  return normalise(add(camera.forward, addScaled(side, camera.up, (y + rise) / up))) ?? camera.forward;
}

/** Whether nothing stands between the lens and a point. */
export function isClear(look: Sight, eye: Vec3, point: Vec3): boolean {
  const way = normalise(subtract(point, eye));
  if (way === undefined) return true;
  const far = distance(eye, point);
  const hit = look(eye, way);
  return hit === null || hit.way > far * (1 - TOUCH);
}
