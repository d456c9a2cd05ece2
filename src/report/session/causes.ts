import { weightedMean } from "../../math/share-fit.js";
import type { MeasuredReading } from "../../model/session.js";
import { lampInputs } from "../evaluate/inputs.js";
import { surfaceInputs } from "../evaluate/surface-inputs.js";
import { lightsOn, type Plan } from "../plan.js";
import { withOutput } from "./calibrate.js";
import { APART, limitsOf } from "./limits.js";
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
export interface Hypothesis extends Pick<Cause, "kind" | "about" | "unit"> {
  /** Less is simpler, and is named first where two do as well. */
  readonly rank: number;
  /** A small change of the number. */
  readonly step: number;
  /** The furthest that is looked at, to either side. */
  readonly most: number;
  readonly at: (by: number) => Plan;
  /** The same with all light worked out anew. */
  readonly exact: (by: number) => Plan;
}

/** The amount of a hypothesis that leaves least of the readings. */
interface Fit extends Pick<Cause, "amount" | "left"> {
  /** The most that a single reading is then off, stops. */
  readonly worst: number;
  /** Sum of what is left in tolerances, squared. */
  readonly cost: number;
}

const STEPS = 4;

/**
 * What accounts for the readings by itself: everything that gives more or less, a lamp's output or place, how much
 * surfaces throw back. Each is changed until what is left of the readings is least, and counts if no reading is then
 * off by more than `session_note` (0.2 stop), and half of what was off is gone. Those that the readings do not tell from the best are
 * all named.
 *
 * @returns The best first; none where no reading is off by more than that, or there is only one reading.
 */
export function causesOf(plan: Plan, readings: readonly Known[]): readonly Cause[] {
  const off = readings.map(({ measured, built }) => measured - levelOf(built));
  const before = rootMean(off);
  const { act, note } = limitsOf(plan);
  if (readings.length < 2 || Math.max(...off.map(Math.abs)) <= note) return [];
  const near = hypotheses(plan).flatMap((one): Candidate[] => {
    const fit = fitted(one.at, one, plan, readings, 0);
    return fit === null || fit.worst > act || fit.left > before / 2 ? [] : [{ one, fit }];
  });
  const found = untold(near, costOf).flatMap(({ one, fit }): Candidate[] => {
    const exact = fitted(one.exact, one, plan, readings, fit.amount);
    return exact === null || exact.worst > note ? [] : [{ one, fit: exact }];
  });
  return [...untold(found, costOf)]
    .sort((a, b) => a.one.rank - b.one.rank || far(a) - far(b))
    .map(({ one: { kind, about, unit }, fit: { amount, left } }) => ({ kind, about, unit, amount, left }));
}

/** A hypothesis with the amount that leaves least. */
interface Candidate {
  readonly one: Hypothesis;
  readonly fit: Fit;
}

/** By how many steps it is otherwise than written. */
const far = ({ one, fit }: Candidate): number => Math.abs(fit.amount) / one.step;

/** Those that the readings do not tell from the best, by what each leaves in tolerances, squared and summed up. */
export function untold<T>(all: readonly T[], costOf: (one: T) => number): readonly T[] {
  const least = Math.min(...all.map(costOf));
  return all.filter((one) => costOf(one) <= least + APART);
}

const costOf = ({ fit }: Candidate): number => fit.cost;

/** Every way in which a set-up may be otherwise by one number. */
export function hypotheses(plan: Plan): readonly Hypothesis[] {
  const lights = lightsOn(plan.scene);
  const all: Hypothesis = {
    kind: "all",
    about: null,
    unit: "stop",
    rank: 0,
    step: 0.05,
    most: 8,
    at: (by) => withOutput(plan, () => by),
    exact: (by) => withOutput(plan, () => by),
  };
  const lamps = lampInputs(plan).flatMap((input) => ofLamp(input, lights));
  const surfaces = surfaceInputs(plan).map(
    ({ what, size, at, exact }): Hypothesis => ({
      kind: "reflectance",
      about: what.replace(/^reflectance of /, ""),
      unit: "1",
      rank: 4,
      step: size,
      most: 1,
      at,
      exact,
    }),
  );
  // With one lamp alone its output is everything there is.
  const outputs = lights.length === 1 ? [] : lights.map(({ name }) => outputOf(plan, name));
  return [all, ...outputs, ...lamps, ...surfaces];
}

/** A lamp that gives more or less than its setting says. */
function outputOf(plan: Plan, name: string): Hypothesis {
  const at = (by: number): Plan => withOutput(plan, (light) => (light === name ? by : 0));
  return { kind: "output", about: name, unit: "stop", rank: 1, step: 0.05, most: 8, at, exact: at };
}

const kinds = { distance: 2, height: 3, elevation: 3, bearing: 3 } as const;

function ofLamp(
  { what, unit, size, at, exact }: ReturnType<typeof lampInputs>[number],
  lights: readonly { readonly name: string }[],
): readonly Hypothesis[] {
  const light = lights.find(({ name }) => what.startsWith(`${name} `));
  const word = light === undefined ? "" : what.slice(light.name.length + 1);
  if (light === undefined || !(word in kinds)) return [];
  const kind = word === "elevation" ? "height" : (word as Exclude<keyof typeof kinds, "elevation">);
  const most = unit === "m" ? 1 : unit === "deg" ? 40 : 8;
  return [{ kind, about: light.name, unit, rank: kinds[kind], step: size, most, at, exact }];
}

/** The amount of a hypothesis that leaves least, and what it leaves; null where a reading gets no light there. */
function fitted(
  at: (by: number) => Plan,
  { step, most }: Hypothesis,
  plan: Plan,
  readings: readonly Known[],
  start: number,
): Fit | null {
  const weights = readings.map(({ tolerance }) => 1 / (tolerance * tolerance));
  const leftAt = (by: number): readonly number[] | null => leftIn(by === 0 ? plan : at(by), readings);
  let amount = start;
  for (let pass = 0; pass < STEPS; pass++) {
    const [here, more] = [leftAt(amount), leftAt(amount + step)];
    if (here === null || more === null) return null;
    const slopes = here.map((r, i) => (r - (more[i] ?? 0)) / step);
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
  const cost = left.reduce((total, r, i) => total + r * r * (weights[i] ?? 0), 0);
  return { amount, left: rootMean(left), worst: Math.max(...left.map(Math.abs)), cost };
}

/** What a plan leaves of each reading, stops; null where one gets no light there. */
export function leftIn(plan: Plan, readings: readonly Known[]): readonly number[] | null {
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

/** Root of the mean of the squares; 0 of none. */
export const rootMean = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((total, one) => total + one * one, 0) / Math.max(1, values.length));
