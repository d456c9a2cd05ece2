import { fixed } from "./number.js";

/** A difference in words: `0.3 stop over`, `1.2 stop under`; `at` for less than half a tenth. */
export function overUnder(stops: number, thing: string): string {
  const text = fixed(Math.abs(stops), 1);
  if (text === "0.0") return `at ${thing}`;
  return `${text} stop ${stops > 0 ? "over" : "under"} ${thing}`;
}

/** A side of the picture from a signed bearing in degrees: `camera-left`, `camera-right`, or straight on. */
export function sideWords(bearing: number): string {
  const size = Math.abs(bearing);
  const side = bearing < 0 ? "camera-left" : "camera-right";
  if (size < 5) return "the camera's side";
  if (size > 175) return "behind the subject";
  return size > 100 ? `behind, ${side}` : side;
}
