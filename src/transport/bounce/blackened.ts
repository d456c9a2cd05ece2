import { factorise } from "./cholesky.js";
import { type KeptSet, keptAt } from "./kept-set.js";
import { ownersOf } from "./owner.js";
import type { LightSystem } from "./system.js";
import type { Ways } from "./ways.js";

/**
 * A kept set as it would be if all that one owner has were black, at the same cells and by the same rays, so that the
 * difference is the owner's and no other's: the exchange stays as it is, and the system is solved again without the
 * owner's patches.
 *
 * @param owner - One of `ownersOf`.
 */
export function blackened(kept: KeptSet, owner: string): KeptSet {
  const { cells, sides, world, ways, coarse, stations } = kept;
  const black = Uint8Array.from(ownersOf(world, sides), (name) => (name === owner ? 1 : 0));
  const { sideOfPatch } = cells.grid;
  const patchIsBlack = Uint8Array.from(sideOfPatch, (side) => black[side] as number);
  const rho = Float64Array.from(kept.rho, (share, cell) =>
    patchIsBlack[cells.patchOf[cell] as number] === 1 ? 0 : share,
  );
  const parts = {
    rho,
    ways: waysWithout(ways, patchIsBlack),
    coarse: waysWithout(coarse, patchIsBlack),
  };
  return keptAt({ ...kept, ...parts }, stations);
}

/** The patches of a group lie on one side, so that a group is black or not as a whole. */
function waysWithout(ways: Ways, patchIsBlack: Uint8Array): Ways {
  const black = new Uint8Array(ways.system.count);
  ways.groupOf.forEach((group, patch) => {
    if (patchIsBlack[patch] === 1) black[group] = 1;
  });
  return { ...ways, system: systemWithout(ways.system, black) };
}

/** A system without some of its members, which neither give light nor pass any on. */
export function systemWithout(system: LightSystem, black: Uint8Array): LightSystem {
  const { count: n, factor: l } = system;
  const factor = new Float64Array(n * n);
  const weight = Float64Array.from(system.weight, (w, i) => (black[i] === 1 ? 0 : w));
  for (let i = 0; i < n; i++) {
    if (black[i] === 1) {
      factor[i * n + i] = 1;
      continue;
    }
    for (let j = 0; j <= i; j++) {
      if (black[j] === 1) continue;
      let sum = 0;
      for (let k = 0; k <= j; k++) sum += (l[i * n + k] as number) * (l[j * n + k] as number);
      factor[i * n + j] = sum;
    }
  }
  factorise(factor, n);
  return { count: n, factor, weight };
}
