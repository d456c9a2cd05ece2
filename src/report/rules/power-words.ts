import { exp2 } from "../../core/exp2.js";
import { lampName } from "../../scene/lit/seen.js";
import type { Scene, Source } from "../../scene/types.js";
import { type Reading, stopsOver, sumOf } from "../light/reading.js";
import { keyOf, type Lit } from "../plan.js";
import { isoFor } from "../say/make-up.js";
import { fixed } from "../say/number.js";
import { sayStops } from "../say/quantity.js";
import { faceReading, fitsRoom } from "./key-light.js";

/** Less than this is nothing that a dial shows, stops. */
const TRIFLE = 0.05;

/** Stops by which a change asks for more (+) or less (-) than the lamp's dial gives; 0 where it gives it. */
export function beyondDial({ below, lowest }: Source, stops: number): number {
  if (below === null) return 0;
  const [over, under] = [stops - below, lowest === null ? 0 : below - stops - lowest];
  return over >= TRIFLE ? over : under >= TRIFLE ? -under : 0;
}

/**
 * That a lamp does not go so far, and what the camera can do in its stead; nothing where it goes.
 *
 * @param missing - Stops that the reading lacks where the lamp gives all it has.
 */
function beyondWords({ camera }: Scene, source: Source, stops: number, missing: number): string {
  const beyond = beyondDial(source, stops);
  if (beyond === 0) return "";
  if (beyond < 0) return `, which is ${sayStops(-beyond)} lower than ${source.name} goes`;
  const iso = isoFor(camera, missing);
  return `, which is ${sayStops(beyond)} more than ${source.name} has${iso === null ? "" : ` (${iso} makes up for it)`}`;
}

/** What the face gets before and after a change, lx s. */
interface Kept {
  readonly before: number;
  /** After it from the light that is changed, as it is set, and from the other lights. */
  readonly own: number;
  readonly others: number;
}

/**
 * Null where the reading changes by no more than a trifle, where the light was no more than a trifle of it and so has
 * nothing to keep up, and where it cannot be said: the key out of its room, nobody there.
 */
function keptOf(before: Lit, after: Lit, name: string): Kept | null {
  const key = keyOf(after.scene);
  if (key !== null && !fitsRoom(after.scene, key)) return null;
  const [old, now] = [faceReading(before), faceReading(after)];
  if (old === null || now === null || Math.abs(stopsOver(now, old) ?? 0) < TRIFLE) return null;
  const without = ({ shares }: Reading): number =>
    sumOf(shares.filter((share) => share.name !== name).map(({ direct, bounced }) => direct + bounced));
  if (Math.log2(old.exposure / without(old)) < TRIFLE) return null;
  const others = without(now);
  return { before: old.exposure, own: now.exposure - others, others };
}

/**
 * What to do with the power of one light after a change, in words: `, with 0.7 stop more power for the same reading`,
 * and whether the lamp has that. The other lights keep their settings, so it is this light alone that makes up for what
 * the face lost. Where the others give the face more than it had, that is said; nothing for a trifle.
 */
export function powerWords(before: Lit, after: Lit, source: Source): string {
  const kept = keptOf(before, after, lampName(source));
  if (kept === null) return "";
  const { own, others } = kept;
  const needed = kept.before - others;
  if (!(needed > 0))
    return `, and turn the others down: alone they then give the face ${sayStops(Math.log2(others / kept.before))} more than it reads now`;
  // What is left of rounding is no light.
  if (!(own > 1e-9 * kept.before)) return "";
  const stops = Math.log2(needed / own);
  const text = fixed(Math.abs(stops), 1);
  if (text === "0.0") return "";
  const much = `, with ${text} stop ${stops > 0 ? "more" : "less"} power for the same reading`;
  const missing = Math.log2(kept.before / (others + own * exp2(stops - beyondDial(source, stops))));
  return `${much}${beyondWords(before.scene, source, stops, missing)}`;
}

/** A setting so many stops below full, in words: `full`, `1/4`, `1/4 less 0.3 stop`. */
export function settingWords(below: number): string {
  const tenths = Math.round(below * 10);
  if (tenths <= 0) return "full power";
  const whole = Math.floor(tenths / 10);
  const rest = tenths - whole * 10;
  let share = 1;
  for (let i = 0; i < whole; i++) share *= 2;
  const base = whole === 0 ? "full power" : `1/${fixed(share, 0)} power`;
  return rest === 0 ? base : `${base} less 0.${rest} stop`;
}
