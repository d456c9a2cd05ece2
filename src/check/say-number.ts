import { writeNumber } from "../core/write-number.js";
import type { BaseUnit } from "../units/dimension.js";
import { unitTable } from "../units/spellings.js";

/** A number in its base unit as people would write it: 0.08 m as `8 cm`. */
export function sayNumber(unit: BaseUnit, value: number): string {
  if (unit === "1") return writeNumber(value);
  if (unit === "f") return `f/${writeNumber(value)}`;
  if (unit === "ISO") return `ISO ${writeNumber(value)}`;
  if (unit === "m" && value !== 0 && Math.abs(value) < 0.01) return `${writeNumber(value * 1000)} mm`;
  if (unit === "m" && value !== 0 && Math.abs(value) < 1) return `${writeNumber(value * 100)} cm`;
  if (unit === "s" && value !== 0 && Math.abs(value) < 0.001) return `${writeNumber(value * 1_000_000)} us`;
  return `${writeNumber(value)} ${unitTable.find((row) => row.base === unit && row.times === 1 && row.over === 1)?.name ?? unit}`;
}
