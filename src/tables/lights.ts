import type { Scene } from "../scene/types.js";
import { sameSet } from "../transport/same-set.js";
import { type SceneLight, sceneLight } from "../transport/scene-light.js";

/** Sets that are kept at a time: as many variants or rooms as a table goes through again and again. */
const MOST = 8;

/** Light that is shared by rows with the same set. */
export interface LightStore {
  /** The light of the recipe itself. What it is asked before any row, all rows know. */
  readonly first: SceneLight;
  /**
   * The light of a scene. What it works out for lamps and meters of its own is dropped with it, except by the first
   * scene of a set, from which the later ones know what they have in common.
   */
  readonly lightOf: (scene: Scene) => SceneLight;
}

/** @param first - The scene whose rows share its light to the last bit: that of the recipe itself. */
export function lightStore(first: Scene): LightStore {
  const own = sceneLight(first);
  const kept: { readonly scene: Scene; readonly light: SceneLight }[] = [{ scene: first, light: own }];
  return {
    first: own,
    lightOf: (scene) => {
      const index = kept.findIndex((one) => sameSet(one.scene, scene));
      const found = kept[index];
      if (found !== undefined) {
        // The one used last stands last; the recipe's own stays first and is never dropped.
        if (index > 0) kept.push(...kept.splice(index, 1));
        return found.light.fork();
      }
      if (kept.length >= MOST) kept.splice(1, 1);
      const light = sceneLight(scene);
      kept.push({ scene, light });
      return light;
    },
  };
}
