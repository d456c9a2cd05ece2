import { sceneLight } from "../../transport/scene-light.js";
import { type Hidden, hiddenFromMeter } from "../light/set-hides.js";
import type { Plan } from "../plan.js";
import { ownerOf } from "../say/surfaces.js";
import type { KeyLight } from "./key-light.js";

/** Above this share a light counts as hidden (common practice, no source). */
const HIDDEN = 0.5;

/** What the set hides of the key from the disc before the face, where that is most of it; null else. */
export function keyShade({ scene }: Plan, { source, station }: KeyLight): Hidden | null {
  if (source.patch !== undefined || source.cloth !== undefined) return null;
  const hidden = hiddenFromMeter(scene, source, station);
  return hidden !== null && hidden.share > HIDDEN ? hidden : null;
}

/** The plan with a piece of the set taken out; its light is worked out anew. */
export function withoutPiece(plan: Plan, piece: string): Plan {
  const others = ({ name }: { readonly name: string }): boolean => ownerOf(name) !== ownerOf(piece);
  const scene = {
    ...plan.scene,
    polygons: plan.scene.polygons.filter(others),
    bodies: plan.scene.bodies.filter((body) => body.of !== undefined || others(body)),
  };
  return { ...plan, scene, light: sceneLight(scene) };
}
