import type { CheckedBlock } from "../block.js";
import { type Context, report } from "../context.js";
import type { ReadProperties } from "../properties.js";

/** Properties that say the same thing in two ways, by kind: the second does not go with the first. */
const clashes: ReadonlyMap<string, readonly (readonly [first: string, second: string])[]> = new Map([
  [
    "camera",
    [
      ["position", "distance"],
      ["position", "bearing"],
      ["position", "height"],
    ],
  ],
  [
    "point",
    [
      ["at", "up"],
      ["at", "ahead"],
      ["at", "left"],
      ["at", "right"],
      ["left", "right"],
    ],
  ],
  [
    "flat",
    [
      ["hinge", "at"],
      ["hinge", "faces"],
    ],
  ],
  ["gel", [["warms", "cools"]]],
]);

/** Reports properties of one block that exclude one another. True where there are none. */
export function checkClashes(ctx: Context, kind: string, read: ReadProperties): boolean {
  for (const [first, second] of clashes.get(kind) ?? []) {
    const place = read.places.get(second);
    const other = read.places.get(first);
    if (place === undefined || other === undefined) continue;
    report(
      ctx,
      "property.clash",
      place,
      { kind, first, second },
      { related: [{ place: other, text: `\`${first}\` is given here` }] },
    );
    return false;
  }
  return true;
}

/** The same for a block and all blocks inside it. */
export function checkAllClashes(ctx: Context, checked: CheckedBlock): boolean {
  let good = checkClashes(ctx, checked.kind, checked.read);
  for (const part of checked.parts) good = checkAllClashes(ctx, part) && good;
  return good;
}
