import { type Chromaticity, uvFromXy } from "./chromaticity.js";
import { ISOTEMPERATURE_LINES, type IsotemperatureLine } from "./data/robertson-isotemperature.js";

/**
 * Correlated colour temperature by Robertson's isotemperature lines (J. Opt. Soc. Am. 58 (1968) 1528): interpolated in
 * mired between the two lines that the colour lies between, by the ratio of its distances from them.
 *
 * @param colour - Chromaticity.
 * @returns Kelvin, or undefined below 600 mired's 1667 K or past 0 mired, where the table ends.
 */
export function temperatureRobertson(colour: Chromaticity): number | undefined {
  const { u, v } = uvFromXy(colour);
  let before = ISOTEMPERATURE_LINES[0]!;
  let beforeDistance = distance(u, v, before);
  for (let i = 1; i < ISOTEMPERATURE_LINES.length; i += 1) {
    const line = ISOTEMPERATURE_LINES[i]!;
    const lineDistance = distance(u, v, line);
    if (beforeDistance >= 0 && lineDistance < 0) {
      const share = beforeDistance / (beforeDistance - lineDistance);
      const mired = before[0] + share * (line[0] - before[0]);
      return mired > 0 ? 1e6 / mired : undefined;
    }
    before = line;
    beforeDistance = lineDistance;
  }
  return undefined;
}

/** Signed distance of a colour from an isotemperature line: + on its hotter-than-nothing side, where mired is greater. */
function distance(u: number, v: number, line: IsotemperatureLine): number {
  const [, lineU, lineV, slope] = line;
  return (v - lineV - slope * (u - lineU)) / Math.sqrt(1 + slope * slope);
}
