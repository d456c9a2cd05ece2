import { writeNumber } from "../../core/write-number.js";
import { findRoot } from "../../math/roots.js";
import { tape } from "../../model/make/points.js";
import type { HoldDial, HoldModel, LightModel, Recipe } from "../../model/types.js";
import { quantity } from "../../units/make.js";
import type { Length } from "../../units/quantity.js";
import { blocks } from "../../vocabulary/index.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import type { Plan } from "../plan.js";
import { fixed } from "../say/number.js";
import { gapOf } from "./gap.js";
import { type Held, held } from "./held.js";

type Place = Exclude<HoldDial["property"], "power">;

/** The search goes outward from where the lamp is: each step longer or shorter by this share, or by so many degrees. */
const SHARE = 1.19;
const DEGREES = 5;
const STEPS = 20;

/** Moves one light, along the tape by which it is placed, until the result is what it is held at. */
export function holdByPlace(
  recipe: Recipe,
  hold: HoldModel,
  plan: Plan,
  from: Plan | null,
  planOf: (recipe: Recipe) => Plan,
): { readonly recipe: Recipe; readonly held: Held } {
  const fail = (reason: string) => ({ recipe, held: held(hold, null, reason) });
  const dial = hold.by[0];
  const light = recipe.lights.find((row) => row.name === dial?.light);
  if (dial === undefined || light === undefined || dial.property === "power")
    return fail("there is no such light");
  const { property } = dial;
  const now = placeOf(light, property);
  if (now === null) return fail(`${dial.light} is not placed by its ${property}`);
  const first = gapOf(hold, plan, from);
  if (first.by === null) return fail(first.reason ?? "it is not known");
  const moved = (place: number): Recipe => ({
    ...recipe,
    lights: recipe.lights.map((row) => (row === light ? putAt(row, property, place) : row)),
  });
  const gap = (place: number): number => gapOf(hold, planOf(moved(place)), from).by ?? Number.NaN;
  const place = search(gap, now, first.by, property);
  if (place === null) return fail(`no ${property} of ${dial.light} near its present one gives it`);
  const setting = property === "elevation" ? `${fixed(place, 1)} deg` : `${fixed(place, 2)} m`;
  return { recipe: moved(place), held: held(hold, setting, null) };
}

function placeOf(light: LightModel, property: Place): number | null {
  switch (property) {
    case "distance":
    case "floor_distance":
      return light[property]?.length.value ?? null;
    default:
      return light[property]?.value ?? null;
  }
}

/** A length as found, written to the millimetre; as it was written where it comes to the same. */
function metres(value: number, before: Length | undefined): Length {
  const same = before !== undefined && Math.abs(before.value - value) < 0.0005;
  return quantity("m", value, same ? before.written : `${writeNumber(Number(fixed(value, 3)))} m`);
}

function putAt(light: LightModel, property: Place, place: number): LightModel {
  switch (property) {
    case "distance":
    case "floor_distance": {
      const before = light[property];
      return { ...light, [property]: tape(metres(place, before?.length), before?.from ?? null) };
    }
    case "height":
      return { ...light, height: metres(place, light.height) };
    default: {
      const same = light.elevation !== undefined && Math.abs(light.elevation.value - place) < 0.05;
      const written = same ? light.elevation.written : `${writeNumber(Number(fixed(place, 1)))} deg`;
      return { ...light, elevation: quantity("deg", place, written) };
    }
  }
}

/** The place nearest to the present one at which a gap closes; null where none is found in the range. */
function search(gap: (place: number) => number, now: number, first: number, property: Place): number | null {
  if (first === 0) return now;
  const rows: readonly PropertyRow[] = blocks.light.properties;
  const [low, high] = rows.find((row) => row.name === property)?.range ?? [0.1, 100];
  const ways = [1, -1].map((way) => ({ way, at: now, gap: first }));
  for (let step = 1; step <= STEPS; step++) {
    for (const side of ways) {
      const raw =
        property === "elevation"
          ? side.at + side.way * DEGREES
          : side.at * (side.way > 0 ? SHARE : 1 / SHARE);
      const at = Math.min(high, Math.max(low, raw));
      if (at === side.at) continue;
      const there = gap(at);
      if (there === 0) return at;
      if (there * side.gap < 0) return findRoot(gap, side.at, at, 1e-7) ?? null;
      side.at = at;
      side.gap = there;
    }
  }
  return null;
}
