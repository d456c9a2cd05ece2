import { type CompileOptions, compile, sortDiagnostics } from "../../src/compile.js";
import type { Source } from "../../src/core/source.js";
import { type Outcome, runWith } from "../../src/pipeline.js";
import { buildScene } from "../../src/scene/build.js";
import { sceneLight } from "../../src/transport/scene-light.js";

/** The whole way for one text, with bounced light by few paths: for tests that look at no number of light. */
export function coarseRun(source: Source, options: CompileOptions = {}): Outcome {
  return runWith(source, options, (scene) => sceneLight(scene, "look"));
}

/** What the program finds wrong in a text, up to what cannot be built in metres. */
export function findingsUpToScene(source: Source, options: CompileOptions = {}): Outcome["diagnostics"] {
  const { sound, recipe, diagnostics, sources } = compile(source, options);
  if (!sound || recipe?.kind !== "recipe") return diagnostics;
  const found = [...diagnostics];
  buildScene(recipe, (diagnostic) => found.push(diagnostic));
  return sortDiagnostics(found, sources);
}
