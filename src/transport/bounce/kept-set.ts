import type { Scene } from "../../scene/types.js";
import type { Quality } from "./types.js";

/** Everything about bounced light that depends on set, figure, reflectances and stations, and on no light. */
export interface KeptSet {
  readonly stations: number;
}

/** Works out what a scene's surfaces do for its stations, once for all lights. */
export function keepSet(scene: Scene, _quality: Quality = "usual"): KeptSet {
  return { stations: scene.stations.length };
}
