/**
 * 2 to the power x, by the exponential function; whole powers between -60 and 60 are exact. The factor in light of x stops.
 */
export function exp2(x: number): number {
  const whole = Math.round(x);
  if (x === whole && Math.abs(whole) <= 60) {
    let result = 1;
    for (let i = Math.abs(whole); i > 0; i--) result *= 2;
    return whole < 0 ? 1 / result : result;
  }
  return Math.exp(x * Math.LN2);
}
