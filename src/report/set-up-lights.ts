import type { Scene } from "../scene/types.js";
import { sameSet } from "../transport/same-set.js";
import { type SceneLight, sceneLight } from "../transport/scene-light.js";

/** The light of scenes, which may share what they have in common. */
export type LightOf = (scene: Scene) => SceneLight;

/**
 * Lights that are shared among scenes with the same set, so that a change of a lamp's power or of the camera costs no
 * light, and a moved lamp only its own. Answers are the same as without sharing.
 */
export function sharedLights(): LightOf {
  const kept: { readonly scene: Scene; readonly light: SceneLight }[] = [];
  return (scene) => {
    const known = kept.find((one) => sameSet(one.scene, scene));
    if (known !== undefined) return known.light;
    const light = sceneLight(scene);
    kept.push({ scene, light });
    return light;
  };
}
