/**
 * A root of a continuous function between a and b by Brent's method (bisection, secant and inverse quadratic steps);
 * undefined when the function has the same sign at both ends. The root is within `tolerance` of a change of sign.
 *
 * Source: Brent, Algorithms for Minimization without Derivatives (1973), chapter 4.
 */
export function findRoot(
  f: (x: number) => number,
  a: number,
  b: number,
  tolerance = 1e-14,
): number | undefined {
  let low = a;
  let best = b;
  let flow = f(low);
  let fbest = f(best);
  if (flow === 0) return low;
  if (fbest === 0) return best;
  if (!(flow * fbest < 0)) return undefined;
  let other = low;
  let fother = flow;
  let step = best - low;
  let previousStep = step;
  for (let turn = 0; turn < 200; turn++) {
    if (fbest * fother > 0) {
      other = low;
      fother = flow;
      step = best - low;
      previousStep = step;
    }
    if (Math.abs(fother) < Math.abs(fbest)) {
      low = best;
      best = other;
      other = low;
      flow = fbest;
      fbest = fother;
      fother = flow;
    }
    const close = 2 * Number.EPSILON * Math.abs(best) + tolerance / 2;
    const half = (other - best) / 2;
    if (Math.abs(half) <= close || fbest === 0) return best;
    if (Math.abs(previousStep) >= close && Math.abs(flow) > Math.abs(fbest)) {
      const s = fbest / flow;
      let p: number;
      let q: number;
      if (low === other) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const r = fbest / fother;
        const t = flow / fother;
        p = s * (2 * half * t * (t - r) - (best - low) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * half * q - Math.abs(close * q), Math.abs(previousStep * q))) {
        previousStep = step;
        step = p / q;
      } else {
        step = half;
        previousStep = half;
      }
    } else {
      step = half;
      previousStep = half;
    }
    low = best;
    flow = fbest;
    best += Math.abs(step) > close ? step : half > 0 ? close : -close;
    fbest = f(best);
  }
  return best;
}
