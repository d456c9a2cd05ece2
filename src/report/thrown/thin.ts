import type { Vec3 } from "../../core/vector.js";
import { addScaled, distance, dot, subtract } from "../../math/vector.js";

/** What a thinned outline may be off, m. */
const OFF = 0.001;

/** A closed outline with fewer places, none of the rest farther off than 1 mm (Ramer 1972, Douglas and Peucker 1973). */
export function thinned(ring: readonly Vec3[]): readonly Vec3[] {
  const first = ring[0];
  if (first === undefined || ring.length < 5) return ring;
  const far = ring.reduce(
    (best, point, i) => (distance(point, first) > distance(ring[best] as Vec3, first) ? i : best),
    0,
  );
  const half = (from: number, to: number): Vec3[] => {
    const [a, b] = [ring[from] as Vec3, ring[to % ring.length] as Vec3];
    let worst = OFF;
    let at = -1;
    for (let i = from + 1; i < to; i++) {
      const off = offLine(ring[i] as Vec3, a, b);
      if (off > worst) [worst, at] = [off, i];
    }
    return at < 0 ? [a] : [...half(from, at), ...half(at, to)];
  };
  return [...half(0, far), ...half(far, ring.length)];
}

function offLine(point: Vec3, a: Vec3, b: Vec3): number {
  const way = subtract(b, a);
  const square = dot(way, way);
  const t = square > 0 ? Math.min(1, Math.max(0, dot(subtract(point, a), way) / square)) : 0;
  return distance(point, addScaled(a, way, t));
}
