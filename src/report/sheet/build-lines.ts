import type { Recipe } from "../../model/types.js";

/** What stands elsewhere on the sheet, or is no matter of building. */
const elsewhere: ReadonlySet<string> = new Set([
  "power",
  "full_power",
  "calibration",
  "distance",
  "floor_distance",
  "bearing",
  "elevation",
  "role",
  "colour",
  "lowest",
  "dial",
  "skin",
  "cloth",
  "hair",
]);

const written = (value: unknown): string | null => {
  if (typeof value === "string") return value;
  if (typeof value === "object" && value !== null && "written" in value && typeof value.written === "string")
    return value.written;
  return null;
};

/** A block as the recipe says it: `flat wing: size 1.5 x 2.6 m, hinge right_edge(back), opening 110 deg`. */
function lineOf(block: { readonly block: string; readonly name: string | null }): string | null {
  const said = Object.entries(block).flatMap(([property, value]) => {
    if (property === "block" || property === "name" || elsewhere.has(property)) return [];
    const text = written(value);
    return text === null ? [] : [`${property.replaceAll("_", " ")} ${text}`];
  });
  const who = block.name === null ? block.block : `${block.block} ${block.name}`;
  return said.length === 0 ? null : `${who}: ${said.join(", ")}`;
}

/** People, lamps and pieces of the set in the recipe's own words for their build: sizes, hinges, grids, poses. */
export function buildLines({ subjects, lights, set }: Recipe): readonly string[] {
  return [...subjects, ...lights, ...(set?.parts ?? [])].flatMap((block) => lineOf(block) ?? []);
}
