import { addScaled } from "../../math/vector.js";
import type { NaturalLightValue } from "../../model/values.js";
import { lightPlace, seenLight } from "../../scene/lit/seen.js";
import { deg } from "../../units/make.js";
import { atDistance } from "../change/move-source.js";
import { directionTo } from "../geometry/directions.js";
import { greatestSide } from "../geometry/shape.js";
import { fallOffInTheOpen } from "../light/fall-off.js";
import { sizeFrom } from "../light/size.js";
import { keyOf, type Plan } from "../plan.js";
import { furthestInRoom, type KeyLight, keyDistanceWhere, standsWords } from "../rules/key-light.js";
import { seenSize } from "../rules/overcast-size.js";
import { fixed, floorTo } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import type { ReportCriterion } from "../schema/intent.js";
import { threshold } from "../settings.js";
import { around, criterion, upTo } from "./criterion.js";
import { BEHIND } from "./natural.js";
import { elevationOf, nearestChange } from "./nearest-change.js";
import { oneShadow } from "./one-shadow.js";
import { windowFallOff, windowSize } from "./window-light.js";

type WindowWish = Extract<NaturalLightValue, { kind: "window" }>;

const wish = "pass_for";

/** The points in which a light passes for a window. */
export function windowCriteria(plan: Plan, key: KeyLight, window: WindowWish): readonly ReportCriterion[] {
  return [size(plan, key, window), fallOff(plan, key, window), elevation(plan, key), oneShadow(plan, key)];
}

function size(plan: Plan, key: KeyLight, window: WindowWish): ReportCriterion {
  const want = windowSize(window);
  const times = (name: "window_size_wanted" | "window_size") => {
    const by = threshold(plan.recipe, name);
    return { low: want / by, high: want * by };
  };
  const found = seenSize(key.source, key.face);
  return criterion({
    wish,
    name: "angular_size",
    value: found > 0 ? found : null,
    reason: `${key.source.name} does not show its lit side to the face`,
    unit: "deg",
    wanted: times("window_size_wanted"),
    still: times("window_size"),
    say: sayAngle,
    remedy: () => sizeAs(plan, key, found, want),
  });
}

/** How a light comes to look as large as the window: another distance, or another opening. */
function sizeAs(plan: Plan, key: KeyLight, found: number, want: number): string {
  if (key.source.patch !== undefined)
    return `Turn ${key.source.name} to a cloth or a box of the window's size.`;
  const half = (angle: number): number => Math.tan((Math.min(170, angle) * Math.PI) / 360);
  const side = floorTo((greatestSide(key.source) * half(want)) / half(found), 0.01);
  const opening = `take an opening of about ${sayLength(side)} where it is`;
  const away = keyDistanceWhere(plan, key, 0.2, Math.min(30, furthestInRoom(plan, key)), ({ scene }) => {
    const source = keyOf(scene);
    return (source === null ? 0 : (sizeFrom(source, key.face)?.equivalent ?? 0)) - want;
  });
  if (away === null) return `T${opening.slice(1)}.`;
  return `Bring ${key.source.name} to ${standsWords(key.face, atDistance(key.source, key.face, away))}, or ${opening}.`;
}

function fallOff(plan: Plan, key: KeyLight, window: WindowWish): ReportCriterion {
  const want = windowFallOff(window, BEHIND);
  const towards = directionTo(lightPlace(key.source), key.face);
  const found =
    towards === null
      ? null
      : fallOffInTheOpen(seenLight(key.source), key.face, addScaled(key.face, towards, BEHIND));
  return criterion({
    wish,
    name: "fall_off",
    value: found,
    reason: `${key.source.name} does not show its lit side to the face`,
    unit: "stop",
    wanted: around(want, threshold(plan.recipe, "window_fall_off_wanted")),
    still: around(want, threshold(plan.recipe, "window_fall_off")),
    say: (stops) => `${fixed(stops, 1)} stop over the next metre`,
    remedy: () =>
      key.source.patch !== undefined
        ? `Turn ${key.source.name} to a cloth or a box of the window's size.`
        : (found ?? 0) > want
          ? `Move ${key.source.name} further away, with an opening as much larger.`
          : `Come nearer with ${key.source.name}, with an opening as much smaller.`,
  });
}

function elevation(plan: Plan, key: KeyLight): ReportCriterion {
  const wanted = upTo(plan, "window_elevation_wanted");
  return criterion({
    wish,
    name: "elevation",
    value: key.elevation,
    unit: "deg",
    wanted,
    still: upTo(plan, "window_elevation"),
    say: sayAngle,
    remedy: () => {
      const value = elevationOf(key.source.name);
      const target = { kind: "value", type: "angle", quantity: deg(wanted.high ?? 0) } as const;
      return nearestChange(plan, { kind: "compare", value, sign: "<=", target });
    },
  });
}
