/**
 * The candidate that a word was probably meant to be, or null. A third of the letters may be wrong, missing, too many
 * or (two neighbours) swapped; of several the first nearest one is taken.
 */
export function nearest(word: string, candidates: readonly string[]): string | null {
  if (word.length > 24) return null;
  const limit = Math.max(1, Math.floor(word.length / 3));
  let best: string | null = null;
  let bestDistance = limit + 1;
  for (const candidate of candidates) {
    const distance = editDistance(word.toLowerCase(), candidate);
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** Edits (insert, delete, replace, swap of neighbours) between two short words. */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const line = [row];
    for (let column = 1; column <= b.length; column++) {
      const same = a.charAt(row - 1) === b.charAt(column - 1);
      let cost = Math.min(
        (above[column] ?? 0) + 1,
        (line[column - 1] ?? 0) + 1,
        (above[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped =
        row > 1 &&
        column > 1 &&
        a.charAt(row - 1) === b.charAt(column - 2) &&
        a.charAt(row - 2) === b.charAt(column - 1);
      if (swapped) cost = Math.min(cost, (before[column - 2] ?? 0) + 1);
      line.push(cost);
    }
    before = above;
    above = line;
  }
  return above[b.length] ?? 0;
}
