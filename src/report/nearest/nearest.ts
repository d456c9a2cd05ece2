import { findRoot } from "../../math/roots.js";
import type { Expectation } from "../../model/types.js";
import type { ClaimModel } from "../../model/values.js";
import { judge } from "../evaluate/claim.js";
import type { Asked } from "../evaluate/expression.js";
import { measuredInputs } from "../evaluate/inputs.js";
import { judgeSurely } from "../evaluate/surely.js";
import type { Plan } from "../plan.js";
import { runRules } from "../rules/run.js";
import { breaks } from "./breaks.js";
import { cameraDials } from "./camera-dials.js";
import type { Dial, Situation } from "./dial.js";
import { gapDials } from "./gap-dial.js";
import { type Goal, goalsOf } from "./goal.js";
import { lampDials } from "./lamp-dials.js";
import { pictureDials } from "./picture-dials.js";

/** A change by which an expectation would hold, worked out anew with the value as it is said. */
export interface Change {
  readonly path: string;
  /** In the base unit of the dial: m, deg, stops below full, f-number, ISO value. */
  readonly value: number;
  readonly unit: Dial["unit"];
  readonly shown: string;
  /** How much of an ordinary change it is. */
  readonly size: number;
}

/** The nearest changes, the least first; none with the reason. */
export interface Nearest {
  readonly changes: readonly Change[];
  readonly reason: string | null;
}

/** Ordinary changes that are tried to either side: further away nobody would call it a small change. */
const ladder: readonly number[] = [0.5, 1, 2, 4, 8];
/** Most changes that are told. */
const MOST = 2;
/** A turn that moves a claim less than this, on its scale, does not matter to it. */
const TRIFLE = 1e-7;

/**
 * The single changes nearest to a set-up by which an expectation that failed would hold: of power, place of a lamp,
 * camera setting or gap. Each is found on the kept light, then rounded to what can be set, built anew and judged with
 * all claims of the expectation; one that does not hold, or that breaks the room, is not told.
 *
 * @param at - Which of its claims does not hold.
 * @param spare - What must be left to a bound for inputs that may be off; 0 unless `surely` is asked.
 */
export function nearestChanges(asked: Asked, expectation: Expectation, at: number, spare: number): Nearest {
  const claim = expectation.claims[at];
  if (claim === undefined) return { changes: [], reason: null };
  if (claim.kind === "true") return { changes: [], reason: "what to do is said with each warning" };
  const plan: Plan = { ...asked.plan, light: asked.plan.light.fork() };
  const goals = goalsOf({ ...asked, plan }, claim, spare);
  if (goals.length === 0) return { changes: [], reason: "what is claimed about cannot be worked out" };
  const { claims, surely } = expectation;
  const isBroken = breaks(plan);
  const holds = (there: Situation): boolean =>
    !isBroken(there.plan) && allHold(asked, there.plan, there.claims, surely);
  const changes: Change[] = [];
  for (const dial of [
    ...pictureDials(plan, claims),
    ...cameraDials(plan, claims),
    ...gapDials(plan, claims),
    ...lampDials(plan, claims),
  ]) {
    const furthest = changes.length < MOST ? Number.POSITIVE_INFINITY : (changes[MOST - 1]?.size ?? 0);
    const change = turn(asked, dial, at, goals, furthest, holds);
    if (change !== null) changes.push(change);
    changes.sort((a, b) => a.size - b.size);
    changes.splice(MOST);
  }
  const reason =
    changes.length > 0
      ? null
      : "no single change of a power, a lamp's place, a camera setting or a gap within reach meets it";
  return { changes, reason };
}

function allHold(asked: Asked, plan: Plan, claims: readonly ClaimModel[], surely: boolean): boolean {
  const alarms = claims.some((claim) => claim.kind === "true")
    ? runRules(plan).warnings.filter((row) => row.severity !== "note").length
    : asked.alarms;
  const there: Asked = { plan, alarms };
  const inputs = surely ? measuredInputs(plan) : [];
  return claims.every(
    (claim) => (surely ? judgeSurely(there, claim, inputs) : judge(there, claim)).outcome === "passed",
  );
}

/** The nearest value of a dial that meets one of the goals and then the whole expectation; null without one. */
function turn(
  asked: Asked,
  dial: Dial,
  at: number,
  goals: readonly Goal[],
  furthest: number,
  holds: (there: Situation) => boolean,
): Change | null {
  const here = dial.place(dial.now);
  for (const goal of goals) {
    const off = (place: number): number | null => {
      const there = dial.turned(dial.valueAt(place));
      const claim = there.claims[at];
      return claim === undefined ? null : goal({ plan: there.plan, alarms: asked.alarms }, claim);
    };
    for (const root of rootsOf(dial, here, off, furthest)) {
      for (const value of dial.near(dial.valueAt(root))) {
        if (value < dial.low || value > dial.high || !holds(dial.rebuilt(value))) continue;
        const { path, unit } = dial;
        return { path, value, unit, shown: dial.say(value), size: Math.abs(dial.place(value) - here) };
      }
    }
  }
  return null;
}

/** Where a quantity that is 0 from some place on, like what a whole picture lacks, first is 0: to 1e-5. */
function firstZero(off: (place: number) => number | null, before: number, at: number): number {
  let [not, zero] = [before, at];
  while (Math.abs(zero - not) > 1e-5) {
    const middle = (not + zero) / 2;
    if (off(middle) === 0) zero = middle;
    else not = middle;
  }
  return zero;
}

/** Places of a dial at which a quantity becomes 0, one to either side at most, the nearer first. */
function rootsOf(
  dial: Dial,
  here: number,
  off: (place: number) => number | null,
  furthest: number,
): readonly number[] {
  const start = off(here);
  if (start === null) return [];
  const roots: number[] = [];
  const ends = [dial.place(dial.low), dial.place(dial.high)];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const probe = here + 0.02 <= high ? here + 0.02 : here - 0.02;
  const moved = off(probe);
  if (moved === null || Math.abs(moved - start) < TRIFLE) return [];
  for (const sign of [1, -1]) {
    let [before, last] = [start, here];
    for (const step of ladder) {
      const next = Math.min(high, Math.max(low, here + sign * step));
      if (next === last || Math.abs(last - here) >= furthest) break;
      const value = off(next);
      if (value === null) break;
      if (before * value <= 0) {
        const root =
          value === 0 ? firstZero(off, last, next) : findRoot((p) => off(p) ?? Number.NaN, last, next, 1e-5);
        if (root !== undefined) roots.push(root);
        break;
      }
      [before, last] = [value, next];
    }
  }
  return roots.sort((a, b) => Math.abs(a - here) - Math.abs(b - here));
}
