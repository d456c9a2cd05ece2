import { exp2 } from "../../core/exp2.js";
import { miredShift } from "../../physics/mired.js";
import { keyReading } from "../light/key-reading.js";
import { stopsFromAperture } from "../light/reading.js";
import { toneOf } from "../light/surface-tone.js";
import { firstSubject, type Plan, partName } from "../plan.js";
import type { ReportColour } from "../schema/colour.js";
import type { ReportFinishing } from "../schema/finishing.js";
import type { ReportCriterion, ReportIntent } from "../schema/intent.js";
import { threshold } from "../settings.js";

/** Less than this is not seen, mired. */
const SEEN = 5;
/** Contrasts below this cannot be steepened to anything, stops. */
const FLAT = 0.1;

const isOpen = ({ verdict }: ReportCriterion): boolean => verdict === "nearly" || verdict === "missed";

/** What a wish aims at: the middle of what is wanted, or its one end. */
function aim({ wanted_least: least, wanted_most: most }: ReportCriterion): number | null {
  return least !== null && most !== null ? (least + most) / 2 : (least ?? most);
}

/** The shift of the white balance: to the warmth that is wished for, else to a neutral first face. */
export function whiteBalance(
  colour: ReportColour | null,
  intent: ReportIntent | null,
): ReportFinishing["white_balance"] {
  if (colour === null || colour.face_from_balance === null) return null;
  const { balance, face_from_balance: found, wanted_from_balance: wanted, set_balance: set } = colour;
  const wish = wanted === null ? null : (intent?.criteria.find(({ name }) => name === "warmth") ?? null);
  if (wish === null ? Math.abs(found) < SEEN : !isOpen(wish)) return null;
  return {
    set,
    shift: set === null ? (wanted ?? 0) - found : miredShift(set, balance),
    from: wish === null ? "colour.face_from_balance" : "intent.criteria: warmth",
  };
}

const contrasts: ReadonlyMap<string, string> = new Map([
  ["shadow_depth", "shadows on the set"],
  ["lit_to_shadow", "lit against shaded cheek"],
]);

/** Contrasts that are not as wished, with the slope that makes them so. */
export function contrastSlopes(plan: Plan, intent: ReportIntent | null): ReportFinishing["contrast"] {
  return (intent?.criteria ?? []).filter(isOpen).flatMap((row) => {
    const of = contrasts.get(row.name);
    const wanted = row.name === "shadow_depth" ? threshold(plan.recipe, "sun_shadow_wanted") : aim(row);
    if (of === undefined || wanted === null || row.value === null) return [];
    if (!(wanted >= FLAT && row.value >= FLAT)) return [];
    const slope = wanted / row.value;
    return [
      { of, wanted, found: row.value, slope, pivot: pivotOf(plan), from: `intent.criteria: ${row.name}` },
    ];
  });
}

/** The tone of the first subject's skin in a picture that is exposed for its face; null without one. */
function pivotOf({ scene }: Plan): number | null {
  const subject = firstSubject(scene);
  const head = subject === null ? null : partName(scene, subject, "head");
  const skin = scene.bodies.find((body) => body.of === "subject" && body.name === head)?.reflectance;
  return skin === undefined || !(skin > 0) ? null : toneOf(skin, 0).srgb;
}

/** What has to be lifted: the whole picture, shadows that are too deep, a background that is too dark. */
export function liftsOf(
  plan: Plan,
  intent: ReportIntent | null,
  contrast: ReportFinishing["contrast"],
): ReportFinishing["lifts"] {
  const { scene, recipe } = plan;
  const keyed = keyReading(plan);
  const off = keyed === null ? null : stopsFromAperture(scene, keyed.exposure, keyed.constant);
  const whole = off !== null && -off > threshold(recipe, "off_aperture") + 1e-9 ? -off : 0;
  const iso = scene.camera?.iso ?? null;
  const row = (of: string, stops: number, from: string) => ({
    of,
    stops,
    as_iso: iso === null ? null : iso * exp2(stops),
    from,
  });
  const behind = (intent?.criteria ?? []).find((one) => one.name === "background" && isOpen(one));
  const short = behind === undefined || behind.value === null ? 0 : (aim(behind) ?? 0) - behind.value;
  return [
    ...(whole > 0 ? [row("picture", whole, "stations: the first face")] : []),
    ...contrast
      .filter(({ slope }) => slope < 1)
      .map(({ of, wanted, found, from }) => row(of, whole + found - wanted, from)),
    ...(short > 0 ? [row("background", whole + short, "intent.criteria: background")] : []),
  ];
}
