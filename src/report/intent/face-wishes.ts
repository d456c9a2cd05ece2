import { lightPlace } from "../../scene/lit/seen.js";
import { anglesFrom } from "../face/angles.js";
import { type PatternGap, patternOf } from "../face/pattern.js";
import { sideOfFace } from "../face/side.js";
import { isNear, wishedGap, wishedSide } from "../face/wish.js";
import type { Plan } from "../plan.js";
import { type KeyLight, keyLight } from "../rules/key-light.js";
import { patternLost } from "../rules/pattern-lost.rule.js";
import { sideSlip } from "../rules/side-slip.rule.js";
import { sayAngle } from "../say/quantity.js";
import type { ReportCriterion } from "../schema/intent.js";

const blank = {
  wanted_least: null,
  wanted_most: null,
  found: null,
  value: null,
  reason: null,
  remedy: null,
} as const;

/** Wishes for the pattern of light on the face and for its side. */
export function faceWishes(plan: Plan): readonly ReportCriterion[] {
  const key = keyLight(plan);
  return [...patternWish(plan, key), ...sideWish(plan, key)];
}

/** How far the key stands from the range of the wished pattern: met inside, nearly within the thresholds. */
function patternWish(plan: Plan, key: KeyLight | null): readonly ReportCriterion[] {
  const wanted = plan.recipe.intent?.pattern;
  if (wanted === undefined) return [];
  const row = { ...blank, wish: "pattern", name: "pattern", wanted, unit: "deg" } as const;
  const angles = key === null ? null : anglesFrom(key.subject, lightPlace(key.source));
  const gap = angles === null ? null : wishedGap(plan.recipe, angles);
  if (angles === null || gap === null)
    return [{ ...row, verdict: "not known", reason: "there is no key, or no face for it" }];
  const made = patternOf(angles);
  const met = gap.off === 0;
  return [
    {
      ...row,
      found: met ? gap.name : foundWords(made, gap),
      value: gap.off,
      verdict: met ? "met" : isNear(plan.recipe, gap) ? "nearly" : "missed",
      remedy: met ? null : (patternLost.check(plan)[0]?.remedy ?? moveWords(gap)),
    },
  ];
}

function foundWords(made: PatternGap, gap: PatternGap): string {
  return made.off === 0 ? made.name : `${sayAngle(gap.off)} from ${gap.name}`;
}

/** The small move that brings a key into the range of a pattern. */
function moveWords({ azimuth, elevation }: PatternGap): string {
  const side = `${sayAngle(Math.abs(azimuth))} ${azimuth > 0 ? "further from" : "nearer to"} the nose line`;
  const up = `${sayAngle(Math.abs(elevation))} ${elevation > 0 ? "higher" : "lower"}`;
  const parts = [...(azimuth === 0 ? [] : [side]), ...(elevation === 0 ? [] : [up])];
  return `Bring the key ${parts.join(" and ")}.`;
}

/** The side of every face that the key lights. */
function sideWish(plan: Plan, key: KeyLight | null): readonly ReportCriterion[] {
  const wanted = wishedSide(plan.recipe);
  if (wanted === null) return [];
  const { camera, subjects } = plan.scene;
  const row = { ...blank, wish: "side", name: "side", wanted, unit: "1" } as const;
  const sides = subjects.map((subject) => {
    const light = key === null ? null : anglesFrom(subject, lightPlace(key.source));
    const lens = camera === null ? null : anglesFrom(subject, camera.at);
    return light === null ? "there is no key" : sideOfFace(light, lens);
  });
  const slipped = sides.find((side) => (side === "short" || side === "broad") && side !== wanted);
  const open = sides.find((side) => side !== "short" && side !== "broad");
  if (slipped !== undefined)
    return [{ ...row, found: slipped, verdict: "missed", remedy: sideSlip.check(plan)[0]?.remedy ?? null }];
  if (open !== undefined || sides.length === 0)
    return [{ ...row, verdict: "not known", reason: open ?? "there is no subject" }];
  return [{ ...row, found: wanted, verdict: "met" }];
}
