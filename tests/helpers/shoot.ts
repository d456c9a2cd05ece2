import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import type { Recipe } from "../../src/model/types.js";
import { buildScene } from "../../src/scene/build.js";
import type { Scene, Source } from "../../src/scene/types.js";
import { recipe } from "./models.js";

/** Builds the scene of a recipe and keeps what was found. */
export function shoot(parts: Partial<Recipe>): {
  readonly scene: Scene;
  readonly found: readonly Diagnostic[];
} {
  const found: Diagnostic[] = [];
  const scene = buildScene(recipe(parts), (diagnostic) => found.push(diagnostic));
  return { scene, found };
}

/** The codes of what was found. */
export function codes(found: readonly Diagnostic[]): readonly string[] {
  return found.map((diagnostic) => diagnostic.code);
}

/** The first source of a scene. */
export function firstSource(scene: Scene): Source {
  const source = scene.sources[0];
  if (source === undefined) throw new Error("the scene has no source");
  return source;
}
