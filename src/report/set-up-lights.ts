import type { Scene } from "../scene/types.js";
import { meterKey } from "../transport/meter.js";
import { type SceneLight, sceneLight } from "../transport/scene-light.js";

/** The light of scenes, worked out once for all that have the same set and stations; their lamps may differ. */
export type LightOf = (scene: Scene) => SceneLight;

/**
 * Lights that scenes share. The light of a set does not depend on the lamps in it, so a scene in which only powers or
 * the camera are others needs no new light, and one in which a lamp without a stand was moved only what this lamp
 * gives. Answers are the same as without sharing.
 */
export function sharedLights(): LightOf {
  const known = new Map<string, SceneLight>();
  return (scene) => {
    const { room, polygons, bodies, stations } = scene;
    const key = JSON.stringify([room, polygons, bodies, stations.map(meterKey)]);
    const light = known.get(key) ?? sceneLight(scene);
    known.set(key, light);
    return light;
  };
}
