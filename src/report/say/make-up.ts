import { exp2 } from "../../core/exp2.js";
import type { SceneCamera } from "../../scene/types.js";
import { apertureAtMost, isoAtLeast } from "./nominal.js";

/** The ISO value that makes up for so many missing stops, by its dial; null without one set, or beyond the dial. */
export function isoFor(camera: SceneCamera | null, missing: number): string | null {
  const iso = camera?.iso ?? null;
  return iso === null ? null : (isoAtLeast(iso * exp2(missing))?.text ?? null);
}

/** The aperture that makes up for so many missing stops, by its dial; null without one set, or beyond the dial. */
export function apertureFor(camera: SceneCamera | null, missing: number): string | null {
  const aperture = camera?.aperture ?? null;
  return aperture === null ? null : (apertureAtMost(aperture * exp2(-missing / 2))?.text ?? null);
}
