import type { Recipe } from "../../model/types.js";
import { numberOff, scaleOf, sizeOf, type Tape } from "./tapes.js";
import { writtenNumbers } from "./written.js";

/** One number that a `let` is off with. */
interface Member {
  /** Its place among the written numbers of the recipe. */
  readonly index: number;
  readonly size: number;
  readonly share: number;
}

/** What one recipe says by a `let` in more places than one. */
export interface SharedTapes {
  /** Each such `let` as one input: all that is worked out of it is off with it. */
  readonly tapes: readonly Tape[];
  /** The recipe in which its numbers keep only what they are off by themselves. */
  readonly rest: Recipe;
}

/** The `let`s with a tolerance from which several numbers of a recipe follow; null where there is none. */
export function sharedTapes(recipe: Recipe): SharedTapes | null {
  const numbers = writtenNumbers(recipe);
  const lets = new Map<string, { readonly name: string; readonly members: Member[] }>();
  for (const [index, number] of numbers.entries()) {
    const { origin, plusMinus } = number.quantity;
    if (origin === undefined || plusMinus === undefined) continue;
    const size = sizeOf(recipe, number);
    for (const { tape, name, share } of origin) {
      const known = lets.get(tape) ?? { name, members: [] };
      known.members.push({ index, size, share });
      lets.set(tape, known);
    }
  }
  const several = [...lets].filter(([, { members }]) => members.length > 1);
  if (several.length === 0) return null;
  const taken = new Set(several.map(([tape]) => tape));
  const tapes = several.flatMap(([, { name, members }]): readonly Tape[] => {
    const first = members[0] as Member;
    const size = Math.abs(first.share) * first.size;
    const number = numbers[first.index];
    if (number === undefined || !(size > 0)) return [];
    return [
      { what: name, size, unit: scaleOf(number.quantity), off: (by) => offBy(recipe, members, by / size) },
    ];
  });
  return { tapes, rest: withoutTaken(recipe, taken) };
}

/** The recipe with a `let` off by a multiple of its tolerance. */
function offBy(recipe: Recipe, members: readonly Member[], times: number): Recipe {
  return members.reduce((changed, { index, size, share }) => {
    const number = writtenNumbers(changed)[index];
    return number === undefined ? changed : number.put(numberOff(number, times * share * size));
  }, recipe);
}

/** The recipe with the tolerances that come from some `let`s taken off. */
function withoutTaken(recipe: Recipe, taken: ReadonlySet<string>): Recipe {
  return writtenNumbers(recipe).reduce((changed, { quantity }, index) => {
    const { origin, plusMinus } = quantity;
    const shares = (origin ?? []).filter(({ tape }) => taken.has(tape));
    const number = writtenNumbers(changed)[index];
    if (number === undefined || plusMinus === undefined || shares.length === 0) return changed;
    const left = shares.reduce((sum, { share }) => sum - share * share, 1);
    const value = left > 1e-9 ? plusMinus.value * Math.sqrt(left) : 0;
    return number.put({ ...quantity, plusMinus: { ...plusMinus, value } });
  }, recipe);
}
