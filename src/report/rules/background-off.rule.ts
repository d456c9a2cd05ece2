import type { Station } from "../../scene/types.js";
import { backgroundLamps, turnLamps } from "../change/turn-lamps.js";
import { evaluate } from "../evaluate/expression.js";
import { backgroundStation } from "../light/background.js";
import { type Reading, readingAt, stopsOver } from "../light/reading.js";
import { lightsOn, type Plan } from "../plan.js";
import { list } from "../say/number.js";
import { overUnder } from "../say/over-under.js";
import { sayStops } from "../say/quantity.js";
import { ownerOf, sayOwner, startWithOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import type { Rule } from "./rule.js";
import { turnRemedy } from "./turn-words.js";

/** How far the background is from its wish in a scene, + for too bright; null where it cannot be said. */
export function backgroundMiss(plan: Plan, station: Station): number | null {
  const wish = plan.recipe.intent?.background;
  if (wish === undefined) return null;
  const against: Reading | null = evaluate({ plan, alarms: null }, wish.of).reading;
  const level = against === null ? null : stopsOver(readingAt(plan, station), against);
  return level === null ? null : level - (wish.side === "under" ? -wish.stops.value : wish.stops.value);
}

function remedyFor(plan: Plan, station: Station, miss: number): string {
  const lamps = backgroundLamps(plan);
  if (lamps.length === 0) {
    return miss > 0
      ? "Move subject and key away from the background, keep the key off it, or take a darker one."
      : "Bring the background nearer, or light it.";
  }
  // All of them together, so that the background stays as even as it is. What they spill on the face counts too.
  const quantity = (changed: Plan): number => backgroundMiss(changed, station) ?? Number.NaN;
  const way = turnLamps(plan, lamps, quantity);
  if (way === null) {
    const names = list(lamps.map((lamp) => lamp.name));
    return miss > 0
      ? `Even without ${names} it is too bright: keep the key off it.`
      : `${names} cannot reach it: they light the face as well. Turn them from it, or bring the background nearer.`;
  }
  return turnRemedy(plan, way, {
    at: station.at,
    name: `the middle of ${sayOwner(ownerOf(station.name))}`,
    quantity,
    outcome: (changed) => `the background is then ${overUnder(quantity(changed), "its wish")}`,
  });
}

/** The background is not as wished. */
export const backgroundOff: Rule = {
  code: "background-off",
  thresholds: ["background"],
  safety: false,
  page: {
    when: "`intent` wishes for a `background`, and the middle of the first upright piece of the set behind the subject, else the wall that belongs to the set differs from it by more than the tolerance behind the wish, else `background` (0.4 stop).",
    means: "The background comes out lighter or darker than planned.",
    todo: "Change the distance between subject and background, or the power of the background light.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const station = backgroundStation(plan.scene);
    const miss = station === null ? null : backgroundMiss(plan, station);
    if (station === null || miss === null) return [];
    const allowed = plan.recipe.intent?.background?.stops.plusMinus?.value;
    if (Math.abs(miss) <= (allowed ?? threshold(plan.recipe, "background")) + 1e-9) return [];
    if (lightsOn(plan.scene).length === 0) return [];
    return [
      {
        severity: "check",
        message: `${startWithOwner(station.name)} is ${sayStops(Math.abs(miss))} too ${miss > 0 ? "bright" : "dark"} for the wished background.`,
        remedy: remedyFor(plan, station, miss),
        about: ownerOf(station.name),
      },
    ];
  },
};
