import { type Evaluated, run } from "../../src/pipeline.js";
import type { Report } from "../../src/report/schema/report.js";
import type { Scene, Source } from "../../src/scene/types.js";

/** A recipe of blocks, worked out; throws with what was found where it has an error. */
export function worked(blocks: string): Evaluated {
  const text = `halfshade 1\nrecipe "test"\n${blocks}`;
  const { evaluated, diagnostics } = run({ name: "test.light", text });
  if (evaluated !== null) return evaluated;
  throw new Error(diagnostics.map(({ code, args }) => `${code} ${JSON.stringify(args)}`).join("\n"));
}

/** The scene of some blocks. */
export function sceneOf(blocks: string): Scene {
  return worked(blocks).scene;
}

/** The report of some blocks. */
export function reportOf(blocks: string): Report {
  return worked(blocks).report;
}

/** A source by its name. */
export function sourceOf(scene: Scene, name: string): Source {
  const source = scene.sources.find((row) => row.name === name);
  if (source === undefined) throw new Error(`no source ${name}`);
  return source;
}
