import { blackened, type KeptView } from "./kept-set.js";
import type { Contributor } from "./types.js";

/** A kept set with one owner's surfaces black. */
export interface BlackSet {
  readonly surface: string;
  readonly kept: KeptView;
}

/** A kept set once for each owner of surfaces that give light back, with those black. */
export function blackSets(kept: KeptView): readonly BlackSet[] {
  return kept.surfaces.owners.map((surface) => ({ surface, kept: blackened(kept, surface) }));
}

/**
 * What the surfaces do for a meter, the greatest first; those that do nothing are left out.
 *
 * @param reading - The reading with all surfaces as they are.
 * @param base - The same by the paths that `read` follows.
 * @param blacks - The same set with one surface after the other black.
 * @param read - The reading with a set.
 */
export function contributors(
  reading: number,
  base: number,
  blacks: readonly BlackSet[],
  read: (kept: KeptView) => number,
): readonly Contributor[] {
  if (!(base > 0)) return [];
  return blacks
    .map(({ surface, kept }) => {
      const without = reading * (read(kept) / base);
      return { surface, takes: reading - without, without };
    })
    .filter(({ takes }) => takes > 0)
    .sort((a, b) => b.takes - a.takes);
}
