import { findRoot } from "../../math/roots.js";
import type { Expectation } from "../../model/types.js";
import type { ClaimModel } from "../../model/values.js";
import { judge } from "../evaluate/claim.js";
import type { Asked } from "../evaluate/expression.js";
import { measuredInputs } from "../evaluate/inputs.js";
import { judgeSurely, reachOf } from "../evaluate/surely.js";
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
/** What is left beyond what inputs may move, as a share of it: the value that is said is a rounded one. */
export const SPARE = 1.05;
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
  const search: Search = {
    asked,
    at,
    spare,
    goals,
    goalsFor: (amount) => goalsOf({ ...asked, plan }, claim, amount),
    holds: (there) => !isBroken(there.plan) && allHold(asked, there.plan, there.claims, surely),
    spareAt: surely ? (there) => spareOf(asked, there, at) : null,
  };
  const changes: Change[] = [];
  for (const dial of [
    ...pictureDials(plan, claims),
    ...cameraDials(plan, claims),
    ...gapDials(plan, claims),
    ...lampDials(plan, claims),
  ]) {
    const furthest = changes.length < MOST ? Number.POSITIVE_INFINITY : (changes[MOST - 1]?.size ?? 0);
    const change = turn(search, dial, furthest);
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

/** What must be left to a bound in a changed set-up: its inputs move it by other amounts than those of the set-up before. */
function spareOf(asked: Asked, { plan, claims }: Situation, at: number): number | null {
  const claim = claims[at];
  if (claim === undefined) return null;
  const reach = reachOf({ plan, alarms: asked.alarms }, claim, measuredInputs(plan));
  return reach === null ? null : reach * SPARE;
}

/** What is looked for on every dial. */
interface Search {
  readonly asked: Asked;
  /** Which claim is brought to hold. */
  readonly at: number;
  /** What is left to its bound for the inputs of the set-up as it is. */
  readonly spare: number;
  readonly goals: readonly Goal[];
  readonly goalsFor: (spare: number) => readonly Goal[];
  readonly holds: (there: Situation) => boolean;
  /** What has to be left in another set-up; null where nothing has. */
  readonly spareAt: ((there: Situation) => number | null) | null;
}

/** The nearest value of a dial that meets one of the goals and then the whole expectation; null without one. */
function turn(search: Search, dial: Dial, furthest: number): Change | null {
  const here = dial.place(dial.now);
  for (const [index, goal] of search.goals.entries()) {
    for (const root of rootsOf(dial, here, offFrom(search, dial, goal), furthest)) {
      const place = settled(search, dial, index, root, furthest);
      for (const value of dial.near(dial.valueAt(place))) {
        if (value < dial.low || value > dial.high || isNow(dial, value)) continue;
        if (!search.holds(dial.rebuilt(value))) continue;
        const { path, unit } = dial;
        return { path, value, unit, shown: dial.say(value), size: Math.abs(dial.place(value) - here) };
      }
    }
  }
  return null;
}

/** How far a goal is missed at each place of a dial. */
function offFrom({ asked, at }: Search, dial: Dial, goal: Goal): (place: number) => number | null {
  return (place) => {
    const there = dial.turned(dial.valueAt(place));
    const claim = there.claims[at];
    return claim === undefined ? null : goal({ plan: there.plan, alarms: asked.alarms }, claim);
  };
}

/** Times that a place is found anew with what its own inputs leave, and the share of that which no longer matters. */
const SETTLES = 5;
const SETTLED = 0.01;

/** The place of a goal with what has to be left there, not where the set-up is now; the first place where it has no other. */
function settled(search: Search, dial: Dial, index: number, first: number, furthest: number): number {
  const { spareAt, goalsFor } = search;
  if (spareAt === null) return first;
  const here = dial.place(dial.now);
  let [place, spare] = [first, search.spare];
  for (let i = 0; i < SETTLES; i++) {
    const next = spareAt(dial.rebuilt(dial.valueAt(place)));
    if (next === null || Math.abs(next - spare) <= SETTLED * spare) break;
    const goal = goalsFor(next)[index];
    const roots = goal === undefined ? [] : rootsOf(dial, here, offFrom(search, dial, goal), furthest);
    const same = roots.find((root) => root > here === first > here);
    if (same === undefined) break;
    [place, spare] = [same, next];
  }
  return place;
}

/** Whether a value is what the dial says already: to leave it is no change. */
const isNow = ({ now, say }: Dial, value: number): boolean =>
  Math.abs(value - now) <= 1e-9 * Math.abs(now) || say(value) === say(now);

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
