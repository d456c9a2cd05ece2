import type { PointValue } from "../../model/values.js";
import type { Expression } from "../../syntax/ast.js";
import type { CheckedBlock } from "../block.js";
import { type Context, here, replace, report } from "../context.js";
import { bare } from "../words.js";

/**
 * Notes a key light or a camera whose coordinates put it behind the subject, since a sign is easily mistaken. Steps
 * such as `behind: 2 m` say it in a word, so they are taken as meant.
 */
export function noteBehind(ctx: Context, checked: CheckedBlock): void {
  const position = checked.read.values.get("position") as PointValue | undefined;
  if (position?.kind !== "coordinates" || position.y.value <= 0) return;
  if (checked.kind === "light" && !isKey(ctx, checked)) return;
  const y = coordinateY(checked);
  const place = checked.read.places.get("position") ?? here(ctx, checked.block.span);
  const fixes =
    y?.kind === "quantity"
      ? [replace(ctx, `write \`-${position.y.written}\``, y.span, `-${position.y.written}`)]
      : [];
  report(ctx, "placement.behind", y?.span ?? place, { name: checked.name ?? checked.kind }, { fixes });
}

/** A light is the key by its role, or by being the only one. */
function isKey(ctx: Context, checked: CheckedBlock): boolean {
  const role = checked.read.values.get("role");
  const lights = [...ctx.declared.values()].filter((declared) => declared.kind === "light");
  return role === "key" || (role === undefined && lights.length === 1);
}

/** The second coordinate as it stands in the block itself. */
function coordinateY(checked: CheckedBlock): Expression | null {
  for (const entry of checked.block.entries) {
    if (entry.kind !== "property" || entry.path.parts[0]?.text !== "position") continue;
    const value = bare(entry.value);
    return value.kind === "group" ? (value.members[1] ?? null) : null;
  }
  return null;
}
