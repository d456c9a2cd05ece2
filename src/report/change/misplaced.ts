import type { Vec3 } from "../../core/vector.js";
import { rotateAbout } from "../../math/rotation.js";
import { add, scale, subtract } from "../../math/vector.js";
import type { LightModel } from "../../model/types.js";
import { offsetCentre, type PlacementOffset } from "../../scene/lamp/place.js";
import { placeOf } from "../../scene/places.js";
import type { Scene, Source } from "../../scene/types.js";
import { directionTo } from "../geometry/directions.js";
import { moveTo } from "./move-source.js";

/**
 * A lamp where it stands when readings of its placement are off: one on a tape as the tape has it, with the other
 * readings kept; one placed by coordinates away from its aim along the floor, up, or round its aim.
 */
export function misplaced(
  scene: Scene,
  source: Source,
  light: LightModel | undefined,
  by: PlacementOffset,
): Source {
  if (light === undefined || light.position !== undefined) return byItself(source, by);
  return moveTo(source, offsetCentre(light, zeroOf(scene, light), source.centre, by));
}

/** The tape's zero of a lamp: the point after `from`, else that of `aim`, else the first face, else the mark. */
function zeroOf(scene: Scene, light: LightModel): Vec3 {
  const point = light.distance?.from ?? light.floor_distance?.from ?? light.aim ?? null;
  return (point === null ? (scene.subjects[0]?.face ?? null) : placeOf(scene, point)) ?? [0, 0, 0];
}

/** A lamp placed by coordinates: carried away from its aim along the floor, up, or round its aim. */
function byItself(source: Source, by: PlacementOffset): Source {
  const zero = source.aim;
  const sight = subtract(source.centre, zero);
  const way = directionTo([0, 0, 0], [sight[0], sight[1], 0]) ?? [0, 0, 0];
  const angle = ((by.bearing ?? 0) * Math.PI) / 180;
  const carried = add(add(zero, rotateAbout(sight, [0, 0, 1], angle)), scale(way, by.tape ?? 0));
  return moveTo(source, [carried[0], carried[1], carried[2] + (by.height ?? 0)]);
}
