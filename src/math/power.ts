/** x to the power y for x >= 0, by logarithm and exponential; 0 to a positive power is 0, anything to 0 is 1. */
export function power(x: number, y: number): number {
  if (y === 0) return 1;
  if (x <= 0) return 0;
  return Math.exp(y * Math.log(x));
}
