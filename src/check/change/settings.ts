import type { Source } from "../../core/source.js";
import type { Place, Span } from "../../core/span.js";
import { placeIn } from "../../core/span.js";
import type { Code } from "../../diagnostics/catalogue/index.js";
import { finding } from "../../diagnostics/create.js";
import type { Diagnostic, Sink } from "../../diagnostics/diagnostic.js";
import type { Property } from "../../syntax/ast.js";
import { parseFile } from "../../syntax/parse.js";
import type { Change } from "./change.js";

/** What stands around one setting to make a whole text of it. */
const before = 'halfshade 1\nrecipe "x"\nvariant "x" {\n';
const after = "\n}\n";

/**
 * Values given from outside the recipe, one a line: `key.distance=3 m`. They are read as the lines of a variant are,
 * with the same values and the same findings; those point into the text that is given here.
 */
export function readSettings(source: Source, sink: Sink): readonly Change[] {
  let at = 0;
  return source.text.split("\n").flatMap((line): readonly Change[] => {
    const start = at;
    at += line.length + 1;
    const change = line === "" ? null : readSetting(source.name, line, start, sink);
    return change === null ? [] : [change];
  });
}

function readSetting(file: string, line: string, start: number, sink: Sink): Change | null {
  const all = { start, end: start + line.length };
  const refuse = (): null => {
    sink(finding("path.setting", placeIn(file, all), {}));
    return null;
  };
  const equals = line.indexOf("=");
  if (equals <= 0 || /[\r\u2028\u2029]/.test(line)) return refuse();
  const text = `${before}${line.slice(0, equals)}:${line.slice(equals + 1)}${after}`;
  const inside = (place: Span): Place => {
    const move = (offset: number): number =>
      start + Math.min(Math.max(0, offset - before.length), line.length);
    return { file, start: move(place.start), end: move(place.end) };
  };
  const { parsed, found } = read(file, text);
  const property = onlyProperty(parsed.file.items);
  if (property === null) return refuse();
  if (found.some(({ severity }) => severity === "error")) {
    for (const diagnostic of found) sink(movedInto(diagnostic, inside));
    return null;
  }
  const { path, value, companion, span } = placed(property, inside);
  return { kind: "set", path, value, companion, span };
}

/** Spellings that can mean one thing only: a shell has no editor that would mend them. */
const clear: ReadonlySet<string> = new Set<Code>(["iso.form", "f-number.slash"]);

/** The text read; once more as `ISO 400` or `f/8` where nothing but that is wrong with `ISO400` or `f8`. */
function read(file: string, text: string): { parsed: ReturnType<typeof parseFile>; found: Diagnostic[] } {
  const found: Diagnostic[] = [];
  const parsed = parseFile({ name: file, text }, (diagnostic) => found.push(diagnostic));
  const [first, ...more] = found;
  const edit = first !== undefined && clear.has(first.code) ? first.fixes[0]?.edits[0] : undefined;
  if (edit === undefined || more.length > 0) return { parsed, found };
  const mended = text.slice(0, edit.place.start) + edit.text + text.slice(edit.place.end);
  const again: Diagnostic[] = [];
  const second = parseFile({ name: file, text: mended }, (diagnostic) => again.push(diagnostic));
  return again.length > 0 ? { parsed, found } : { parsed: second, found: again };
}

/** The property that a setting comes to; null where it comes to anything else, such as a second line or a block. */
function onlyProperty(items: ReturnType<typeof parseFile>["file"]["items"]): Property | null {
  const [variant, ...more] = items;
  if (variant?.kind !== "variant" || more.length > 0) return null;
  const [line, ...others] = variant.lines;
  return line?.kind === "property" && others.length === 0 ? line : null;
}

/** A finding about the text that was made up, as one about what was given. */
function movedInto(diagnostic: Diagnostic, inside: (place: Span) => Place): Diagnostic {
  return {
    ...diagnostic,
    place: inside(diagnostic.place),
    related: diagnostic.related.map((label) => ({ ...label, place: inside(label.place) })),
    fixes: diagnostic.fixes.map((fix) => ({
      ...fix,
      edits: fix.edits.map((edit) => ({ ...edit, place: inside(edit.place) })),
    })),
  };
}

/** A tree whose every span names the file it stands in, so that findings about it are told from the recipe's. */
export function placed<T>(node: T, inside: (place: Span) => Place): T {
  if (Array.isArray(node)) return node.map((item) => placed(item, inside)) as T;
  if (typeof node !== "object" || node === null) return node;
  return Object.fromEntries(
    Object.entries(node).map(([key, value]) =>
      key === "span" ? [key, inside(value as Span)] : [key, placed(value, inside)],
    ),
  ) as T;
}
