/** Signs that make a path a pattern. */
const SIGNS = /[*?]/;

/** True for a path with `*` or `?` in it. */
export const isPattern = (path: string): boolean => SIGNS.test(path);

/**
 * Whether one part of a path is as one part of a pattern says: `*` stands for any letters, also none, `?` for one.
 * Takes time in proportion to both lengths multiplied at most: on a mismatch only the last `*` is tried further.
 */
export function partMatches(pattern: string, part: string): boolean {
  const wanted = [...pattern];
  const letters = [...part];
  // A hidden file or folder is meant only by a pattern that starts with a point itself.
  if (letters[0] === "." && wanted[0] !== ".") return false;
  let at = 0;
  let star = -1;
  let from = 0;
  let i = 0;
  while (i < letters.length) {
    const sign = wanted[at];
    if (sign === "*") {
      star = at++;
      from = i;
    } else if (sign !== undefined && (sign === "?" || sign === letters[i])) {
      at++;
      i++;
    } else if (star >= 0) {
      at = star + 1;
      i = ++from;
    } else return false;
  }
  while (wanted[at] === "*") at++;
  return at === wanted.length;
}
