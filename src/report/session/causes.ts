import { weightedMean } from "../../math/share-fit.js";
import type { MeasuredReading } from "../../model/session.js";
import { lampInputs, type MeasuredInput } from "../evaluate/inputs.js";
import { surfaceInputs } from "../evaluate/surface-inputs.js";
import { lightsOn, type Plan } from "../plan.js";
import { APART, NOTE, SAME } from "./limits.js";
import { type Known, levelOf, readIn } from "./readings.js";

/** One thing that, if it is otherwise than written, accounts for the readings. */
export interface Cause {
  readonly kind: "all" | "output" | "distance" | "height" | "bearing" | "reflectance";
  /** The lamp or the surfaces; null where it is everything. */
  readonly about: string | null;
  /** By how much, in `unit`: + is more light, farther, higher, more to camera-right, whiter. */
  readonly amount: number;
  readonly unit: "stop" | "m" | "deg" | "1";
  /** The mean that it leaves of the readings, root of squares, stops. */
  readonly left: number;
}

/** A way in which the set-up may be otherwise, by one number. */
interface Hypothesis extends Pick<Cause, "kind" | "about" | "unit"> {
  /** Less is simpler, and is named first where two do as well. */
  readonly rank: number;
  /** A small change of the number. */
  readonly step: number;
  /** The furthest that is looked at, to either side. */
  readonly most: number;
  readonly at: (by: number) => Plan;
}

const STEPS = 4;

/**
 * What accounts for the readings by itself: everything that gives more or less, a lamp's output or place, how much
 * surfaces throw back. Each is changed until what is left of the readings is least, and counts if no reading is then
 * off by more than 0.2 stop, and half of what was off is gone. Those that the readings do not tell from the best are
 * all named. Bounced light is that of the lamp where it was thought to be.
 *
 * @returns The best first; none where no reading is off by more than 0.2 stop, or there is only one reading.
 */
export function causesOf(plan: Plan, readings: readonly Known[]): readonly Cause[] {
  const off = readings.map(({ measured, built }) => measured - levelOf(built));
  const before = rootMean(off);
  if (readings.length < 2 || Math.max(...off.map(Math.abs)) <= NOTE) return [];
  const found = hypotheses(plan).flatMap((one): (Cause & { rank: number })[] => {
    const fit = fitted(one, plan, readings);
    if (fit === null || fit.worst > NOTE || fit.left > before / 2) return [];
    const { kind, about, unit, rank } = one;
    return [{ kind, about, unit, rank, amount: fit.amount, left: fit.left }];
  });
  const least = Math.min(...found.map(({ left }) => left));
  return found
    .filter(({ left }) => left <= Math.max(least + APART, SAME / 2))
    .sort((a, b) => a.rank - b.rank || a.left - b.left)
    .map(({ rank: _rank, ...cause }) => cause);
}

function hypotheses(plan: Plan): readonly Hypothesis[] {
  const lights = lightsOn(plan.scene);
  const all: Hypothesis = {
    kind: "all",
    about: null,
    unit: "stop",
    rank: 0,
    step: 0.05,
    most: 8,
    at: (by) => giving(plan, by),
  };
  const lamps = lampInputs(plan).flatMap((input) => ofLamp(input, lights));
  const surfaces = surfaceInputs(plan).map(
    ({ what, size, at }): Hypothesis => ({
      kind: "reflectance",
      about: what.replace(/^reflectance of /, ""),
      unit: "1",
      rank: 4,
      step: size,
      most: 1,
      at,
    }),
  );
  return [all, ...lamps, ...surfaces];
}

const kinds = { output: 1, distance: 2, height: 3, elevation: 3, bearing: 3 } as const;

function ofLamp(
  { what, unit, size, at }: MeasuredInput,
  lights: readonly { readonly name: string }[],
): readonly Hypothesis[] {
  const light = lights.find(({ name }) => what.startsWith(`${name} `));
  const word = light === undefined ? "" : what.slice(light.name.length + 1);
  if (light === undefined || !(word in kinds)) return [];
  // With one lamp alone its output is everything there is.
  if (word === "output" && lights.length === 1) return [];
  const kind = word === "elevation" ? "height" : (word as Exclude<keyof typeof kinds, "elevation">);
  const most = unit === "m" ? 1 : unit === "deg" ? 40 : 8;
  return [{ kind, about: light.name, unit, rank: kinds[kind], step: size, most, at }];
}

/** A plan in which everything gives so many stops more. */
const giving = (plan: Plan, stops: number): Plan => ({
  ...plan,
  scene: {
    ...plan.scene,
    sources: plan.scene.sources.map((source) => ({
      ...source,
      energy: source.energy * Math.exp(stops * Math.LN2),
    })),
  },
});

/** The amount of a hypothesis that leaves least, and what it leaves; null where a reading gets no light there. */
function fitted(
  { at, step, most }: Hypothesis,
  plan: Plan,
  readings: readonly Known[],
): { readonly amount: number; readonly left: number; readonly worst: number } | null {
  const weights = readings.map(({ tolerance }) => 1 / (tolerance * tolerance));
  const leftAt = (by: number): readonly number[] | null => leftIn(by === 0 ? plan : at(by), readings);
  let amount = 0;
  for (let pass = 0; pass < STEPS; pass++) {
    const [here, more, less] = [leftAt(amount), leftAt(amount + step), leftAt(amount - step)];
    if (here === null || more === null || less === null) return null;
    const slopes = here.map((_r, i) => ((less[i] ?? 0) - (more[i] ?? 0)) / (2 * step));
    const along = weightedMean(
      slopes.map((s, i) => s * (here[i] ?? 0)),
      weights,
    );
    const square = weightedMean(
      slopes.map((s) => s * s),
      weights,
    );
    if (!(square > 1e-12)) return null;
    const by = along / square;
    amount = Math.min(most, Math.max(-most, amount + by));
    if (Math.abs(by) < step / 50) break;
  }
  const left = leftAt(amount);
  if (left === null) return null;
  return { amount, left: rootMean(left), worst: Math.max(...left.map(Math.abs)) };
}

function leftIn(plan: Plan, readings: readonly Known[]): readonly number[] | null {
  const left = readings.map(({ row, measured }) => {
    const level = levelIn(plan, row);
    return level === null ? Number.NaN : measured - level;
  });
  return left.some(Number.isNaN) ? null : left;
}

function levelIn(plan: Plan, row: MeasuredReading): number | null {
  const reading = readIn(plan, row);
  return reading === null ? null : levelOf(reading);
}

const rootMean = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((total, one) => total + one * one, 0) / Math.max(1, values.length));
