import type { Place, Ring } from "./region.js";

/** The smallest convex ring round some places, counter-clockwise (Andrew's monotone chain, 1979). */
export function hullOf(places: readonly Place[]): Ring {
  const sorted = [...places].sort(byPlace);
  if (sorted.length < 3) return sorted;
  const low = chainOf(sorted);
  return low.concat(chainOf(sorted.reverse()));
}

const byPlace = (a: Place, b: Place): number => a[0] - b[0] || a[1] - b[1];

/** The places of a sorted list along one side of the ring, without the last. */
function chainOf(sorted: readonly Place[]): Place[] {
  const chain: Place[] = [];
  for (const place of sorted) {
    while (chain.length > 1 && !turnsLeft(chain[chain.length - 2], chain[chain.length - 1], place))
      chain.pop();
    chain.push(place);
  }
  chain.pop();
  return chain;
}

function turnsLeft(a: Place | undefined, b: Place | undefined, c: Place): boolean {
  if (a === undefined || b === undefined) return true;
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0;
}
