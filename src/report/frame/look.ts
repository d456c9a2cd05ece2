import type { Vec3 } from "../../core/vector.js";
import { distance, normalise, subtract } from "../../math/vector.js";
import { type Peek, peek } from "../geometry/sight.js";
import type { Lens } from "./project.js";
import type { Place } from "./region.js";

/** What lies before a point by less than this share of the way to it does not hide it: sheets that lie on each other. */
const TOUCH = 2e-4;

/** The unit vector from the lens through a place of the picture. */
export function wayTo({ camera, across, up, rise }: Lens, place: Place): Vec3 {
  const { forward, right, up: top } = camera;
  const a = place[0] / across;
  const b = (place[1] + rise) / up;
  const x = forward[0] + (right[0] * a + top[0] * b);
  const y = forward[1] + (right[1] * a + top[1] * b);
  const z = forward[2] + (right[2] * a + top[2] * b);
  return normalise([x, y, z]) ?? forward;
}

/** Whether nothing stands between the lens and a point. */
export function isClear(look: Peek, eye: Vec3, point: Vec3): boolean {
  const way = normalise(subtract(point, eye));
  if (way === undefined) return true;
  const far = distance(eye, point);
  const hit = peek(look, eye, way);
  return hit === null || hit.way > far * (1 - TOUCH);
}
