import type { Vec3 } from "../../src/core/vector.js";

/** A small generator of numbers from 0 to 1 with a fixed seed (mulberry32, a public-domain mixing function). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** A unit vector, all directions alike. */
export function randomDirection(random: () => number): Vec3 {
  const z = 2 * random() - 1;
  const r = Math.sqrt(1 - z * z);
  const turn = 2 * Math.PI * random();
  return [r * Math.cos(turn), r * Math.sin(turn), z];
}
