import { exp2 } from "../../core/exp2.js";
import { findRoot } from "../../math/roots.js";
import { belowFull, full } from "../../model/make/lamps.js";
import type { HoldModel, Recipe } from "../../model/types.js";
import { lampName } from "../../scene/lit/seen.js";
import type { Source } from "../../scene/types.js";
import { quantity } from "../../units/make.js";
import { atPower } from "../change/move-source.js";
import { judgedScale } from "../evaluate/scales.js";
import { show } from "../evaluate/show.js";
import type { Plan } from "../plan.js";
import { fixed, threeFigures, twoFigures } from "../say/number.js";
import { type Gap, gapOf } from "./gap.js";
import { type Held, held } from "./held.js";

/** How far a dial is searched where nothing else ends it, in stops below full. */
const LOWEST = 20;
/** A setting beyond an end of the dial by less than this is at the end, in stops. */
const HAIR = 1e-9;

/** Turns the powers of the named lights by one number of stops, so that the result is what it is held at. */
export function holdByPower(
  recipe: Recipe,
  hold: HoldModel,
  plan: Plan,
  from: Plan | null,
): { readonly recipe: Recipe; readonly held: Held } {
  const names = hold.by.map((dial) => dial.light);
  const turned = plan.scene.sources.filter((source) => names.includes(lampName(source)));
  const off = names.find((name) => turned.every((row) => lampName(row) !== name || row.below === null));
  if (off !== undefined) return { recipe, held: held(hold, null, `${off} is off`) };
  const first = gapOf(hold, plan, from);
  if (first.by === null) return { recipe, held: held(hold, null, first.reason) };
  const most = Math.min(...turned.map((source) => source.below ?? 0));
  const least = Math.max(...turned.map((source) => (source.below ?? 0) - (source.lowest ?? LOWEST)));
  const wanted = stepFor(hold, plan, from, names, first.by, [least, most]);
  if (typeof wanted === "string") return { recipe, held: held(hold, null, wanted) };
  const step = Math.min(most, Math.max(least, wanted));
  const belows = new Map(turned.map((source) => [lampName(source), (source.below ?? 0) - step]));
  const changed = {
    ...recipe,
    lights: recipe.lights.map((light) => {
      const below = belows.get(light.name ?? "");
      if (below === undefined) return light;
      return {
        ...light,
        power: below < HAIR ? full : belowFull(quantity("stop", below, `${fixed(below, 2)} stop`)),
      };
    }),
  };
  const setting = names.map((name) => dialWords(belows.get(name) ?? 0)).join(", ");
  const short = Math.abs(step - wanted) > HAIR;
  const there = short ? gapOf(hold, turn(plan, names, step), from) : null;
  const end = wanted > step ? "full power" : "the lowest setting";
  return {
    recipe: changed,
    held: held(hold, setting, there === null ? null : `${end} gives ${gives(there)}`),
  };
}

/** What a dial at its end gives, and by how much that misses what is held, however little. */
function gives({ found, by }: Gap): string {
  const { reading } = found;
  const bare =
    reading !== null && reading.exposure > 0 ? `${threeFigures(reading.exposure)} lx s` : "nothing";
  const shown = show(found) ?? bare;
  if (by === null || judgedScale(found.type) !== "stops") return shown;
  return `${shown}, ${twoFigures(Math.abs(by))} stop ${by < 0 ? "under" : "over"} what is held`;
}

const dialWords = (below: number): string => (below < 0.05 ? "full" : `full - ${fixed(below, 1)} stop`);

/** The set-up with some lights turned by a number of stops. No light is worked out anew for it. */
function turn(plan: Plan, names: readonly string[], step: number): Plan {
  return withSources(plan, names, (source) => atPower(source, step));
}

function withSources(plan: Plan, names: readonly string[], change: (source: Source) => Source): Plan {
  const sources = plan.scene.sources.map((source) =>
    names.includes(lampName(source)) ? change(source) : source,
  );
  return { ...plan, scene: { ...plan.scene, sources } };
}

/**
 * The number of stops. A meter adds up what it gets, so for a reading the step follows from what the turned lights
 * give and what the others do; any other result is searched for.
 */
function stepFor(
  hold: HoldModel,
  plan: Plan,
  from: Plan | null,
  names: readonly string[],
  by: number,
  [least, most]: readonly [number, number],
): number | string {
  if (hold.reading.kind === "reading" && (hold.target === null || hold.target.kind === "value")) {
    const dark = withSources(plan, names, (source) => ({ ...source, energy: 0, below: null }));
    const on = gapOf(hold, plan, from).found.reading?.exposure ?? 0;
    const others = gapOf(hold, dark, from).found.reading?.exposure ?? 0;
    const own = on - others;
    if (!(own > 0)) return `${names.join(" and ")} gives nothing to it`;
    const share = (on * exp2(-by) - others) / own;
    return share > 0 ? Math.log2(share) : "the other lights alone give more";
  }
  const gap = (step: number): number => gapOf(hold, turn(plan, names, step), from).by ?? Number.NaN;
  const lowest = gap(least);
  if (lowest === gap(most) && lowest === gap((least + most) / 2))
    return `it does not follow the power of ${names.join(" and ")}`;
  return findRoot(gap, least, most, 1e-9) ?? `no setting of ${names.join(" and ")} gives it`;
}
