import { tone } from "../report/light/tone.js";
import type { Look } from "./look.js";

/** How a look is shown. */
export interface GreyOptions {
  /** Lines where the light on the picture passes a whole stop. */
  readonly contours: boolean;
  /** Pixels that 10 cm take at the first subject, for the scale bar; null for none. */
  readonly tenCentimetres: number | null;
}

/** Ten-centimetre fields of the scale bar. */
const FIELDS = 5;

/** The greys of a look, from the top left: plain sRGB, with contour lines and a scale bar of 50 cm where asked for. */
export function greysOf(
  { width, height, luminance }: Look,
  { contours, tenCentimetres }: GreyOptions,
): Uint8Array {
  const greys = Uint8Array.from(luminance, (value) => Math.round(tone(value)));
  if (contours) drawContours(greys, luminance, width, height);
  if (tenCentimetres !== null) drawBar(greys, width, height, tenCentimetres);
  return greys;
}

/** Whole stops below white; what is darker than ten counts as ten. */
const stopOf = (luminance: number): number =>
  luminance > 0 ? Math.max(-10, Math.floor(Math.log2(luminance))) : -10;

function drawContours(greys: Uint8Array, luminance: Float64Array, width: number, height: number): void {
  for (let y = 0; y + 1 < height; y++) {
    for (let x = 0; x + 1 < width; x++) {
      const pixel = y * width + x;
      const here = stopOf(luminance[pixel] as number);
      const differs =
        stopOf(luminance[pixel + 1] as number) !== here ||
        stopOf(luminance[pixel + width] as number) !== here;
      if (differs) greys[pixel] = (greys[pixel] as number) > 127 ? 0 : 255;
    }
  }
}

function drawBar(greys: Uint8Array, width: number, height: number, field: number): void {
  const left = Math.round(width * 0.04);
  const high = Math.max(3, Math.round(height * 0.008));
  const top = height - Math.round(height * 0.03) - high;
  const long = FIELDS * field;
  for (let y = top - 1; y <= top + high; y++) {
    for (let x = left - 1; x <= left + long; x++) {
      if (x < 0 || x >= width || y < 0 || y >= height) continue;
      const rim = y < top || y === top + high || x < left || x >= left + long - 0.5;
      const even = Math.floor((x - left) / field) % 2 === 0;
      greys[y * width + x] = rim ? 0 : even ? 255 : 0;
    }
  }
}
