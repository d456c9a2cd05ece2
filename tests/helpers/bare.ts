/** A tree without its places, for comparing what two texts say. */
export function bare(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(bare);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key]) => key !== "span")
      .map(([key, inner]) => [key, bare(inner)]),
  );
}
