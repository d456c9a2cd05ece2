import { quote } from "../core/quote.js";
import { say } from "../units/make.js";
import type { Quantity } from "../units/quantity.js";
import { type BlockKind, blocks } from "../vocabulary/index.js";
import type { BlockRow, PropertyRow } from "../vocabulary/property.js";
import { writeName } from "./make/points.js";
import type { BlockModel, Setting, Silence } from "./types.js";

/** A block as recipe text, its lines indented. */
export function printBlock(block: BlockModel, indent: string): readonly string[] {
  const name = block.name === null ? "" : ` ${writeName(block.name)}`;
  const inner = printProperties(block).map(([word, value]) => `${indent}  ${word}: ${value}`);
  for (const part of block.parts as readonly BlockModel[]) inner.push(...printBlock(part, `${indent}  `));
  if (inner.length === 0) return [`${indent}${block.block}${name} {}`];
  return [`${indent}${block.block}${name} {`, ...inner, `${indent}}`];
}

/** The properties of a block with their values as text, in the order of the vocabulary. */
export function printProperties(block: BlockModel): readonly (readonly [name: string, value: string])[] {
  const row: BlockRow = blocks[block.block as BlockKind];
  const values = block as unknown as Readonly<Record<string, unknown>>;
  return row.properties.flatMap((property) => {
    const value = Object.hasOwn(values, property.name) ? values[property.name] : undefined;
    return value === undefined ? [] : [[property.name, printValue(property, value)] as const];
  });
}

/** A block of settings as recipe text. */
export function printSettings(kind: string, settings: readonly Setting[]): string[] {
  return [`${kind} {`, ...settings.map((setting) => `  ${setting.name}: ${setting.written}`), "}"];
}

/** What is silenced, as recipe text. */
export function printSilence(rows: readonly Silence[]): string[] {
  return ["silence {", ...rows.map((row) => `  ${writeName(row.code)}: ${quote(row.because)}`), "}"];
}

/** A value as its property writes it: words bare, texts quoted, everything else by its own written form. */
export function printValue(property: PropertyRow, value: unknown): string {
  switch (property.type) {
    case "word":
      return String(value);
    case "name":
      return writeName(String(value));
    case "text":
      return quote(String(value));
    case "texts": {
      const texts = value as readonly string[];
      return `[${texts.map(quote).join(", ")}]`;
    }
    default: {
      const written = value as { readonly written: string };
      return "unit" in written && "value" in written ? say(written as unknown as Quantity) : written.written;
    }
  }
}
