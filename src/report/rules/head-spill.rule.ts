import { shadowDepthAt } from "../light/shadow-depth.js";
import { sizeFrom } from "../light/size.js";
import type { Plan } from "../plan.js";
import { sayAngle, sayStops } from "../say/quantity.js";
import { sayOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { type KeyLight, keyLight } from "./key-light.js";
import type { Rule } from "./rule.js";
import { overcastWish } from "./wishes.js";

/** What of a head that shines into a surface comes straight to the face as well. */
export interface HeadSpill {
  /** How deep a shadow it throws there, stops. */
  readonly stops: number;
  /** How wide its opening looks from the face, deg. */
  readonly size: number;
}

/** The straight light of a key that shines into a surface, where its shadow is deep enough to be seen; else null. */
export function headSpill(plan: Plan, key: KeyLight): HeadSpill | null {
  if (key.source.patch === undefined) return null;
  const stops = shadowDepthAt(plan, key.source.name, key.straight);
  const size = sizeFrom(key.source, key.face);
  if (stops === null || size === null) return null;
  return stops > threshold(plan.recipe, "second_shadow") + 1e-9 ? { stops, size: size.equivalent } : null;
}

/** A head that shines into a surface also reaches the face straight. */
export const headPastSurface: Rule = {
  code: "head-spill",
  thresholds: ["second_shadow"],
  safety: false,
  page: {
    when: "The key shines into a surface, and a flat receptor at the face that looks at the head itself would be more than `second_shadow` (0.5 stop) darker in the shadow of the head's straight light. Where `intent` wishes for an overcast sky, `not-overcast` says it.",
    means:
      "Size, edges and direction are those of the lit patch. What comes past it straight from the head is a small light of its own: it draws hard edges inside the soft ones and a second highlight in the eyes.",
    todo: "Turn the head further towards its surface, put a grid or a flag before it, or take the hard light into the plan.",
    source: "Geometry; the threshold is common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    const spill = key === null || overcastWish(plan.recipe) ? null : headSpill(plan, key);
    if (key === null || spill === null) return [];
    const { name, patch } = key.source;
    return [
      {
        severity: "check",
        message: `${name} reaches the face straight as well, past ${sayOwner(patch?.surface ?? "")}: its head, ${sayAngle(spill.size)} wide from there, throws a shadow ${sayStops(spill.stops)} deep.`,
        remedy: `Turn ${name} further towards ${sayOwner(patch?.surface ?? "")}, or hang a black flag between it and the face.`,
        about: name,
      },
    ];
  },
};
