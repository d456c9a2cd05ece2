import type { Vec3 } from "../../core/vector.js";
import { distance } from "../../math/vector.js";
import type { Scene, Source } from "../../scene/types.js";
import { atDistance, withSource } from "../change/move-source.js";
import { intrusionOf } from "../geometry/intrusion.js";
import { hiddenBySet } from "../light/set-hides.js";
import { firstFace, lightsOf, type Plan } from "../plan.js";
import { sayLength } from "../say/quantity.js";
import { fitsRoom } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule, RuleFinding } from "./rule.js";
import { insideWords } from "./who-is-met.js";

/** How fine, and how far to either side, a free place is looked for on the line, m. */
const STEP = 0.01;
const FURTHEST = 3;
/** Nobody puts a lamp nearer than this, m. */
const NEAREST = 0.2;

/** The share of its straight light that the set may take at a place that is offered. */
const TAKEN = 0.5;

/**
 * The lamp at the nearest free place on the line from a point through it from which the set leaves it most of its light
 * at its aim; null where there is none in reach.
 */
function freed(scene: Scene, source: Source, from: Vec3): Source | null {
  const here = distance(from, source.centre);
  for (let i = 1; i * STEP <= FURTHEST; i++) {
    for (const way of [1, -1]) {
      const away = Math.round((here + way * i * STEP) / STEP) * STEP;
      if (away < NEAREST) continue;
      const moved = atDistance(source, from, away);
      if (!fitsRoom(scene, moved) || intrusionOf(scene, moved) !== null) continue;
      if ((hiddenBySet(scene, moved, source.aim)?.share ?? 0) < TAKEN) return moved;
    }
  }
  return null;
}

function remedyFor(plan: Plan, source: Source): string {
  const { scene } = plan;
  const face = firstFace(scene);
  const from = face ?? source.aim;
  const moved = freed(scene, source, from);
  if (moved === null) return "Move one of the two.";
  const index = scene.sources.indexOf(source);
  const power = face === null ? "" : powerWords(plan, withSource(plan, index, moved), source);
  const zero = face === null ? "its aim" : "the face";
  return `Move ${source.name} to ${sayLength(distance(from, moved.centre))} from ${zero} on the same line, ${sayLength(moved.centre[2])} high, where it stands free${power}; or move the other.`;
}

/** A lamp stands in a person or a piece of the set. */
export const lampInside: Rule = {
  code: "lamp-inside",
  thresholds: [],
  safety: false,
  page: {
    when: "The middle or the rim of a lit opening lies inside a person or a solid piece of the set, or a flat, card, paper, panel or scrim goes through the opening. Stands do not count, nor the cloth that is the light itself. Head and softbox behind the opening are not known to the program.",
    means: "It cannot be built, and the light that is reported for it is that of a lamp shut in.",
    todo: "Look for a slip in a place or a distance; move the lamp or the piece.",
    source: "None is needed.",
  },
  check: (plan) => {
    const { scene } = plan;
    return lightsOf(scene).flatMap((source): RuleFinding[] => {
      const found = intrusionOf(scene, source);
      if (found === null) return [];
      return [
        {
          severity: "stop",
          message: insideWords(scene, found, source.name, `the opening of ${source.name}`),
          remedy: remedyFor(plan, source),
          about: source.name,
        },
      ];
    });
  },
};
