import type { Vec3 } from "../../core/vector.js";
import { crosses } from "../../scene/crosses.js";
import type { Scene, ScenePolygon } from "../../scene/types.js";

/** The first piece of the set that stands in the straight line between two points; null where the way is free. */
export function between(scene: Scene, a: Vec3, b: Vec3): ScenePolygon | null {
  return scene.polygons.find((polygon) => isSet(polygon) && crosses(polygon, a, b)) ?? null;
}

function isSet(polygon: ScenePolygon): boolean {
  return polygon.kind !== "floor" && polygon.kind !== "ceiling" && polygon.kind !== "wall";
}
