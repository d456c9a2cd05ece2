import { fixed } from "../say/number.js";

/** What to do with the power for a change of stops, in words: `and give it 0.7 stop more`; nothing for a trifle. */
export function powerWords(stops: number): string {
  const text = fixed(Math.abs(stops), 1);
  if (text === "0.0") return "";
  return stops > 0
    ? `, with ${text} stop more power for the same reading`
    : `, with ${text} stop less power for the same reading`;
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
