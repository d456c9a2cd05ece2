import { keywords, tokenKinds } from "../../src/text/kinds.js";

/** Kinds that are only told apart by what stands before them. */
const places: ReadonlyMap<string, string> = new Map([
  ["By", "behind a number, or a number and its unit"],
  ["CompoundUnit", "behind a number or the word as"],
  ["FNumber", "not behind a point"],
]);

/** Every kind of token as data: what it is, what people call it, and its pattern (a regular expression, flag `u`). */
export function tokensJson(): string {
  const data = {
    language: 1,
    note: "Kinds are listed in the order in which a reader that tries patterns has to try them. Words of the language are matched whole, never inside a longer name, and may all be names. Blanks are space and tab.",
    comment: "#[^\\r\\n]*",
    words: [...keywords.keys()],
    kinds: tokenKinds
      .filter((kind) => kind.role !== "mistake")
      .map(({ type, role, pattern, label }) => ({
        name: type.name,
        role,
        label,
        pattern,
        ...(places.has(type.name) ? { only: places.get(type.name) } : {}),
      })),
  };
  return `${JSON.stringify(data, null, 2)}\n`;
}
