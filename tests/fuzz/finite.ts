/** The first place in plain data that JSON could not hold as it is: not a number, without end, or minus nought. */
export function unsound(value: unknown, path = ""): string | null {
  if (typeof value === "number")
    return Number.isFinite(value) && !Object.is(value, -0) ? null : `${path}: ${value}`;
  if (typeof value === "undefined") return path.endsWith("?") ? null : `${path}: undefined`;
  if (typeof value !== "object" || value === null) return null;
  for (const [key, inner] of Object.entries(value)) {
    if (inner === undefined) continue;
    const found = unsound(inner, `${path}.${key}`);
    if (found !== null) return found;
  }
  return null;
}
