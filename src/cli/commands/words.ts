import { wrap } from "../../diagnostics/print-width.js";
import { renderJson } from "../../render/json.js";
import type { BlockRow, PropertyRow } from "../../vocabulary/property.js";
import { near } from "../arguments/near.js";
import { CLEAN } from "../exit.js";
import { misuse, type Session } from "../session.js";
import { type Language, language } from "../stages/load.js";

const INDENT = "    ";

const entry = (head: string, texts: readonly string[], width: number): readonly string[] => [
  head,
  ...texts.flatMap((text) => wrap(text, width - INDENT.length).map((line) => INDENT + line)),
];

/** One property: its type, what it is for, an example, what holds without it, and what is allowed. */
function propertyLines(stage: Language, row: PropertyRow, width: number): readonly string[] {
  const { words } = stage.valueTypes[row.type];
  const facts = [row.help, `Example: ${row.name}: ${row.example}`, `Left out: ${row.default}`];
  if (row.words !== undefined) facts.push(`Words: ${row.words.join(", ")}`);
  if (row.range !== undefined) facts.push(`Allowed: ${row.range[0]} to ${row.range[1]} in the base unit`);
  if (row.from !== undefined) facts.push(`Measured from ${row.from}`);
  if (row.later === true) facts.push("Read and kept; this version does not compute with it.");
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

/** `halfshade words [KIND]`: the vocabulary, straight from the tables that the checker uses. */
export async function wordsCommand(session: Session): Promise<number> {
  const stage = await language();
  const kinds = Object.values<BlockRow>(stage.blocks);
  const wanted = session.operands[0];
  const json = session.options.get("format") === "json";
  const out = (lines: readonly string[]): number => {
    session.io.out(lines.map((line) => `${line.trimEnd()}\n`).join(""));
    return CLEAN;
  };
  if (wanted === undefined) {
    if (json) session.io.out(renderJson({ format: 1, kinds, results: stage.results }));
    else out(kinds.flatMap((row) => entry(row.kind, [row.help], session.width)));
    return CLEAN;
  }
  if (wanted === "results") {
    if (json) session.io.out(renderJson({ format: 1, results: stage.results }));
    else out(resultLines(stage, session.width));
    return CLEAN;
  }
  const row = kinds.find((one) => one.kind === wanted);
  if (row === undefined) {
    const names = [...kinds.map((one) => one.kind), "results"];
    return misuse(
      session,
      `There is no kind of block "${wanted}".${near(wanted, names)} \`halfshade words\` lists them.`,
    );
  }
  if (json) session.io.out(renderJson({ format: 1, kind: row }));
  else out(kindLines(stage, row, session.width));
  return CLEAN;
}
