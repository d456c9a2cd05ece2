/** 2 to the power x, by the exponential function; whole powers between -60 and 60 are exact. */
export function exp2(x: number): number {
  const whole = Math.round(x);
  if (x === whole && Math.abs(whole) <= 60) {
    let result = 1;
    for (let i = Math.abs(whole); i > 0; i--) result *= 2;
    return whole < 0 ? 1 / result : result;
  }
  return Math.exp(x * Math.LN2);
}

/** x to the power y for x >= 0, by logarithm and exponential; 0 to a positive power is 0, anything to 0 is 1. */
export function power(x: number, y: number): number {
  if (y === 0) return 1;
  if (x <= 0) return 0;
  return Math.exp(y * Math.log(x));
}
