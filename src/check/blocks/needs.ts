import { blocks } from "../../vocabulary/index.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import type { CheckedBlock } from "../block.js";
import { report } from "../context.js";

/** Properties without which a block means nothing, by kind. They are the vocabulary's rows with default "needed". */
function neededOf(checked: CheckedBlock): readonly PropertyRow[] {
  const rows: readonly PropertyRow[] = blocks[checked.kind].properties;
  const needed: PropertyRow[] = [];
  for (const row of rows)
    if (row.default === "needed" || (row.name === "distance" && lacksTape(checked))) needed.push(row);
  return needed;
}

/** True where another property stands in for a needed one. */
function excused(checked: CheckedBlock, name: string): boolean {
  const given = checked.read.given;
  if (checked.kind === "flat" && name === "at") return given.has("hinge");
  if (checked.kind === "camera" && name === "height") return given.has("position");
  return false;
}

/** A camera without a `position` is placed by its tape. */
function lacksTape(checked: CheckedBlock): boolean {
  const given = checked.read.given;
  return checked.kind === "camera" && !given.has("position") && !given.has("distance");
}

/** Reports what a block and the blocks inside it lack. True when nothing is missing and every value was read. */
export function checkNeeds(checked: CheckedBlock): boolean {
  let good = checked.complete && checked.read.values.size === checked.read.given.size;
  if (checked.complete) {
    for (const row of neededOf(checked)) {
      if (checked.read.given.has(row.name) || excused(checked, row.name)) continue;
      const span = checked.block.words[0]?.span ?? checked.block.span;
      report(checked.home, "property.missing", span, {
        kind: checked.kind,
        name: row.name,
        example: row.example,
      });
      good = false;
    }
  }
  for (const part of checked.parts) good = checkNeeds(part) && good;
  return good;
}
