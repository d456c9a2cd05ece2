import type { Vec3 } from "../../core/vector.js";
import { lyingOn } from "../../scene/lying-on.js";
import { solidsOf, sunkIn, surfaced } from "../../scene/sunk.js";
import type { Scene } from "../../scene/types.js";
import { sayWhatHolds } from "../say/bodies.js";
import { sayLength } from "../say/quantity.js";

/** Why a place has no reading, after its name. */
export const noLight = "gets no light, straight or bounced";

/** Why a meter that reads nothing does, after its name: what it is in, or that no light gets there. */
export function whyNoLight(scene: Scene, place: Vec3, facing: Vec3): string {
  const solids = solidsOf(scene);
  const at = lyingOn(scene.polygons, place);
  if (surfaced(solids, at, facing) !== null) return noLight;
  const sunk = sunkIn(solids, at);
  return sunk === null
    ? noLight
    : `lies ${sayLength(sunk.depth)} inside ${sayWhatHolds(scene, sunk)}, where no meter can be held`;
}
