import { exp2 } from "../../core/exp2.js";
import type { Source } from "../../scene/types.js";
import type { Meter } from "../../transport/meter.js";
import { atPower, withSource } from "../change/move-source.js";
import { readingAt } from "../light/reading.js";
import { setShadow, shadowDepthAt } from "../light/shadow-depth.js";
import { sizeFrom } from "../light/size.js";
import { faceWords, lightsOn, type Plan } from "../plan.js";
import { ceilTo, fixed } from "../say/number.js";
import { sayStops } from "../say/quantity.js";
import { ownerOf, sayOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { faceChange, type KeyLight, keyLight } from "./key-light.js";
import type { Rule, RuleFinding } from "./rule.js";
import { sunWish } from "./wishes.js";

/** Above this angular size in deg a light throws no shadow that looks like one of its own. */
const SHADOWLESS = 25;

/** A shadow of a light other than the key: where, in words and as a meter, and how deep. */
interface Second {
  readonly where: string;
  readonly at: Meter;
  readonly stops: number;
}

/** The deeper of a light's shadows at the face and, unless it is there for the background, on the set. */
function secondShadow(plan: Plan, key: KeyLight, source: Source): Second | null {
  const face = shadowDepthAt(plan, source.name, key.station);
  const set = source.role === "background" ? null : setShadow(plan, source.name);
  if (set !== null && set.stops > (face ?? 0)) {
    return { where: `on ${sayOwner(ownerOf(set.station.name))}`, at: set.station, stops: set.stops };
  }
  return face === null ? null : { where: `at ${faceWords(plan.scene)}`, at: key.station, stops: face };
}

/** By how many stops a light is turned down for its shadow at a meter to be so deep; infinite where none will do. */
function stopsDown(plan: Plan, source: Source, at: Meter, depth: number): number {
  const { exposure, shares } = readingAt(plan, at);
  const share = shares.find((row) => row.name === source.name);
  const own = share?.direct ?? 0;
  const bounced = share?.bounced ?? 0;
  const rest = exposure - own - bounced;
  // Turned down to a share x the shadow is log2(1 + own x / (rest + bounced x)) deep.
  const over = exp2(depth) - 1;
  return Math.log2((own - over * bounced) / (over * rest));
}

/** Every light besides the key that throws a shadow which is seen as its own, with what to do about it. */
export function secondShadows(plan: Plan, key: KeyLight): readonly RuleFinding[] {
  const most = threshold(plan.recipe, "second_shadow");
  return lightsOn(plan.scene).flatMap((source): RuleFinding[] => {
    if (source.name === key.source.name) return [];
    const second = secondShadow(plan, key, source);
    const size = sizeFrom(source, key.face)?.equivalent ?? 0;
    if (second === null || second.stops <= most + 1e-9 || size > SHADOWLESS) return [];
    const down = ceilTo(stopsDown(plan, source, second.at, most), 0.1);
    let remedy = "Use one lamp.";
    if (Number.isFinite(down)) {
      const index = plan.scene.sources.indexOf(source);
      const change = faceChange(plan, withSource(plan, index, atPower(source, -down)));
      remedy = `Turn ${source.name} down by ${fixed(down, 1)} stop (the face loses ${sayStops(-change)}), or use one lamp.`;
    }
    const depth = Number.isFinite(second.stops) ? `${sayStops(second.stops)} deep` : "quite black";
    return [
      {
        severity: "check",
        message: `${source.name} throws a second shadow ${second.where}, ${depth}: two suns.`,
        remedy,
        about: source.name,
      },
    ];
  });
}

/** A second light throws a shadow of its own where there should be one sun. */
export const twoSuns: Rule = {
  code: "two-suns",
  thresholds: ["second_shadow"],
  safety: false,
  page: {
    when: "`intent` wishes for sunlight, and a light other than the key, up to 25 deg wide from the face, throws a shadow deeper than `second_shadow` (0.5 stop) at the face, or on set or floor if it is no background light. All light that fills the shadow counts, bounced light too.",
    means: "Two shadows of one nose: there is only one sun, and the picture reads as a studio.",
    todo: "Use one lamp, turn the other down until its shadow drowns, or make it very large.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    return sunWish(plan.recipe) === null || key === null ? [] : secondShadows(plan, key);
  },
};
