import { type Compiled, type CompileOptions, compile } from "./compile.js";
import { quote } from "./core/quote.js";
import type { Source } from "./core/source.js";
import { writeNumber } from "./core/write-number.js";
import type { Diagnostic } from "./diagnostics/diagnostic.js";
import { printDiagnostics } from "./diagnostics/print.js";
import { printBlock } from "./model/print-block.js";
import type { BlockModel, Recipe } from "./model/types.js";
import { parseFile } from "./syntax/parse.js";
import { lex } from "./text/lex.js";
import { say } from "./units/make.js";
import type { Quantity } from "./units/quantity.js";

/**
 * What may stand in a hole of a template: a text, which is quoted; a plain number; a quantity, point or other value of
 * the builder; a whole block; or a list of texts, numbers and values.
 */
export type Hole = HoleValue | BlockModel | readonly HoleValue[];

/** A text, a number, or a value with its written form. */
export type HoleValue = string | number | { readonly written: string };

/** A text with errors. `diagnostics` holds all findings, `sources` the texts they stand in; `message` prints the errors. */
export interface RecipeError extends Error {
  readonly name: "RecipeError";
  readonly diagnostics: readonly Diagnostic[];
  readonly sources: readonly Source[];
}

/** Whether something that was thrown is a text with errors. */
export function isRecipeError(error: unknown): error is RecipeError {
  return error instanceof Error && error.name === "RecipeError" && "diagnostics" in error;
}

/**
 * The checked model of a text, for callers that want no result to look into; `compile` gives the same as a result.
 * @throws {RecipeError} where the text has errors.
 */
export function recipeFrom(source: Source, options: CompileOptions = {}): Recipe {
  const compiled = compile(source, options);
  if (compiled.sound && compiled.recipe !== null) return compiled.recipe;
  throw recipeError(compiled);
}

function recipeError({ diagnostics, sources }: Compiled): RecipeError {
  const errors = diagnostics.filter(({ severity }) => severity === "error");
  const textOf = (file: string): string | null => sources.find(({ name }) => name === file)?.text ?? null;
  const error = new Error(printDiagnostics(errors, { textOf }).trimEnd());
  return Object.assign(error, { name: "RecipeError" as const, diagnostics, sources });
}

/**
 * A recipe written in code, checked: halfshade`halfshade 1 ...`. Each hole is one value, text or block, whatever it
 * holds, and can be nothing else.
 * @throws {RecipeError} where the text has errors.
 * @throws {TypeError} where a hole holds something else, or stands inside quotation marks or a comment.
 */
export function halfshade(strings: TemplateStringsArray, ...holes: readonly Hole[]): Recipe {
  return recipeFrom(halfshadeText(strings, ...holes));
}

/**
 * The text of a recipe written in code, not yet checked: for `compile` and `run`, which answer with a result.
 * Backslashes mean what they mean in a recipe, except before a backtick and before `${`.
 * @throws {TypeError} where a hole holds something else, or stands inside quotation marks or a comment.
 */
export function halfshadeText(strings: TemplateStringsArray, ...holes: readonly Hole[]): Source {
  let text = "";
  const filled: { readonly start: number; readonly end: number }[] = [];
  for (const [index, part] of strings.raw.entries()) {
    text += part.replace(/\\(`|\$\{)/g, "$1");
    if (index === holes.length) break;
    const start = text.length;
    text += holeText(holes[index], index + 1);
    filled.push({ start, end: text.length });
  }
  const source = { name: "template", text };
  const { tokens } = lex(source, () => undefined);
  const starts = new Set(tokens.map((token) => token.startOffset));
  const ends = new Set(tokens.map((token) => token.endOffset + 1));
  for (const [index, { start, end }] of filled.entries()) {
    if (starts.has(start) && ends.has(end)) continue;
    throw new TypeError(
      `Hole ${index + 1} stands inside quotation marks or a comment, or touches a word: a hole is a whole value, and texts are quoted by themselves.`,
    );
  }
  return source;
}

function holeText(hole: unknown, index: number): string {
  if (Array.isArray(hole)) return `[${hole.map((item) => valueText(item, index)).join(", ")}]`;
  if (typeof hole === "object" && hole !== null && "block" in hole && "parts" in hole)
    return blockText(hole as BlockModel, index);
  return valueText(hole, index);
}

function valueText(value: unknown, index: number): string {
  if (typeof value === "string") return quote(value);
  if (typeof value === "number" && Number.isFinite(value)) return writeNumber(value);
  if (
    typeof value !== "object" ||
    value === null ||
    !("written" in value) ||
    typeof value.written !== "string"
  )
    throw new TypeError(
      `Hole ${index} holds ${String(value)}: a text, a finite number, a quantity, another value of the builder, a block or a list is wanted.`,
    );
  const text = "unit" in value && "value" in value ? say(value as unknown as Quantity) : value.written;
  if (isOneValue(text)) return text;
  throw new TypeError(`Hole ${index} holds a value that is not written as one value: ${text}`);
}

/** Whether a text, put behind the colon of a property, is its value from end to end and changes nothing around it. */
function isOneValue(text: string): boolean {
  const before = "halfshade 1\nlight x {\n  y: ";
  const { file, complete } = parseFile({ name: "hole", text: `${before}${text}\n}\n` }, () => undefined);
  const [item, ...more] = file.items;
  if (!complete || more.length > 0 || item?.kind !== "block") return false;
  const [entry, ...others] = item.entries;
  if (entry?.kind !== "property" || others.length > 0) return false;
  const { start, end } = entry.value.span;
  return start === before.length && end === before.length + text.length;
}

function blockText(block: BlockModel, index: number): string {
  const text = printBlock(block, "").join("\n");
  const before = "halfshade 1\n";
  const { file, complete } = parseFile({ name: "hole", text: `${before}${text}\n` }, () => undefined);
  const [item, ...more] = file.items;
  const whole =
    item?.kind === "block" &&
    item.span.start === before.length &&
    item.span.end === before.length + text.length;
  if (complete && whole && more.length === 0 && counted(item) === countedModel(block)) return text;
  throw new TypeError(`Hole ${index} holds a block that is not written as one block: ${text}`);
}

interface Entries {
  readonly kind: string;
  readonly entries?: readonly Entries[];
}

/** Properties and blocks in a block that was read, itself included. */
const counted = ({ entries = [] }: Entries): number =>
  entries.reduce((sum, entry) => sum + counted(entry), 1);

/** The same of a block made by code. */
function countedModel(block: BlockModel): number {
  const own = Object.entries(block).filter(
    ([name, value]) => !["block", "name", "parts", "origins"].includes(name) && value !== undefined,
  );
  return (block.parts as readonly BlockModel[]).reduce(
    (sum, part) => sum + countedModel(part),
    1 + own.length,
  );
}
