import { linearDimensions, scaleDimensions } from "../../src/units/dimension.js";
import { unitTable } from "../../src/units/spellings.js";
import { blocks, definableKinds, topKinds } from "../../src/vocabulary/index.js";
import { naturalLights } from "../../src/vocabulary/natural-lights.js";
import type { BlockRow } from "../../src/vocabulary/property.js";
import { results } from "../../src/vocabulary/results.js";
import { surfaces } from "../../src/vocabulary/surfaces.js";
import { valueTypes } from "../../src/vocabulary/value-types.js";

/** The vocabulary as data for people and tools without our code. */
export function vocabularyJson(): string {
  const rows: readonly BlockRow[] = Object.values(blocks);
  const data = {
    language: 1,
    blocks: rows.map((row) => ({
      kind: row.kind,
      help: row.help,
      named: row.named,
      ...(row.names === undefined ? {} : { names: row.names }),
      topLevel: (topKinds as readonly string[]).includes(row.kind),
      definable: (definableKinds as readonly string[]).includes(row.kind),
      parts: row.parts,
      properties: row.properties.map((property) => ({
        name: property.name,
        type: property.type,
        unit: property.unit ?? null,
        range: property.range ?? null,
        words: property.words ?? null,
        default: property.default,
        from: property.from ?? null,
        help: property.help,
        example: property.example,
      })),
    })),
    types: Object.entries(valueTypes).map(([name, type]) => ({
      name,
      ...type,
    })),
    units: unitTable,
    dimensions: [...linearDimensions, ...scaleDimensions].map(({ unit, words }) => ({ unit, words })),
    results,
    surfaces,
    naturalLights,
  };
  return `${JSON.stringify(data, null, 2)}\n`;
}
