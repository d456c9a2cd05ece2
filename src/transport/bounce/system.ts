import { factorise, solve } from "./cholesky.js";
import type { Exchange } from "./exchange.js";

/**
 * The balance of light between patches, B = S + rho H with H the light that arrives from other patches, made ready
 * to be solved. With the exchange areas K it reads (A / rho - K) B = (A / rho) S: symmetric, and positive definite as
 * long as every patch takes some light, so that it is solved at once (Cholesky) and to rounding.
 */
export interface LightSystem {
  readonly count: number;
  readonly factor: Float64Array;
  /** Area over reflectance of each patch, m2; 0 for patches that are covered. */
  readonly weight: Float64Array;
}

/** Makes the system of an exchange and the reflectances of its patches. */
export function lightSystem(exchange: Exchange, reflectance: Float64Array): LightSystem {
  const { count: n, between, area } = exchange;
  const factor = new Float64Array(n * n);
  const weight = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    weight[i] = (area[i] as number) / (reflectance[i] as number);
    for (let j = 0; j < i; j++) factor[i * n + j] = -(between[i * n + j] as number);
    factor[i * n + i] =
      (weight[i] as number) > 0 ? (weight[i] as number) - (between[i * n + i] as number) : 1;
  }
  factorise(factor, n);
  return { count: n, factor, weight };
}

/**
 * What a unit of own light of each patch gives a view by way of at least one more patch: `share` holds the patches'
 * shares of the view and becomes the answer.
 */
export function importance(system: LightSystem, share: Float64Array): void {
  const n = system.count;
  const seen = Float64Array.from(share);
  solve(system.factor, n, share);
  for (let i = 0; i < n; i++)
    share[i] = (system.weight[i] as number) * (share[i] as number) - (seen[i] as number);
}

/** Turns the patches' own light (lm per m2) into all the light that leaves them, in place. */
export function balance(system: LightSystem, own: Float64Array): void {
  for (let i = 0; i < system.count; i++) own[i] = (own[i] as number) * (system.weight[i] as number);
  solve(system.factor, system.count, own);
}
