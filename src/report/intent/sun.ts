import { miredShift } from "../../physics/mired.js";
import { seenLight } from "../../scene/lit/seen.js";
import { deg } from "../../units/make.js";
import { balanceWords } from "../colour/advice.js";
import { faceBalance } from "../colour/balance.js";
import { mixtureOf } from "../colour/mixture.js";
import { inFrame } from "../geometry/frame.js";
import { readingAt } from "../light/reading.js";
import { setShadow } from "../light/shadow-depth.js";
import { sizeFrom } from "../light/size.js";
import { type Plan, stationOf } from "../plan.js";
import { fan } from "../rules/fan.rule.js";
import { headToShin, headToToe } from "../rules/head-to-toe.rule.js";
import type { KeyLight } from "../rules/key-light.js";
import { lowSun } from "../rules/low-sun.rule.js";
import { notSunHard } from "../rules/not-sun-hard.rule.js";
import { sunFlat } from "../rules/sun-flat.rule.js";
import { sunHarsh } from "../rules/sun-harsh.rule.js";
import { fixed } from "../say/number.js";
import { sayAngle, sayStops } from "../say/quantity.js";
import type { ReportCriterion } from "../schema/intent.js";
import { threshold } from "../settings.js";
import { backgroundCorners, fanOf } from "../thrown/fan.js";
import { around, criterion, upTo, within, withThreshold } from "./criterion.js";
import { elevationOf, nearestChange } from "./nearest-change.js";
import { oneShadow } from "./one-shadow.js";
import { sunWarmth } from "./sun-light.js";
import type { SunPlace } from "./sun-place.js";

const wish = "pass_for";
const sayMired = (mired: number): string => `${fixed(mired, 0)} mired`;

/** The points in which a light passes for direct sun. */
export function sunCriteria(plan: Plan, key: KeyLight, sun: SunPlace): readonly ReportCriterion[] {
  return [
    size(plan, key),
    depth(plan, key),
    oneShadow(plan, key),
    elevation(plan, key, sun),
    spread(plan, key),
    fallOff(plan, key),
    warmth(plan, sun),
    shade(plan, key),
  ];
}

function size(plan: Plan, key: KeyLight): ReportCriterion {
  const wanted = upTo(plan, "sun_angular_size_wanted");
  return criterion({
    wish,
    name: "angular_size",
    value: sizeFrom(seenLight(key.source), key.face)?.equivalent ?? null,
    reason: `${key.source.name} does not show its lit side to the face`,
    unit: "deg",
    wanted,
    still: upTo(plan, "sun_angular_size"),
    say: sayAngle,
    remedy: () =>
      notSunHard.check(withThreshold(plan, "sun_angular_size", wanted.high ?? 0))[0]?.remedy ?? null,
  });
}

function depth(plan: Plan, key: KeyLight): ReportCriterion {
  const shadow = setShadow(plan, key.source.name);
  const wanted = within(plan, "sun_shadow_wanted_least", "sun_shadow_wanted_most");
  return criterion({
    wish,
    name: "shadow_depth",
    value: shadow?.stops ?? null,
    reason: `${key.source.name} reaches no place of set or floor straight`,
    unit: "stop",
    wanted,
    still: within(plan, "sun_shadow_least", "sun_shadow_most"),
    say: sayStops,
    remedy: () => {
      const shallow = (shadow?.stops ?? 0) < (wanted.low ?? 0);
      const changed = shallow
        ? withThreshold(plan, "sun_shadow_least", wanted.low ?? 0)
        : withThreshold(plan, "sun_shadow_most", wanted.high ?? 0);
      return (shallow ? sunFlat : sunHarsh).check(changed)[0]?.remedy ?? null;
    },
  });
}

function elevation(plan: Plan, key: KeyLight, sun: SunPlace): ReportCriterion {
  const wanted = around(sun.elevation, threshold(plan.recipe, "sun_elevation_wanted"));
  const { low, high } = wanted;
  const bound = (value: number) => ({ kind: "value", type: "angle", quantity: deg(value) }) as const;
  return criterion({
    wish,
    name: "elevation",
    value: sun.elevation < 0 ? null : key.elevation,
    reason: "the sun is below the horizon at that time",
    unit: "deg",
    wanted,
    still: around(sun.elevation, threshold(plan.recipe, "sun_elevation")),
    say: sayAngle,
    remedy: () => {
      const value = elevationOf(key.source.name);
      const near = nearestChange(plan, {
        kind: "between",
        value,
        low: bound(low ?? 0),
        high: bound(high ?? 0),
      });
      return (
        near ??
        lowSun.check(plan)[0]?.remedy ??
        "No single change of a height or a distance within reach meets it."
      );
    },
  });
}

function spread(plan: Plan, key: KeyLight): ReportCriterion {
  const corners = backgroundCorners(plan.scene);
  const wanted = upTo(plan, "fan_wanted");
  const none = key.source.patch !== undefined || corners.length === 0;
  return criterion({
    wish,
    name: "fan",
    value: none ? null : fanOf(key.source.centre, corners, key.subject.place),
    reason:
      corners.length === 0
        ? "there is no upright piece of the set for shadows to spread across"
        : "a lit surface throws no such shadows",
    unit: "deg",
    wanted,
    still: upTo(plan, "fan"),
    say: sayAngle,
    remedy: () => fan.check(withThreshold(plan, "fan", wanted.high ?? 0))[0]?.remedy ?? null,
  });
}

function fallOff(plan: Plan, key: KeyLight): ReportCriterion {
  const { scene } = plan;
  const shin = stationOf(scene, key.subject, "shin");
  const seen = shin !== null && (scene.camera === null || inFrame(scene.camera, shin.at));
  const loss = seen ? headToShin(plan, key.subject) : null;
  const wanted = upTo(plan, "head_to_toe_wanted");
  return criterion({
    wish,
    name: "head_to_shin",
    value: loss === null ? null : Math.abs(loss),
    reason: seen ? "face or shin gets no light" : "the shins are not in the picture",
    unit: "stop",
    wanted,
    still: upTo(plan, "head_to_toe"),
    say: sayStops,
    remedy: () => headToToe.check(withThreshold(plan, "head_to_toe", wanted.high ?? 0))[0]?.remedy ?? null,
  });
}

/** How warm the face comes out at the camera's balance, against how warm sun and sky come out at daylight balance. */
function warmth(plan: Plan, sun: SunPlace): ReportCriterion {
  const face = faceBalance(plan);
  const target = sunWarmth(sun);
  return criterion({
    wish,
    name: "warmth",
    value: target === null ? null : (face?.now ?? null),
    reason: target === null ? "the sun is below the horizon at that time" : "the face gets no light",
    unit: "mired",
    wanted: around(target ?? 0, threshold(plan.recipe, "sun_warmth_wanted")),
    still: around(target ?? 0, threshold(plan.recipe, "sun_warmth")),
    say: sayMired,
    remedy: () => (face === null ? null : `${balanceWords(face, "every light")}.`),
  });
}

/** How much cooler the shaded cheek is lit than the side to the light. */
function shade(plan: Plan, key: KeyLight): ReportCriterion {
  const { scene } = plan;
  const dark = stationOf(scene, key.subject, "shaded_cheek");
  const lit = mixtureOf(scene, readingAt(plan, key.station));
  const shaded = dark === null ? null : mixtureOf(scene, readingAt(plan, dark));
  const cooler = lit === null || shaded === null ? null : miredShift(shaded.kelvin, lit.kelvin);
  const wanted = within(plan, "shade_cooler_least", "shade_cooler_most");
  return criterion({
    wish,
    name: "shade_cooler",
    value: cooler === null ? null : plainZero(cooler),
    reason: "the shaded cheek gets no light",
    unit: "mired",
    wanted,
    still: { low: -1, high: wanted.high },
    say: sayMired,
    remedy: () =>
      (cooler ?? 0) < (wanted.low ?? 0)
        ? "Outdoors the blue of the sky fills the shade: a weak, large light from the camera with a cool gel does it; or leave it neutral."
        : "Take a weaker cool gel on what fills the shade.",
  });
}

/** A shift that rounding alone has made is none. */
function plainZero(mired: number): number {
  return Math.abs(mired) < 1e-4 ? 0 : mired;
}
