import { degrees } from "../../math/rotation.js";
import { angleBetween, subtract } from "../../math/vector.js";
import { imageDistance } from "../../scene/lens.js";
import type { SceneCamera, Source } from "../../scene/types.js";
import { between } from "../geometry/crossing.js";
import { directionTo } from "../geometry/directions.js";
import { directFrom } from "../light/reading.js";
import { type Lit, lightsOn } from "../plan.js";
import { ceilTo } from "../say/number.js";
import { sayAngle } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Half the angle of view across the diagonal, deg; null without a focal length. */
function halfView(camera: SceneCamera): number | null {
  const image = imageDistance(camera);
  if (image === null) return null;
  const { frameWidth, frameHeight, shift } = camera;
  const w = frameWidth / 2;
  const h = frameHeight / 2 + Math.abs(shift);
  return degrees(Math.atan2(Math.sqrt(w * w + h * h), image));
}

function shinesIntoLens(lit: Lit, camera: SceneCamera, source: Source): boolean {
  const facing = directionTo(camera.at, source.centre);
  if (facing === null || !(directFrom(lit, source.name, { at: camera.at, facing, receptor: "disc" }) > 0))
    return false;
  return between(lit.scene, source.centre, camera.at) === null;
}

/** A lamp shines into the lens. */
export const flare: Rule = {
  code: "flare",
  thresholds: ["flare"],
  safety: false,
  page: {
    when: "Light of a lamp reaches the lens (it does not come from behind a lamp, nor past its grid), nothing of the set stands between, and the lamp is within half the diagonal angle of view plus `flare` (20 deg) of the lens axis.",
    means: "Light that is not part of the picture veils it.",
    todo: "A flag between lamp and lens, a hood, or the lamp further round.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const { camera } = scene;
    const half = camera === null ? null : halfView(camera);
    if (camera === null || half === null) return [];
    const most = half + threshold(recipe, "flare");
    return lightsOn(scene).flatMap((source): RuleFinding[] => {
      const off = degrees(angleBetween(camera.forward, subtract(source.centre, camera.at)));
      if (off >= most - 1e-9 || source.role === "practical" || !shinesIntoLens(plan, camera, source))
        return [];
      return [
        {
          severity: "check",
          message: `${source.name} shines into the lens from ${sayAngle(off)} off its axis.`,
          remedy: `Flag it from the lens, or move it beyond ${sayAngle(ceilTo(most, 1))} off the axis.`,
          about: source.name,
        },
      ];
    });
  },
};
