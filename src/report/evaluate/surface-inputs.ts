import type { Recipe, RoomModel, SetModel } from "../../model/types.js";
import type { Quantity } from "../../units/quantity.js";
import { tintedPlan } from "../change/near-plan.js";
import { withMoreReflectance } from "../change/surfaces.js";
import type { Plan } from "../plan.js";
import { unsaidSurface } from "../rules/reflectance-assumed.rule.js";
import { ownerOf } from "../say/surfaces.js";
import { tolerance } from "../settings.js";
import type { MeasuredInput } from "./inputs.js";

/** Most that a surface can throw back. */
const MOST = 0.999;

/** Surfaces that are off together. */
interface Group {
  readonly what: string;
  readonly owners: readonly string[];
  readonly reflectance: number;
  readonly by: number;
}

/**
 * The reflectances of the surfaces of a plan as inputs: those that the recipe says by their `+-` or `reflectance`, those
 * that it leaves out by `assumed_reflectance`. Walls of which nothing is said are off together. People are not asked.
 */
export function surfaceInputs(plan: Plan): readonly MeasuredInput[] {
  return groupsOf(plan).flatMap(({ what, owners, reflectance, by }): MeasuredInput[] => {
    const more = Math.min(by, MOST - reflectance);
    const less = Math.min(by, reflectance);
    const within = (wanted: number): number => Math.min(MOST - reflectance, Math.max(-reflectance, wanted));
    if (!(reflectance > 0) || !(Math.max(more, less) > 0)) return [];
    return [
      {
        what: `reflectance of ${what}`,
        by: `${Number((by * 100).toPrecision(2))} %`,
        size: by,
        unit: "1",
        moved: tintedPlan(plan, owners, more / reflectance),
        back: tintedPlan(plan, owners, -less / reflectance),
        at: (by) => tintedPlan(plan, owners, within(by) / reflectance),
        exact: (by) => withMoreReflectance(plan, owners, 1 + within(by) / reflectance, MOST),
      },
    ];
  });
}

function groupsOf({ scene, recipe }: Plan): readonly Group[] {
  const groups: Group[] = [];
  const seen = new Set<string>();
  for (const row of scene.assumed) {
    const unsaid = unsaidSurface(row);
    const own = unsaid === null ? [] : scene.polygons.filter(unsaid.has);
    const first = own[0];
    if (unsaid === null || first === undefined) continue;
    const owners = [...new Set(own.map(({ name }) => ownerOf(name)))];
    for (const owner of owners) seen.add(owner);
    const by = tolerance(recipe, "assumed_reflectance");
    groups.push({ what: unsaid.what, owners, reflectance: first.frontReflectance, by });
  }
  const rest = new Map<string, Group>();
  for (const { name, frontReflectance, backReflectance } of scene.polygons) {
    const owner = ownerOf(name);
    if (seen.has(owner)) continue;
    const what = blockOf(recipe, owner);
    const reflectance = Math.max(frontReflectance, backReflectance);
    const by = statedSpread(recipe, what) ?? tolerance(recipe, "reflectance");
    const before = rest.get(what);
    const owners = [...new Set([...(before?.owners ?? []), owner])];
    rest.set(what, { what, owners, reflectance: Math.max(reflectance, before?.reflectance ?? 0), by });
  }
  groups.push(...rest.values());
  return groups;
}

/** What the recipe says a surface's reflectance by: `wall left` by its own block, else with the other `walls`. */
function blockOf({ room }: Recipe, owner: string): string {
  const side = /^wall (left|right|front|back)$/.exec(owner)?.[1];
  if (side === undefined) return owner;
  return room?.parts.some((part) => part.block === "wall" && part.name === side) === true ? owner : "walls";
}

/** The greatest `+-` that the recipe gives with a reflectance of a surface; null without one. */
function statedSpread({ room, set }: Recipe, what: string): number | null {
  const parts: readonly PartOf[] = [
    ...(room?.parts.filter((part) => part.block === what || `wall ${part.name}` === what) ?? []),
    ...(set?.parts.filter((part) => part.name === what) ?? []),
  ];
  const spreads = parts
    .flatMap((part) => Object.values(part))
    .flatMap((value: unknown) => spreadIn(value) ?? []);
  return spreads.length === 0 ? null : Math.max(...spreads);
}

type PartOf = RoomModel["parts"][number] | SetModel["parts"][number];

/** The tolerance of a value that is a reflectance or a surface; null for others and without one. */
function spreadIn(value: unknown): number | null {
  if (typeof value !== "object" || value === null) return null;
  const share = "reflectance" in value ? value.reflectance : value;
  if (typeof share !== "object" || share === null || !("plusMinus" in share) || !("unit" in share))
    return null;
  const { plusMinus } = share as Quantity;
  return share.unit === "1" ? (plusMinus?.value ?? null) : null;
}
