import type { File } from "../syntax/ast.js";
import { type CanonicalUnit, unitText } from "./pieces.js";

/** Whether two trees say the same: places do not count, nor how a unit is spelt. */
export function saysTheSame(a: File, b: File, canonicalUnit: CanonicalUnit): boolean {
  return same(a, b, "", canonicalUnit);
}

function same(a: unknown, b: unknown, key: string, canonicalUnit: CanonicalUnit): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a === "string" && typeof b === "string") {
    return key === "unit" && unitText(a, canonicalUnit) === unitText(b, canonicalUnit);
  }
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    if (!Array.isArray(a) || !Array.isArray(b) || a.length !== b.length) return false;
    return a.every((each, index) => same(each, b[index], key, canonicalUnit));
  }
  const left = Object.entries(a);
  const right = new Map<string, unknown>(Object.entries(b));
  if (left.length !== right.size) return false;
  return left.every(([name, value]) => {
    if (name === "span") return true;
    const inUnit = (key === "unit" || key === "as") && name === "text";
    return right.has(name) && same(value, right.get(name), inUnit ? "unit" : name, canonicalUnit);
  });
}
