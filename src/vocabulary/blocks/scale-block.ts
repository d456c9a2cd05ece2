import { writeNumber } from "../../core/write-number.js";
import type { BaseUnit } from "../../units/dimension.js";
import type { BlockRow } from "../property.js";

/** A block whose properties are the rows of a table of values with units. */
export function scaleBlock<K extends string>(
  kind: K,
  help: string,
  table: readonly {
    readonly name: string;
    readonly value: number;
    readonly unit: BaseUnit;
    readonly help: string;
    readonly range?: readonly [low: number, high: number];
  }[],
): BlockRow & { readonly kind: K } {
  return {
    kind,
    help,
    named: "none",
    properties: table.map((row) => {
      const written = row.unit === "1" ? writeNumber(row.value) : `${writeNumber(row.value)} ${row.unit}`;
      return {
        name: row.name,
        type: "scale",
        unit: row.unit,
        help: row.help,
        example: written,
        default: written,
        sure: true,
        ...(row.range === undefined ? {} : { range: row.range }),
      };
    }),
    parts: [],
  };
}
