import { backgroundStation } from "../light/background.js";
import { litToShadowStops } from "../light/contrast.js";
import { faceName, type Plan } from "../plan.js";
import { backgroundMiss, backgroundOff } from "../rules/background-off.rule.js";
import type { KeyLight } from "../rules/key-light.js";
import { notSunHard } from "../rules/not-sun-hard.rule.js";
import { seenSize, sizeRemedy } from "../rules/overcast-size.js";
import { ratioOff } from "../rules/ratio-off.rule.js";
import { sayAngle, sayStops } from "../say/quantity.js";
import type { ReportCriterion } from "../schema/intent.js";
import { threshold } from "../settings.js";
import { around, criterion, from, upTo, withThreshold } from "./criterion.js";

/** Wishes for the contrast of the face, the background and the edges of shadows. */
export function plainWishes(plan: Plan, key: KeyLight): readonly ReportCriterion[] {
  return [...contrast(plan), ...background(plan), ...edges(plan, key)];
}

function contrast(plan: Plan): readonly ReportCriterion[] {
  const wish = plan.recipe.intent?.lit_to_shadow;
  if (wish === undefined) return [];
  const { stops, reason } = litToShadowStops(plan, faceName(plan.scene));
  const band = around(wish.stops, wish.plusMinus ?? threshold(plan.recipe, "ratio"));
  return [
    criterion({
      wish: "lit_to_shadow",
      name: "lit_to_shadow",
      value: stops,
      reason: reason ?? "",
      unit: "stop",
      wanted: band,
      still: band,
      say: sayStops,
      remedy: () => ratioOff.check(plan)[0]?.remedy ?? null,
    }),
  ];
}

function background(plan: Plan): readonly ReportCriterion[] {
  const wish = plan.recipe.intent?.background;
  if (wish === undefined) return [];
  const station = backgroundStation(plan.scene);
  const miss = station === null ? null : backgroundMiss(plan, station);
  const wanted = wish.side === "under" ? -wish.stops.value : wish.stops.value;
  const band = around(wanted, wish.stops.plusMinus?.value ?? threshold(plan.recipe, "background"));
  return [
    criterion({
      wish: "background",
      name: "background",
      value: miss === null ? null : wanted + miss,
      reason:
        station === null
          ? "there is no upright piece of the set behind the subject, and no wall there that has `belongs_to: set`"
          : "one of the two gets no light",
      unit: "stop",
      wanted: band,
      still: band,
      say: (stops) => `${sayStops(Math.abs(stops))} ${stops < 0 ? "under" : "over"}`,
      remedy: () => backgroundOff.check(plan)[0]?.remedy ?? null,
    }),
  ];
}

function edges(plan: Plan, key: KeyLight): readonly ReportCriterion[] {
  const wish = plan.recipe.intent?.edges;
  if (wish === undefined) return [];
  const size = seenSize(key.source, key.face);
  const given = {
    wish: "edges",
    name: "angular_size",
    value: size > 0 ? size : null,
    reason: `${key.source.name} does not show its lit side to the face`,
    unit: "deg",
    say: sayAngle,
  } as const;
  if (wish === "soft") {
    const wanted = from(plan, "soft_edges_wanted");
    const remedy = () => sizeRemedy(plan, key, size, wanted.low ?? 0);
    return [criterion({ ...given, wanted, still: from(plan, "soft_edges"), remedy })];
  }
  const wanted = upTo(plan, "hard_edges_wanted");
  const remedy = () => smaller(plan, wanted.high ?? 0);
  return [criterion({ ...given, wanted, still: upTo(plan, "hard_edges"), remedy })];
}

/** What makes the key look no larger than an angle: the words of the rule for sun, which looks at the same. */
function smaller(plan: Plan, most: number): string | null {
  const { recipe } = plan;
  const sun = {
    kind: "sunlight",
    elevation: { value: 30, unit: "deg", written: "30 deg" },
    written: "",
  } as const;
  const intent = recipe.intent === null ? null : { ...recipe.intent, pass_for: sun };
  const changed = withThreshold({ ...plan, recipe: { ...recipe, intent } }, "sun_angular_size", most);
  return notSunHard.check(changed)[0]?.remedy ?? null;
}
