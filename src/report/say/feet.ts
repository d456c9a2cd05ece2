import { fixed } from "./number.js";

/** Metres to an inch, exact (international yard and pound agreement, 1959). */
const INCH = 0.0254;
/** The fractions of an inch on a tape. */
const parts = ["", " 1/4", " 1/2", " 3/4"] as const;

/** A length as one reads it off a tape in feet and inches, to a quarter of an inch: `6 ft 2 3/4 in`, `9 1/2 in`. */
export function sayFeet(metres: number): string {
  const quarters = Math.round((Math.abs(metres) / INCH) * 4);
  const sign = metres < 0 && quarters > 0 ? "-" : "";
  const feet = Math.floor(quarters / 48);
  const inches = Math.floor((quarters % 48) / 4);
  const part = parts[quarters % 4] as string;
  if (feet === 0) return `${sign}${inches === 0 && part !== "" ? part.trim() : `${inches}${part}`} in`;
  return `${sign}${fixed(feet, 0)} ft ${inches}${part} in`;
}
