import type { Plan } from "../plan.js";
import { type Cause, type Hypothesis, hypotheses, leftIn, rootMean, untold } from "./causes.js";
import { limitsOf } from "./limits.js";
import { type Known, levelOf } from "./readings.js";

/** Two things that account for the readings together, as neither does by itself. */
export interface Pair {
  readonly causes: readonly [Cause, Cause];
  /** The mean that they leave of the readings, root of squares, stops. */
  readonly left: number;
}

/** With fewer readings than this two numbers account for nearly anything. */
const FEWEST = 4;
/** Pairs that are followed with the light worked out for both, after the first look along slopes. */
const FOLLOWED = 6;
/** Pairs for which all light is worked out anew. */
const EXACT = 3;
const STEPS = 4;
/** Two things that change the readings more alike than this, as the cosine between their slopes, are not told apart. */
const ALIKE = 0.98;

interface Try {
  readonly one: Hypothesis;
  readonly other: Hypothesis;
  readonly amounts: Amounts;
  readonly cost: number;
}

interface Fitted extends Try {
  readonly left: readonly number[];
}

type Amounts = readonly [number, number];

/**
 * Pairs of things that account for the readings where no single one does: of what the hypotheses do by themselves along
 * their slopes the best are followed, both numbers at once, and the best of those are worked out anew. They count as a
 * single cause does. Two placements of one lamp are not tried.
 *
 * @returns The best first, three at most; none with fewer than four readings.
 */
export function pairsOf(plan: Plan, readings: readonly Known[]): readonly Pair[] {
  if (readings.length < FEWEST) return [];
  const { act, note } = limitsOf(plan);
  const off = readings.map(({ measured, built }) => measured - levelOf(built));
  const before = rootMean(off);
  const weights = readings.map(({ tolerance }) => 1 / (tolerance * tolerance));
  const sloped = hypotheses(plan).flatMap((one) => {
    const slope = slopeOf(off, leftIn(one.at(one.step), readings), one.step);
    return slope === null ? [] : [{ one, slope }];
  });
  const tries = sloped.flatMap(({ one, slope }, i) =>
    sloped.slice(i + 1).flatMap((second): readonly Try[] => {
      if (!areTwo(one, second.one)) return [];
      const by = solved(off, [slope, second.slope], weights);
      if (by === null) return [];
      const amounts = within([one, second.one], by);
      const left = off.map((r, k) => r - amounts[0] * (slope[k] ?? 0) - amounts[1] * (second.slope[k] ?? 0));
      return [{ one, other: second.one, amounts, cost: costOf(left, weights) }];
    }),
  );
  const near = best(tries, FOLLOWED).flatMap((one) => followed(readings, weights, one, "at") ?? []);
  const good = near.filter(({ left }) => worstOf(left) <= act && rootMean(left) <= before / 2);
  const exact = best(toldFrom(good), EXACT).flatMap((one) => {
    const found = followed(readings, weights, one, "exact");
    return found === null || worstOf(found.left) > note ? [] : [found];
  });
  return best(toldFrom(exact), EXACT).map(({ one, other, amounts, left }) => {
    const mean = rootMean(left);
    return { causes: [causeOf(one, amounts[0], mean), causeOf(other, amounts[1], mean)], left: mean };
  });
}

const causeOf = ({ kind, about, unit }: Hypothesis, amount: number, left: number): Cause => ({
  kind,
  about,
  amount,
  unit,
  left,
});

const worstOf = (left: readonly number[]): number => Math.max(...left.map(Math.abs));

const costOf = (left: readonly number[], weights: readonly number[]): number =>
  left.reduce((total, r, i) => total + r * r * (weights[i] ?? 0), 0);

const best = <T extends Try>(all: readonly T[], most: number): readonly T[] =>
  [...all].sort((a, b) => a.cost - b.cost).slice(0, most);

const toldFrom = (all: readonly Fitted[]): readonly Fitted[] => untold(all, ({ cost }) => cost);

type About = Pick<Hypothesis, "kind" | "about">;

/** Whether two hypotheses may be changed one after the other: not two placements of one lamp. */
export function areTwo(a: About, b: About): boolean {
  const placed = ({ kind }: About): boolean => ["distance", "height", "bearing"].includes(kind);
  return !(placed(a) && placed(b) && a.about === b.about);
}

/** What a step takes from each reading, for each unit of it; null where nothing changes or a reading gets no light. */
function slopeOf(
  here: readonly number[],
  there: readonly number[] | null,
  step: number,
): readonly number[] | null {
  if (there === null) return null;
  const slope = here.map((r, i) => (r - (there[i] ?? 0)) / step);
  return slope.some((s) => Math.abs(s * step) > 1e-9) ? slope : null;
}

/** The amounts that leave least, by the normal equations; null where the two change the readings alike. */
function solved(
  off: readonly number[],
  [a, b]: readonly [readonly number[], readonly number[]],
  weights: readonly number[],
): Amounts | null {
  const dot = (x: readonly number[], y: readonly number[]): number =>
    x.reduce((total, one, i) => total + one * (y[i] ?? 0) * (weights[i] ?? 0), 0);
  const [aa, ab, bb] = [dot(a, a), dot(a, b), dot(b, b)];
  if (!(aa > 0 && bb > 0) || ab * ab > ALIKE * ALIKE * aa * bb) return null;
  const [ra, rb] = [dot(off, a), dot(off, b)];
  const area = aa * bb - ab * ab;
  return [(ra * bb - rb * ab) / area, (rb * aa - ra * ab) / area];
}

const within = ([one, other]: readonly [Hypothesis, Hypothesis], [a, b]: Amounts): Amounts => [
  Math.min(one.most, Math.max(-one.most, a)),
  Math.min(other.most, Math.max(-other.most, b)),
];

/**
 * A pair from where it stands to the amounts that leave least, by Gauss and Newton's steps. With all light worked out
 * anew the slopes stay those of the light nearby, and one step is taken.
 */
function followed(
  readings: readonly Known[],
  weights: readonly number[],
  { one, other, amounts: start }: Try,
  how: "at" | "exact",
): Fitted | null {
  const planAt = (way: "at" | "exact", [a, b]: Amounts): Plan => {
    const first = one[way](a);
    const second = hypotheses(first).find(({ kind, about }) => kind === other.kind && about === other.about);
    return second === undefined ? first : second[way](b);
  };
  const leftAt = (way: "at" | "exact", by: Amounts): readonly number[] | null =>
    leftIn(planAt(way, by), readings);
  let amounts = start;
  let left = leftAt(how, amounts);
  for (let pass = 0; pass < (how === "at" ? STEPS : 1); pass++) {
    const [a, b] = amounts;
    const here = how === "at" ? left : leftAt("at", amounts);
    if (here === null || left === null) return null;
    const slopes = [
      slopeOf(here, leftAt("at", [a + one.step, b]), one.step),
      slopeOf(here, leftAt("at", [a, b + other.step]), other.step),
    ] as const;
    if (slopes[0] === null || slopes[1] === null) return null;
    const by = solved(left, [slopes[0], slopes[1]], weights);
    if (by === null) return null;
    amounts = within([one, other], [a + by[0], b + by[1]]);
    left = leftAt(how, amounts);
    if (Math.abs(by[0]) < one.step / 50 && Math.abs(by[1]) < other.step / 50) break;
  }
  return left === null ? null : { one, other, amounts, left, cost: costOf(left, weights) };
}
