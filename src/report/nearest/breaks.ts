import { once } from "../../core/once.js";
import type { Plan } from "../plan.js";
import { belowMinimum } from "../rules/below-minimum.rule.js";
import { cameraThroughWall } from "../rules/camera-through-wall.rule.js";
import { fitsRoom } from "../rules/key-light.js";
import { lampInFrame } from "../rules/lamp-in-frame.rule.js";
import { lampInside } from "../rules/lamp-inside.rule.js";
import { lampNearCeiling } from "../rules/lamp-near-ceiling.rule.js";
import { lampThroughCeiling } from "../rules/lamp-through-ceiling.rule.js";
import { lampThroughWall } from "../rules/lamp-through-wall.rule.js";
import { notEnoughPower } from "../rules/not-enough-power.rule.js";
import { panelShadesKey } from "../rules/panel-shades-key.rule.js";
import type { Rule } from "../rules/rule.js";
import { standTip } from "../rules/stand-tip.rule.js";
import { standTooShort } from "../rules/stand-too-short.rule.js";

/** What a change must not bring about: a lamp without a place, a stand that tips or ends, a light that cannot give it. */
const watched: readonly Rule[] = [
  lampThroughCeiling,
  lampNearCeiling,
  lampThroughWall,
  lampInside,
  standTooShort,
  standTip,
  cameraThroughWall,
  lampInFrame,
  panelShadesKey,
  belowMinimum,
  notEnoughPower,
];

/** A finding by what it is about; a changed number in its words makes it no other. */
function troubles(plan: Plan): ReadonlySet<string> {
  return new Set(
    watched.flatMap((rule) =>
      rule
        .check(plan)
        .filter(({ severity }) => severity !== "note")
        .map(({ severity, about }) => `${rule.code} ${severity} ${about}`),
    ),
  );
}

/** Whether a changed plan cannot be built or lit where the plan before it could. */
export function breaks(before: Plan): (after: Plan) => boolean {
  const known = once(() => troubles(before));
  return (after) => {
    const { sources } = before.scene;
    if (after.scene.sources.length !== sources.length) return true;
    const out = after.scene.sources.some((source, i) => {
      const own = sources[i];
      return own !== undefined && fitsRoom(before.scene, own) && !fitsRoom(after.scene, source);
    });
    if (out) return true;
    const first = known();
    return [...troubles(after)].some((trouble) => !first.has(trouble));
  };
}
