import { blackenUntil } from "../change/blacken.js";
import { type SetShadow, setShadow, shadowDepthAt } from "../light/shadow-depth.js";
import type { Plan } from "../plan.js";
import { fixed } from "../say/number.js";
import { sayStops } from "../say/quantity.js";
import { ownerOf, sayOwner, sayOwners } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { type KeyLight, keyLight } from "./key-light.js";
import type { Rule } from "./rule.js";
import { sunWish } from "./wishes.js";

function remedyFor(plan: Plan, key: KeyLight, { station, stops }: SetShadow): string {
  const least = threshold(plan.recipe, "sun_shadow_least");
  const slope = threshold(plan.recipe, "sun_shadow_wanted") / stops;
  const post = `steepen the contrast ${fixed(slope, 1)} times afterwards`;
  const depthIn = (changed: Plan): number => shadowDepthAt(changed, key.source.name, station) ?? stops;
  const black = blackenUntil(plan, station, ownerOf(station.name), (changed) => depthIn(changed) >= least);
  if (black === null) return `Turn the other lights down, or ${post}.`;
  const depth = depthIn(black.plan);
  const enough = depth >= least ? "" : ", which is not enough yet";
  return `Cover ${sayOwners(black.owners)} with black: the shadow is then ${sayStops(depth)} deep${enough}. Or keep light off the walls with a dish or a grid, or ${post}.`;
}

/** Shadows of a light that is to pass for sun are too shallow. */
export const sunFlat: Rule = {
  code: "sun-flat",
  thresholds: ["sun_shadow_least", "sun_shadow_wanted"],
  safety: false,
  page: {
    when: "`intent` wishes for sunlight, and the shadow of the key on the set is less than `sun_shadow_least` (2 stops; 2.3 to 3.3 are wanted) deep. It is taken at the station of set or floor that gets most straight from the key: all light there against all but the key's straight light.",
    means:
      "Light that comes back from walls, ceiling and floor fills the shadows as a bright sky would not. The edges may be as hard as the sun's and the picture still looks flat.",
    todo: "Keep light off the room with a dish or a grid, put black where most of the filling light comes from, or take a darker room. What is left is a matter of contrast afterwards.",
    source:
      "A clear sky gives about a fifth to a tenth of all the light (from memory); the thresholds are common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    const shadow = sunWish(plan.recipe) === null || key === null ? null : setShadow(plan, key.source.name);
    if (key === null || shadow === null) return [];
    if (shadow.stops >= threshold(plan.recipe, "sun_shadow_least") - 1e-9) return [];
    return [
      {
        severity: "check",
        message: `Shadows of ${key.source.name} on ${sayOwner(ownerOf(shadow.station.name))} are only ${sayStops(shadow.stops)} deep: other light fills them.`,
        remedy: remedyFor(plan, key, shadow),
        about: key.source.name,
      },
    ];
  },
};
