import { litToShadowStops } from "../light/contrast.js";
import { topOverFront, topOverSides } from "../light/planes.js";
import { shadowDepthAt } from "../light/shadow-depth.js";
import { faceName, type Plan } from "../plan.js";
import type { KeyLight } from "../rules/key-light.js";
import { ceilingRemedy } from "../rules/not-overcast.rule.js";
import { seenSize, sizeRemedy } from "../rules/overcast-size.js";
import { sayAngle, sayStops } from "../say/quantity.js";
import { sayOwner } from "../say/surfaces.js";
import type { ReportCriterion } from "../schema/intent.js";
import { type Band, criterion, from, upTo, within } from "./criterion.js";

const wish = "pass_for";

/** Between level and twice what the real sky shows: not the other way round, and not a lamp overhead. */
const still: Band = { low: 0, high: 2 };

/** What to do where too little reaches the upright planes against the top of the head. */
function paler(plane: string): string {
  return plane === "top_over_front"
    ? "The front gets too little against the top: hang the cloth further towards the camera, or lay a pale floor or a white board before the subject."
    : "The sides get too little against the top: hang a wider cloth, or stand white boards to both sides.";
}

/** The points in which a light passes for an overcast sky. */
export function overcastCriteria(plan: Plan, key: KeyLight): readonly ReportCriterion[] {
  const size = seenSize(key.source, key.face);
  const least = from(plan, "overcast_size");
  const { stops: contrast, reason } = litToShadowStops(plan, faceName(plan.scene));
  const planes = within(plan, "overcast_planes_least", "overcast_planes_most");
  const ceiling = () => ceilingRemedy(plan, key);
  const plane = (name: string, value: number | null): ReportCriterion =>
    criterion({
      wish,
      name,
      value,
      reason: "the subject lies, or a plane gets no light",
      unit: "stop",
      wanted: planes,
      still,
      say: sayStops,
      remedy: () => ((value ?? 0) > (planes.high ?? 0) ? paler(name) : ceiling()),
    });
  return [
    criterion({
      wish,
      name: "angular_size",
      value: size > 0 ? size : null,
      reason: `${key.source.name} does not show its lit side to the face`,
      unit: "deg",
      wanted: least,
      still: least,
      say: sayAngle,
      remedy: () => sizeRemedy(plan, key, size, least.low ?? 0),
    }),
    plane("top_over_front", topOverFront(plan, key.subject)),
    plane("top_over_sides", topOverSides(plan, key.subject)),
    criterion({
      wish,
      name: "lit_to_shadow",
      value: contrast === null ? null : Math.abs(contrast),
      reason: reason ?? "",
      unit: "stop",
      wanted: upTo(plan, "overcast_contrast_wanted"),
      still: upTo(plan, "overcast_contrast"),
      say: sayStops,
      remedy: ceiling,
    }),
    ...straight(plan, key),
  ];
}

/** What a head that shines into a surface sends to the face straight, past it. */
function straight(plan: Plan, key: KeyLight): readonly ReportCriterion[] {
  const { patch, name } = key.source;
  if (patch === undefined) return [];
  const most = upTo(plan, "second_shadow");
  return [
    criterion({
      wish,
      name: "straight_shadow",
      value: shadowDepthAt(plan, name, key.straight) ?? 0,
      unit: "stop",
      wanted: most,
      still: most,
      say: sayStops,
      remedy: () =>
        `Turn ${name} further into ${sayOwner(patch.surface)}, or hang a black flag between it and the face.`,
    }),
  ];
}
