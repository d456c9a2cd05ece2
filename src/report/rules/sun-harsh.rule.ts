import { whiteBoard, withReflectance } from "../change/surfaces.js";
import { type SetShadow, setShadow, shadowDepthAt } from "../light/shadow-depth.js";
import type { Plan } from "../plan.js";
import { sayStops } from "../say/quantity.js";
import { ownerOf, sayOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { type KeyLight, keyLight } from "./key-light.js";
import type { Rule } from "./rule.js";
import { sunWish } from "./wishes.js";

function remedyFor(plan: Plan, key: KeyLight, { station }: SetShadow): string {
  const { scene } = plan;
  if (scene.room === null)
    return "Say what the room is like: without one its surroundings are open and black.";
  const white = withReflectance(plan, ({ kind }) => kind === "wall", whiteBoard);
  const depth = shadowDepthAt(white, key.source.name, station);
  const walls = depth === null ? "" : ` With white walls it would be ${sayStops(depth)} deep.`;
  return `Bring light back with white boards or a white floor, or add a weak, large light from the camera.${walls}`;
}

/** Shadows of a light that is to pass for sun are deeper than on any clear day. */
export const sunHarsh: Rule = {
  code: "sun-harsh",
  thresholds: ["sun_shadow_most"],
  safety: false,
  page: {
    when: "`intent` wishes for sunlight and for no `lit_to_shadow`, and the shadow of the key on the set is more than `sun_shadow_most` (4 stops; 2.3 to 3.3 are wanted) deep, taken as for `sun-flat`.",
    means:
      "Under the sun the whole sky fills the shadows. Blacker ones read as a single lamp in a dark room, or as the moon.",
    todo: "Let a white floor, a white board or a weak, large light fill the shadows.",
    source:
      "A clear sky gives about a fifth to a tenth of all the light (from memory); the threshold is common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    const wished = sunWish(plan.recipe) !== null && plan.recipe.intent?.lit_to_shadow === undefined;
    const shadow = !wished || key === null ? null : setShadow(plan, key.source.name);
    if (key === null || shadow === null) return [];
    if (shadow.stops <= threshold(plan.recipe, "sun_shadow_most") + 1e-9) return [];
    const depth = Number.isFinite(shadow.stops) ? `${sayStops(shadow.stops)} deep` : "quite black";
    return [
      {
        severity: "note",
        message: `Shadows of ${key.source.name} on ${sayOwner(ownerOf(shadow.station.name))} are ${depth}, blacker than on any clear day.`,
        remedy: remedyFor(plan, key, shadow),
        about: key.source.name,
      },
    ];
  },
};
