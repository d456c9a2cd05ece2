import { printNode } from "../../format/print-node.js";
import { writeName } from "../../model/make/points.js";
import type { Value } from "../../syntax/ast.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { type Context, replace, report } from "../context.js";
import { nearNames, suggestion } from "../suggest.js";
import { bare, singleWord } from "../words.js";
import { refuseType } from "./want.js";

/** The room's own surfaces, as a light may name them. */
const roomSurfaces = ["ceiling", "floor", "wall_left", "wall_right", "wall_back", "wall_front"] as const;

/** What the two properties that name a surface take. */
const wanted: Readonly<Record<string, { readonly kinds: ReadonlySet<string>; readonly words: string }>> = {
  through: { kinds: new Set(["scrim"]), words: "a scrim" },
  into: {
    kinds: new Set(["flat", "paper", "card", "panel", "disc", "scrim", "table"]),
    words: "a flat, a card, another flat surface of the set, the ceiling, the floor or a wall",
  },
};

/** The name of a surface that a light shines through or into, kept as written. */
export function readName(ctx: Context, row: PropertyRow, value: Value): string | null {
  const word = singleWord(bare(value));
  if (word === null) return refuseType(ctx, row, value);
  const rule = wanted[row.name];
  const room: readonly string[] = row.name === "into" ? roomSurfaces : [];
  if (room.includes(word)) return word;
  const fits = [...ctx.declared.values()].filter(
    ({ block, kind }) => kind === "piece" && rule?.kinds.has(block.words[0]?.text ?? "") === true,
  );
  if (fits.some(({ name }) => name === word)) return word;
  if ((roomSurfaces as readonly string[]).includes(word) && !ctx.declared.has(word)) {
    const words = `${rule?.words ?? "a surface"}; to bounce off it, write \`into: ${word}\``;
    const kind = "surface of the room";
    report(ctx, "name.kind", value.span, { name: word, kind, property: row.name, wanted: words });
    return null;
  }
  const known = [...fits.map(({ name }) => writeName(name)), ...room];
  const near = nearNames(word, known);
  const fixes = near.map((name) => replace(ctx, `write \`${name}\``, value.span, name));
  const other = ctx.declared.get(word);
  if (other !== undefined) {
    const kind = other.block.words[0]?.text ?? other.kind;
    report(
      ctx,
      "name.kind",
      value.span,
      { name: word, kind, property: row.name, wanted: rule?.words ?? "a surface" },
      { fixes },
    );
    return null;
  }
  report(
    ctx,
    "name.unknown",
    value.span,
    { name: printNode(value), known: suggestion(near, known, "There is none in the set.") },
    { fixes },
  );
  return null;
}
