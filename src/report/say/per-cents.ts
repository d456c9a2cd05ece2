/**
 * Parts of a whole in whole per cents that add up to 100: each is rounded down, and the per cents that are left go to
 * those with the largest rest, the first of equal ones. All 0 where the whole is nothing.
 */
export function wholePerCents(parts: readonly number[]): readonly number[] {
  const total = parts.reduce((sum, part) => sum + part, 0);
  if (!(total > 0)) return parts.map(() => 0);
  const exact = parts.map((part) => (100 * part) / total);
  const whole = exact.map(Math.floor);
  const left = Math.round(100 - whole.reduce((sum, part) => sum + part, 0));
  const order = exact
    .map((part, index) => ({ index, rest: part - Math.floor(part) }))
    .sort((a, b) => b.rest - a.rest || a.index - b.index);
  for (const { index } of order.slice(0, left)) whole[index] = (whole[index] ?? 0) + 1;
  return whole;
}
