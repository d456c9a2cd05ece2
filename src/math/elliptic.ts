/**
 * Bulirsch's general complete elliptic integral
 * `cel(kc, p, a, b) = integral 0 to pi/2 of (a cos^2 + b sin^2) / ((cos^2 + p sin^2) sqrt(cos^2 + kc^2 sin^2))`,
 * for `kc > 0` and `p > 0`; it holds the integrals of all three kinds. 0 outside that range.
 *
 * Source: Bulirsch, Numerische Mathematik 13 (1969) 305.
 */
export function cel(kc: number, p: number, a: number, b: number): number {
  if (!(kc > 0) || !(p > 0)) return 0;
  let k = kc;
  let e = kc;
  let m = 1;
  let root = Math.sqrt(p);
  let aa = a;
  let bb = b / root;
  // The arithmetic-geometric mean doubles its digits each turn; 40 turns are far beyond any double.
  for (let i = 0; i < 40; i++) {
    const f = aa;
    aa += bb / root;
    const g = e / root;
    bb += f * g;
    bb += bb;
    root += g;
    const before = m;
    m += k;
    if (Math.abs(before - k) <= before * 1e-8) break;
    k = 2 * Math.sqrt(e);
    e = k * m;
  }
  return (Math.PI / 2) * ((bb + aa * m) / (m * (m + root)));
}

/** Complete elliptic integral of the first kind, K(m) with the parameter m = k^2 < 1, by the mean of Gauss. */
export function ellipticK(m: number): number {
  return cel(Math.sqrt(1 - m), 1, 1, 1);
}

/** Complete elliptic integral of the second kind, E(m) with the parameter m = k^2 < 1. */
export function ellipticE(m: number): number {
  return cel(Math.sqrt(1 - m), 1, 1, 1 - m);
}

/** Complete elliptic integral of the third kind, Pi(n, m) with the characteristic n < 1 and the parameter m < 1. */
export function ellipticPi(n: number, m: number): number {
  return cel(Math.sqrt(1 - m), 1 - n, 1, 1);
}
