import { targetOf } from "../../model/tables/target.js";
import type { SweepTarget } from "../../model/tables/types.js";
import type { File, Path } from "../../syntax/ast.js";
import { blockRow } from "../../vocabulary/index.js";
import type { BlockRow, PropertyRow } from "../../vocabulary/property.js";
import { blockAt, type Trail } from "../change/edit.js";
import { follow, letIndex } from "../change/find.js";
import type { KitLook } from "../kits/look.js";

/** What the path of a sweep leads to. */
export type Led =
  | { readonly kind: "variant" }
  | { readonly kind: "let"; readonly name: string }
  | { readonly kind: "like"; readonly trail: Trail; readonly block: string }
  | { readonly kind: "property"; readonly row: PropertyRow; readonly target: SweepTarget };

/** Follows the path of a sweep. Null where it leads nowhere; `changeFile` says why. */
export function whereTo(file: File, path: Path, kits: KitLook): Led | null {
  const only = path.parts.length === 1 ? (path.parts[0]?.text ?? "") : null;
  if (only !== null && letIndex(file, path) >= 0) return { kind: "let", name: only };
  if (only === "variant" && path.parts[0]?.quoted === false) return { kind: "variant" };
  const { trail, missing, rest } = follow(file, path, kits);
  const block = missing[missing.length - 1] ?? (trail === null ? null : blockAt(file, trail));
  const row = block === null ? null : blockRow(block.words[0]?.text ?? "");
  if (block === null || row === null) return null;
  const [word, ...more] = rest;
  if (more.length > 0) return null;
  const property = row.properties.find((one) => one.name === word?.text);
  if (property !== undefined)
    return {
      kind: "property",
      row: property,
      target: target(file, row, trail, block.words[1]?.text, property),
    };
  if (trail === null || missing.length > 0 || !(word === undefined || word.text === "like")) return null;
  return { kind: "like", trail, block: row.kind };
}

/** What a property inside another block or a definition belongs to has no place in the model of its own. */
function target(
  file: File,
  row: BlockRow,
  trail: Trail | null,
  name: string | undefined,
  property: PropertyRow,
): SweepTarget {
  const [item, ...inside] = trail ?? [];
  const placed = item !== undefined && inside.length === 0 && file.items[item]?.kind === "block";
  return placed ? targetOf(row.kind, name ?? null, property) : { kind: "text" };
}
