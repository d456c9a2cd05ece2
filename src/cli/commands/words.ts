import { visibleLine } from "../../diagnostics/print-visible.js";
import { wrap } from "../../diagnostics/print-width.js";
import { renderJson } from "../../render/json.js";
import { shortest } from "../../render/number.js";
import type { BlockRow, PropertyRow } from "../../vocabulary/property.js";
import type { ValueType } from "../../vocabulary/value-types.js";
import { near } from "../arguments/near.js";
import { CLEAN } from "../exit.js";
import { misuse, type Session } from "../session.js";
import { type Language, language } from "../stages/load.js";

const INDENT = "    ";

const entry = (head: string, texts: readonly string[], width: number): readonly string[] => [
  head,
  ...texts.flatMap((text) => wrap(text, width - INDENT.length).map((line) => INDENT + line)),
];

/** Units of the ranges, by type of value; a share is shown in per cent. */
const rangeUnits: ReadonlyMap<ValueType, string> = new Map<ValueType, string>([
  ["length", "m"],
  ["tape", "m"],
  ["rectangle", "m"],
  ["volume", "m"],
  ["angle", "deg"],
  ["bearing", "deg"],
  ["time", "s"],
  ["energy", "Ws"],
  ["watts", "W"],
  ["mass", "kg"],
  ["illuminance", "lx"],
  ["temperature", "K"],
  ["stops", "stop"],
  ["mired", "mired"],
]);

/** `0.3 to 2.6 m`. */
function allowed(type: ValueType, own: string, [low, high]: readonly [number, number]): string {
  if (type === "fraction") return `${shortest(low * 100, 4)} to ${shortest(high * 100, 4)} %`;
  const unit = rangeUnits.get(type) ?? (own === "1" ? "" : own);
  return `${shortest(low, 6)} to ${shortest(high, 6)}${unit === "" ? "" : ` ${unit}`}`;
}

/** One property: its type, what it is for, an example, what holds without it, and what is allowed. */
function propertyLines(stage: Language, row: PropertyRow, width: number): readonly string[] {
  const { words } = stage.valueTypes[row.type];
  const facts = [row.help, `Example: ${row.name}: ${row.example}`, `Left out: ${row.default}`];
  if (row.words !== undefined) facts.push(`Words: ${row.words.join(", ")}`);
  if (row.range !== undefined) facts.push(`Allowed: ${allowed(row.type, row.unit ?? "", row.range)}`);
  if (row.from !== undefined) facts.push(`Measured from ${row.from}`);
  return entry(`  ${row.name}: ${words}`, facts, width);
}

function kindLines(stage: Language, row: BlockRow, width: number): readonly string[] {
  const names = {
    none: "It has no name.",
    needed: "It needs a name.",
    optional: "It may have a name.",
  }[row.named];
  const lines = [row.kind, ...wrap(`${row.help} ${names}`, width)];
  if (row.names !== undefined) lines.push(...wrap(`Names: ${row.names.join(", ")}`, width));
  if (row.parts.length > 0) lines.push(...wrap(`May hold: ${row.parts.join(", ")}`, width));
  return [...lines, ...row.properties.flatMap((property) => ["", ...propertyLines(stage, property, width)])];
}

function resultLines(stage: Language, width: number): readonly string[] {
  return stage.results.flatMap((row) => {
    const later =
      "later" in row && row.later ? ["Known to the language; this version does not work it out."] : [];
    const example = row.example;
    return entry(
      `  ${row.name}${row.of === "nothing" ? "" : ` of a ${row.of}`}`,
      [row.help, `Example: ${example}`, ...later],
      width,
    );
  });
}

const unitLines = (stage: Language, width: number): readonly string[] =>
  stage.unitTable.flatMap((row) =>
    entry(
      `  ${row.name}`,
      [stage.dimensionWords(row.base), ...(row.also.length === 0 ? [] : [`Also: ${row.also.join(", ")}`])],
      width,
    ),
  );

const surfaceLines = (stage: Language, width: number): readonly string[] =>
  stage.surfaces.flatMap((row) =>
    entry(`  ${row.name}: ${shortest(row.reflectance * 100, 3)} %`, [`Source: ${row.source}`], width),
  );

/** Lists that are no blocks: by name, the rows as data and as lines. */
const lists: ReadonlyMap<
  string,
  {
    readonly rows: (stage: Language) => unknown;
    readonly lines: (stage: Language, width: number) => readonly string[];
  }
> = new Map([
  ["results", { rows: (stage: Language) => stage.results, lines: resultLines }],
  ["units", { rows: (stage: Language) => stage.unitTable, lines: unitLines }],
  ["surfaces", { rows: (stage: Language) => stage.surfaces, lines: surfaceLines }],
]);

const lesson = 'table "Walk it in" {\n  sweep key.distance over [1 m, 2 m]\n  show key.angular_size\n}';

/** Statements, which are no blocks: an example, and the page that is about them. */
export const statements: ReadonlyMap<string, readonly [example: string, page: string]> = new Map([
  ["expect", ['expect key.angular_size > 20 deg because "soft"', "docs/guide/language.md"]],
  ["hold", ["hold face.disc(towards: key) is f/8 by key.power", "docs/guide/variants.md"]],
  ["variant", ['variant "No fill" { remove fill }', "docs/guide/variants.md"]],
  ["lesson", [lesson, "docs/guide/tables.md"]],
  ["table", [lesson, "docs/guide/tables.md"]],
  ["sweep", ["sweep key.distance from 1 m to 4 m step 50 cm", "docs/guide/tables.md"]],
  ["show", ['show key.angular_size as deg "Size"', "docs/guide/tables.md"]],
  ["measured", ["measured { face.disc(towards: key) is f/7.1 }", "docs/guide/sessions.md"]],
  ["session", ['session "The day" of "./plan.light"', "docs/guide/sessions.md"]],
  ["kit", ['kit "The cupboard"', "docs/guide/language.md"]],
  ["let", ["let gap = 12 cm", "docs/guide/language.md"]],
  ["define", ["define light head { shape: disc(60 cm) }", "docs/guide/language.md"]],
  ["use", ['use head from "./kit.light"', "docs/guide/language.md"]],
]);

/** A statement in a line or two; nothing for a word that begins none. */
function statementLines(word: string, width: number): readonly string[] {
  const found = statements.get(word);
  if (found === undefined) return [];
  const [example, page] = found;
  const what = word === "table" || word === "lesson" ? "A lesson table" : `\`${word}\``;
  const more = word === "expect" ? " `halfshade words results` lists what it may ask for." : "";
  return [
    ...wrap(`${what} is a statement and no kind of block; ${page} is about it.${more}`, width),
    ...example.split("\n").map((line) => `  ${line}`),
  ];
}

/** `halfshade words [KIND]`: the vocabulary, straight from the tables that the checker uses. */
export async function wordsCommand(session: Session): Promise<number> {
  const stage = await language();
  const { width } = session;
  const kinds = Object.values<BlockRow>(stage.blocks);
  const wanted = session.operands[0];
  const say = (data: Readonly<Record<string, unknown>>, lines: readonly string[]): number => {
    const json = session.options.get("format") === "json";
    session.io.out(
      json ? renderJson({ format: 1, ...data }) : lines.map((line) => `${line.trimEnd()}\n`).join(""),
    );
    return CLEAN;
  };
  if (wanted === undefined) {
    const more = `Lists: ${[...lists.keys()].map((name) => `halfshade words ${name}`).join(", ")}`;
    return say({ kinds }, [
      ...kinds.flatMap((row) => entry(row.kind, [row.help], width)),
      "",
      ...wrap(more, width),
    ]);
  }
  const list = lists.get(wanted);
  if (list !== undefined) return say({ [wanted]: list.rows(stage) }, list.lines(stage, width));
  const row = kinds.find((one) => one.kind === wanted);
  const statement = statementLines(wanted, width);
  const also = statement.length === 0 ? [] : ["", ...statement];
  if (row !== undefined) return say({ kind: row }, [...kindLines(stage, row, width), ...also]);
  const [example, page] = statements.get(wanted) ?? ["", ""];
  if (statement.length > 0) return say({ statement: { word: wanted, example, page } }, statement);
  const names = [...kinds.map((one) => one.kind), ...lists.keys(), ...statements.keys()];
  const shown = visibleLine(wanted);
  return misuse(
    session,
    `There is no kind of block "${shown}".${near(wanted, names)} \`halfshade words\` lists them.`,
  );
}
