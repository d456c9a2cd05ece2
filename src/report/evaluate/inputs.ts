import { exp2 } from "../../core/exp2.js";
import { once } from "../../core/once.js";
import type { LightModel, Recipe } from "../../model/types.js";
import { buildScene } from "../../scene/build.js";
import type { PlacementOffset } from "../../scene/lamp/place.js";
import type { Source } from "../../scene/types.js";
import { sourceKey } from "../../transport/source-key.js";
import type { BaseUnit } from "../../units/dimension.js";
import type { Spread } from "../../units/quantity.js";
import { hasSpread, shareInStops } from "../../units/spread.js";
import { misplaced } from "../change/misplaced.js";
import { withSource } from "../change/move-source.js";
import { type HeldMeters, nearPlan, shortPlan } from "../change/near-plan.js";
import { rebuiltWith } from "../change/rebuild.js";
import type { Plan } from "../plan.js";
import { tolerance } from "../settings.js";
import { sharedTapes } from "./shared-tapes.js";
import { surfaceInputs } from "./surface-inputs.js";
import { type Tape, tapesOf } from "./tapes.js";

/** A measured input of a set-up that may be a little off. */
export interface MeasuredInput<U extends BaseUnit = BaseUnit> {
  /** `key height`, `key output`. */
  readonly what: string;
  /** How far it may be off, in words: `3 cm`, `2 deg`, `0.3 stop`. */
  readonly by: string;
  readonly size: number;
  /** `1` for a reflectance. */
  readonly unit: U;
  /** The plan with the input off by that much to one side. */
  readonly moved: Plan;
  /** The same to the other side. */
  readonly back: Plan;
  /** The plan with the input off by any amount, + as in `moved`. */
  readonly at: (by: number) => Plan;
  /** The same with all light worked out anew. */
  readonly exact: (by: number) => Plan;
}

/** What is off by more than this has bounced light worked out anew; any other unit than these always has. */
const FAR: Partial<Record<BaseUnit, number>> = { m: 0.05, deg: 4 };

function isFar(size: number, unit: BaseUnit): boolean {
  const most = FAR[unit];
  return most === undefined || size > most + 1e-9;
}

function spread(given: Spread | undefined, whole: number, unit: "m" | "deg", standard: number): number {
  if (given === undefined) return standard;
  if (given.unit === "%") return Math.abs(given.value * whole);
  return given.unit === unit ? Math.abs(given.value) : standard;
}

function inWords(size: number, unit: BaseUnit): string {
  const amount = unit === "m" ? size * 100 : unit === "1" ? size * 100 : size;
  const word = unit === "m" ? "cm" : unit === "1" ? "%" : unit === "J" ? "Ws" : unit;
  return `${Number(amount.toPrecision(2))} ${word}`;
}

/** A lamp that gives so many stops more than its setting says; the setting itself stays as it is. */
function giving(source: Source, stops: number): Source {
  return { ...source, energy: source.energy * exp2(stops) };
}

type LampUnit = "m" | "deg" | "stop";
type Push = (what: string, size: number, unit: LampUnit, changed: (by: number) => Source) => void;

/** The measured inputs of one lamp: where it stands, by its tapes and angles, and what it gives. */
function inputsOfLamp(
  plan: Plan,
  index: number,
  source: Source,
  light: LightModel | undefined,
  held: HeldMeters,
): MeasuredInput<LampUnit>[] {
  const { recipe } = plan;
  const inputs: MeasuredInput<LampUnit>[] = [];
  const push: Push = (what, size, unit, changed) => {
    if (!(size > 0)) return;
    const exact = (by: number): Plan => withSource(plan, index, changed(by));
    // What a lit patch gives is bounced light: it follows by the least move.
    const follows = (): boolean => unit !== "stop" && (source.patch !== undefined || isFar(size, unit));
    inputs.push(inputOf(plan, held, { what: `${source.name} ${what}`, size, unit }, exact, follows));
  };
  pushPlace(plan, source, light, push);
  if (source.energy > 0) {
    push("output", source.uncertainty, "stop", (by) => giving(source, by));
    if ((source.below ?? 0) > 0) push("dial", dialSpread(recipe, light), "stop", (by) => giving(source, by));
  }
  return inputs;
}

/** The readings by which a lamp stands where it does. */
function pushPlace({ scene, recipe }: Plan, source: Source, light: LightModel | undefined, push: Push): void {
  const off = (by: PlacementOffset): Source => misplaced(scene, source, light, by);
  const height = light?.height ?? light?.bottom_edge;
  const rise = spread(height?.plusMinus, height?.value ?? 0, "m", tolerance(recipe, "height"));
  if (light?.elevation === undefined) push("height", rise, "m", (height) => off({ height }));
  else {
    const turn = spread(light.elevation.plusMinus, light.elevation.value, "deg", tolerance(recipe, "angle"));
    push("elevation", turn, "deg", (elevation) => off({ elevation }));
  }
  const tape = light?.distance ?? light?.floor_distance;
  const stretch = spread(tape?.length.plusMinus, tape?.length.value ?? 0, "m", tolerance(recipe, "tape"));
  push("distance", stretch, "m", (tape) => off({ tape }));
  const side = light?.bearing?.angle;
  const turn = spread(side?.plusMinus, side?.value ?? 0, "deg", tolerance(recipe, "angle"));
  push("bearing", turn, "deg", (bearing) => off({ bearing }));
}

/** How far a power setting may be off, stops: by what is written behind it, else by the tolerance of dials. */
export function dialSpread(recipe: Recipe, light: LightModel | undefined): number {
  const power = light?.power;
  switch (power?.kind) {
    case "below":
      return Math.abs(power.stops.plusMinus?.value ?? tolerance(recipe, "dial"));
    case "energy":
      return shareInStops(power.energy) ?? tolerance(recipe, "dial");
    case "fraction": {
      // In stops, or a share of the fraction itself.
      const off = power.fraction.plusMinus;
      if (off === undefined) return tolerance(recipe, "dial");
      return off.unit === "stop" ? Math.abs(off.value) : Math.log2(1 + Math.abs(off.value));
    }
    case "dial": {
      const numbers = power.number.plusMinus?.value;
      const perStop = light?.dial?.perStop.value ?? 0;
      return numbers === undefined || !(perStop > 0)
        ? tolerance(recipe, "dial")
        : Math.abs(numbers / perStop);
    }
    default:
      return tolerance(recipe, "dial");
  }
}

/**
 * Every measured input of a plan, each with the plans in which it alone is off: place, size and output of the lamps,
 * people, camera, pieces of the set and points, and the reflectances of surfaces.
 */
export function measuredInputs(plan: Plan): readonly MeasuredInput[] {
  const shared = sharedTapes(plan.recipe);
  if (shared === null) return ownInputs(plan);
  return [...ownInputs(withRest(plan, shared.rest)), ...tapeInputs(plan, [], shared.tapes)];
}

/** The plan of a recipe that differs in tolerances alone: what a scene knows of them is how far lamps are off. */
function withRest(plan: Plan, recipe: Recipe): Plan {
  const { sources } = buildScene(recipe, () => undefined);
  const own = plan.scene.sources.map((source, index) => ({
    ...source,
    uncertainty: sources[index]?.uncertainty ?? source.uncertainty,
  }));
  return { ...plan, recipe, scene: { ...plan.scene, sources: own } };
}

/** The inputs of a plan, each off by itself. */
function ownInputs(plan: Plan): readonly MeasuredInput[] {
  const held: HeldMeters = [];
  const lamps = lampInputs(plan, held).filter((input) => !isByCoordinates(plan, input));
  return [...lamps, ...tapeInputs(plan, held, tapesOf(plan.recipe)), ...surfaceInputs(plan)];
}

/** The other measured numbers of a recipe: heights of people, the place of the camera, openings, pieces and points. */
function tapeInputs(plan: Plan, held: HeldMeters, tapes: readonly Tape[]): readonly MeasuredInput[] {
  const lit = litPatches(plan);
  return tapes.map(({ what, size, unit, off }) => {
    const exact = (by: number): Plan => rebuiltWith(plan, off(by));
    // What the set gives back changes only where the set does; a lit patch is its first bounce.
    const follows = (moved: Plan): boolean =>
      moved.light !== plan.light && (isFar(size, unit) || litPatches(moved) !== lit);
    return inputOf(plan, held, { what, size, unit }, exact, follows);
  });
}

/** The patches that lamps light on cloths and surfaces, by all that counts for their light. */
const litPatches = ({ scene }: Plan): string =>
  scene.sources
    .filter(({ patch }) => patch !== undefined)
    .map(sourceKey)
    .join(" ");

/**
 * An input with the plans in which it is off; each is built when it is asked for.
 *
 * @param follows - Whether bounced light follows; else it is that of the plan itself.
 */
function inputOf<U extends BaseUnit>(
  plan: Plan,
  held: HeldMeters,
  { what, size, unit }: Pick<MeasuredInput<U>, "what" | "size" | "unit">,
  exact: (by: number) => Plan,
  follows: (moved: Plan) => boolean,
): MeasuredInput<U> {
  const at = (by: number): Plan => {
    const moved = exact(by);
    return follows(moved) ? shortPlan(moved) : nearPlan(plan, moved, held);
  };
  const moved = once(() => at(size));
  const back = once(() => at(-size));
  return {
    what,
    by: inWords(size, unit),
    size,
    unit,
    get moved() {
      return moved();
    },
    get back() {
      return back();
    },
    at,
    exact,
  };
}

/** The measured inputs of the lamps: what each gives, and the readings by which it stands where it does. */
export function lampInputs(plan: Plan, held: HeldMeters = []): readonly MeasuredInput<LampUnit>[] {
  return plan.scene.sources.flatMap((source, index) =>
    source.spillOf === undefined ? inputsOfLamp(plan, index, source, lightOf(plan, source), held) : [],
  );
}

function lightOf({ recipe }: Plan, source: Source): LightModel | undefined {
  return recipe.lights.find((row) => row.name === source.name);
}

/** Lamps placed by coordinates with tolerances of their own: these are off one by one, with the other numbers. */
function isByCoordinates(plan: Plan, { what, unit }: MeasuredInput): boolean {
  if (unit === "stop") return false;
  return plan.recipe.lights.some(({ name, position }) => hasSpread(position) && what.startsWith(`${name} `));
}
