import { lightPlace } from "../scene/lit/seen.js";
import { lampInputs, type MeasuredInput } from "./evaluate/inputs.js";
import { elevationOf } from "./geometry/directions.js";
import { readingAt, stopsOver } from "./light/reading.js";
import { firstSubject, keyOf, type Plan, stationOf } from "./plan.js";
import { fixed } from "./say/number.js";
import { sayAngle, sayStops } from "./say/quantity.js";

/** A tenth of a stop at the face counts as much as one degree of the key's elevation (common practice, no source). */
const STOP_WEIGHT = 10;

/** An output that is known better than this, in stops, is measured; a worse one is an estimate and is named as such. */
const MEASURED = 0.3;

/** What one input does to the key's reading and its elevation when it is off by its tolerance. */
interface Effect {
  readonly input: MeasuredInput;
  readonly stops: number;
  readonly degrees: number;
}

function effectOf(plan: Plan, input: MeasuredInput): Effect | null {
  const { scene } = plan;
  const key = keyOf(scene);
  const moved = keyOf(input.moved.scene);
  const subject = firstSubject(scene);
  if (key === null || moved === null || subject === null) return null;
  const before = stationOf(scene, subject, "face");
  const after = stationOf(input.moved.scene, subject, "face");
  if (before === null || after === null) return null;
  const stops = stopsOver(readingAt(input.moved, after), readingAt(plan, before)) ?? 0;
  const degrees = elevationOf(subject.face, lightPlace(moved)) - elevationOf(subject.face, lightPlace(key));
  return { input, stops: Math.abs(stops), degrees: Math.abs(degrees) };
}

/**
 * The measured input that matters most: the one whose tolerance moves the key's reading at the face or its elevation
 * most, worked out anew with that input off. Null without a key or a subject, or where nothing moves.
 */
export function mattersMost(plan: Plan): string | null {
  let best: Effect | null = null;
  let most = 0;
  for (const input of lampInputs(plan)) {
    if (input.unit === "stop" && input.size <= MEASURED) continue;
    const effect = effectOf(plan, input);
    if (effect === null) continue;
    const weight = Math.max(effect.stops * STOP_WEIGHT, effect.degrees);
    if (weight > most) {
      most = weight;
      best = effect;
    }
  }
  if (best === null) return null;
  const { what, by, unit } = best.input;
  if (unit === "stop") return `${what}: it is known to ${by} only, until one meter reading settles it`;
  const parts: string[] = [];
  // An elevation that is off is off by as much at the face: there is nothing to work out.
  const itself = what.endsWith(" elevation");
  if (itself && best.stops < 0.05) return `${what}: it is known to ${by}`;
  if (!itself && best.degrees >= 0.05) parts.push(`${degreesWords(best.degrees)} of elevation`);
  if (best.stops >= 0.05 || parts.length === 0) parts.push(`${sayStops(best.stops)} at the face`);
  return `${what}: ${by} is ${parts.join(" and ")}`;
}

function degreesWords(degrees: number): string {
  return degrees < 9.95 ? `${fixed(degrees, 1)} deg` : sayAngle(degrees);
}
