import type { Scene } from "../scene/types.js";
import type { LightField } from "./light-field.js";

/** The luminous energies of a scene's sources at their present settings, lm s. */
export function energiesOf(scene: Scene): readonly number[] {
  return scene.sources.map((source) => source.energy);
}

/**
 * Luminous exposure at every station, lx s, for given luminous energies of the sources (lm s): direct light, and
 * bounced light where the field has it. The contributions to a station are summed from the least to the greatest, so
 * the order of the lights in a recipe changes no bit of a result.
 */
export function mix(field: LightField, energies: ArrayLike<number>): Float64Array {
  const { stations, sources, direct, bounced } = field;
  const totals = new Float64Array(stations);
  const parts = new Float64Array(sources);
  for (let i = 0; i < stations; i++) {
    const row = i * sources;
    for (let j = 0; j < sources; j++) {
      const perEnergy = (direct[row + j] as number) + (bounced === null ? 0 : (bounced[row + j] as number));
      const part = perEnergy * (energies[j] ?? 0);
      // Insertion into the sorted part: there are few lights.
      let k = j;
      while (k > 0 && (parts[k - 1] as number) > part) {
        parts[k] = parts[k - 1] as number;
        k--;
      }
      parts[k] = part;
    }
    let sum = 0;
    for (let j = 0; j < sources; j++) sum += parts[j] as number;
    totals[i] = sum;
  }
  return totals;
}
