import { exp2 } from "../../core/exp2.js";
import type { Scene, Source } from "../../scene/types.js";
import { isoAtLeast } from "../say/nominal.js";
import { fixed } from "../say/number.js";
import { sayStops } from "../say/quantity.js";

/** Less than this is nothing that a dial shows, stops. */
const TRIFLE = 0.05;

/** Stops by which a change asks for more (+) or less (-) than the lamp's dial gives; 0 where it gives it. */
export function beyondDial({ below, lowest }: Source, stops: number): number {
  if (below === null) return 0;
  const [over, under] = [stops - below, lowest === null ? 0 : below - stops - lowest];
  return over >= TRIFLE ? over : under >= TRIFLE ? -under : 0;
}

/** That a lamp does not go so far, and what the camera can do in its stead; nothing where it goes. */
export function beyondWords({ camera }: Scene, source: Source, stops: number): string {
  const beyond = beyondDial(source, stops);
  if (beyond === 0) return "";
  if (beyond < 0) return `, which is ${sayStops(-beyond)} lower than ${source.name} goes`;
  const iso = camera === null || camera.iso === null ? null : isoAtLeast(camera.iso * exp2(beyond));
  return `, which is ${sayStops(beyond)} more than ${source.name} has${iso === null ? "" : ` (${iso.text} makes up for it)`}`;
}

/**
 * What to do with the power for a change of stops, in words: `, with 0.7 stop more power for the same reading`, and
 * whether the lamp has that; nothing for a trifle.
 */
export function powerWords(scene: Scene, source: Source, stops: number): string {
  const text = fixed(Math.abs(stops), 1);
  if (text === "0.0") return "";
  const much = `, with ${text} stop ${stops > 0 ? "more" : "less"} power for the same reading`;
  return `${much}${beyondWords(scene, source, stops)}`;
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
