import { type Compiled, type CompileOptions, compile, sortDiagnostics } from "./compile.js";
import { lineStarts, positionAt, type Source } from "./core/source.js";
import type { Diagnostic } from "./diagnostics/diagnostic.js";
import { printRecipe } from "./model/print.js";
import type { Recipe } from "./model/types.js";
import { buildReport, type ReportOptions } from "./report/build.js";
import type { Report } from "./report/schema/report.js";
import type { LightOf } from "./report/set-up-lights.js";
import { type LineOf, type Verdict, verdictOf } from "./report/verdict.js";
import { buildScene } from "./scene/build.js";
import type { Scene } from "./scene/types.js";
import { makeTable } from "./tables/table.js";
import type { Table } from "./tables/types.js";
import { type LightField, lightField } from "./transport/light-field.js";
import { sceneLight } from "./transport/scene-light.js";

/**
 * The whole way on one page: text -> syntax -> checked model -> scene -> light -> report. Each stage is a pure function;
 * every intermediate is handed out, so that a caller can stop, look or go on anywhere.
 */

/** What the second half of the way gives: the scene in metres, the light per lumen-second, and the report. */
export interface Evaluated {
  readonly recipe: Recipe;
  readonly scene: Scene;
  readonly field: LightField;
  readonly report: Report;
  /** What could not be built in metres. */
  readonly diagnostics: readonly Diagnostic[];
}

/** Both halves for one text. `evaluated` is null where the text has errors. */
export interface Outcome extends Compiled {
  readonly evaluated: Evaluated | null;
}

/**
 * Works out a checked recipe.
 * @param source - The text it was written in, if any; with it the report says on which line an expectation stands.
 */
export function evaluate(recipe: Recipe, source?: Source): Evaluated {
  return evaluateWith(recipe, sceneLight, {}, source);
}

/** Works out a recipe with light that may be shared, and says what variant it is. */
export function evaluateWith(
  recipe: Recipe,
  lightOf: LightOf,
  options: ReportOptions,
  source?: Source,
): Evaluated {
  const diagnostics: Diagnostic[] = [];
  const scene = buildScene(recipe, (diagnostic) => diagnostics.push(diagnostic));
  const light = lightOf(scene);
  const field = lightField(scene, light);
  const report = buildReport(recipe, scene, light, { ...options, lineOf: linesOf(source) });
  return { recipe, scene, field, report, diagnostics };
}

/** A set-up judged without the rest of its report. */
export interface Judgement extends Verdict {
  /** What could not be built in metres. */
  readonly diagnostics: readonly Diagnostic[];
}

/** What the report of a recipe says to a check, with light that may be shared. */
export function judgeWith(recipe: Recipe, lightOf: LightOf, source?: Source): Judgement {
  const diagnostics: Diagnostic[] = [];
  const scene = buildScene(recipe, (diagnostic) => diagnostics.push(diagnostic));
  return { ...verdictOf(recipe, scene, lightOf(scene), linesOf(source)), diagnostics };
}

function linesOf(source: Source | undefined): LineOf {
  const starts = source === undefined ? null : lineStarts(source.text);
  return ({ origin }) =>
    starts === null || origin === undefined ? null : positionAt(starts, origin.start).line;
}

/** The lesson tables of a text without errors, in file order; their rows are worked out as they are asked for. */
export function tablesOf({ recipe, sound, rowSetUp }: Compiled): readonly Table[] {
  if (recipe === null || !sound) return [];
  return recipe.tables.map((table) =>
    makeTable({ recipe, table, setUp: (indices) => rowSetUp(table, indices) }),
  );
}

/** Reads, checks and works out one text, and the kits it uses. It never throws, whatever the text. */
export function run(source: Source, options: CompileOptions = {}): Outcome {
  return runWith(source, options, sceneLight);
}

/** The same with light that may be shared, or coarser. */
export function runWith(source: Source, options: CompileOptions, lightOf: LightOf): Outcome {
  const compiled = compile(source, options);
  if (!compiled.sound || compiled.recipe === null || compiled.recipe.kind !== "recipe") {
    return { ...compiled, evaluated: null };
  }
  const evaluated = evaluateWith(compiled.recipe, lightOf, {}, source);
  const diagnostics = sortDiagnostics([...compiled.diagnostics, ...evaluated.diagnostics], compiled.sources);
  const sound = diagnostics.every((diagnostic) => diagnostic.severity !== "error");
  return { ...compiled, diagnostics, sound, evaluated: sound ? evaluated : null };
}

/** Checks a recipe made by code as if it had been written: the same findings, at the places of its printed text. */
export function checkRecipe(recipe: Recipe, options: CompileOptions = {}): Compiled {
  return compile({ name: "recipe", text: printRecipe(recipe) }, options);
}
