import { exp2 } from "../../core/exp2.js";
import { atDistance, atPower, withSource } from "../change/move-source.js";
import { isoAtMost } from "../say/nominal.js";
import { ceilTo, fixed } from "../say/number.js";
import { sayStops } from "../say/quantity.js";
import {
  faceOffAperture,
  fitsRoom,
  furthestInRoom,
  keyDistanceWhere,
  keyLight,
  standsWords,
} from "./key-light.js";
import { reachOf, tooStrong } from "./reach.js";
import type { Rule } from "./rule.js";

/** The lowest setting is too much for the set aperture. */
export const belowMinimum: Rule = {
  code: "below-minimum",
  thresholds: [],
  safety: false,
  page: {
    when: "The set aperture asks for less than the key's `lowest_power`, by more than the tolerance of one meter reading.",
    means: "The picture comes out too bright, whatever the dial.",
    todo: "A neutral filter before the lens or a neutral gel on the lamp, a longer distance, a lower ISO value, a smaller aperture.",
    source: "Exposure: ISO 2720, ISO 10157.",
  },
  check: (plan) => {
    const reach = reachOf(plan);
    if (reach === null || !tooStrong(reach)) return [];
    const { key, needed } = reach;
    const { below, lowest } = key.source;
    if (below === null || lowest === null) return [];
    const excess = needed - lowest;
    const ways = [`Take a neutral filter of ${fixed(ceilTo(excess, 0.5), 1)} stop`];
    const dimmed = withSource(plan, key.index, atPower(key.source, below - lowest));
    const there = keyLight(dimmed);
    const far =
      there === null
        ? null
        : keyDistanceWhere(
            dimmed,
            there,
            key.away,
            furthestInRoom(plan, key),
            (changed) => faceOffAperture(changed) ?? 0,
          );
    if (far !== null && there !== null) {
      const moved = atDistance(there.source, key.face, ceilTo(far, 0.01));
      if (fitsRoom(plan.scene, moved)) ways.push(`move it back to ${standsWords(key.face, moved)}`);
    }
    const { iso } = plan.scene.camera ?? { iso: null };
    const slower = iso === null ? null : isoAtMost(iso * exp2(-excess));
    if (slower !== null) ways.push(`set ${slower.text}`);
    return [
      {
        severity: "stop",
        message: `The lowest setting of ${key.source.name} is ${sayStops(excess)} too bright for the set aperture.`,
        remedy: `${ways.join(", or ")}.`,
        about: key.source.name,
      },
    ];
  },
};
