import type { Scene } from "./types.js";

/**
 * The scene without what goes past the cloths of heads that shine through one: that part is only right where the
 * cloth hides the head itself, so it stays out of light that nothing hides.
 */
export function withoutSpill(scene: Scene): Scene {
  const sources = scene.sources.filter((source) => source.spillOf === undefined);
  if (sources.length === scene.sources.length) return scene;
  const key = scene.key === null ? undefined : scene.sources[scene.key];
  const at = key === undefined ? -1 : sources.indexOf(key);
  return { ...scene, sources, key: at < 0 ? null : at };
}
