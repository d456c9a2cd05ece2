import { oneSide } from "./fields.js";
import { SEEN, type View } from "./view.js";

/** One place where bounced light was worked out. */
export interface Sample {
  readonly column: number;
  readonly row: number;
  readonly pixel: number;
  /** lx s. */
  readonly light: number;
}

/** How many steps of the grid a sample reaches. */
const REACH = 1.6;
/** How much turning away counts as distance: that times one less the cosine, in reaches. */
const TURNED = 6;
/** How close to a sample its light alone counts, as a share of its reach, squared. */
const OWN = 0.02;
/** How little samples must be spread for a slope to be drawn from them, in squares of their reach or of a normal's part. */
const RIDGE = 0.06;
/** Pixels along the side of a square between whose corners the light is taken to lie on one slope. */
const SQUARE = 4;
/** How far a slope may lead beyond the least and the most of the samples of a side, as factors. */
const BELOW = 0.7;
const ABOVE = 1.3;

/** Adds to every pixel what the samples of its side tell of it. */
export function evenOut(
  view: View,
  flats: number,
  bySide: ReadonlyMap<number, readonly Sample[]>,
  step: number,
  exposure: Float64Array,
): void {
  const { width, height, side } = view;
  const known = new Float64Array(width * height).fill(-1);
  const ask = (pixel: number): number => {
    const before = known[pixel] as number;
    if (before >= 0) return before;
    const on = side[pixel] as number;
    const samples = bySide.get(on);
    const found = samples === undefined ? 0 : foretell(view, on >> 1 < flats, pixel, samples, step, -1);
    known[pixel] = found;
    return found;
  };
  const put = (pixel: number, light: number): void => {
    exposure[pixel] = (exposure[pixel] as number) + light;
  };
  for (let top = 0; top < height; top += SQUARE)
    for (let left = 0; left < width; left += SQUARE) {
      const first = top * width + left;
      const [right, bottom] = [left + SQUARE, top + SQUARE];
      if (right < width && bottom < height && oneSide(view, left, top, right, bottom)) {
        const [a, b] = [ask(first), ask(first + SQUARE)];
        const [c, d] = [ask(first + SQUARE * width), ask(first + SQUARE * width + SQUARE)];
        for (let row = 0; row < SQUARE; row++)
          for (let column = 0; column < SQUARE; column++) {
            const [s, t] = [column / SQUARE, row / SQUARE];
            put(first + row * width + column, (a * (1 - s) + b * s) * (1 - t) + (c * (1 - s) + d * s) * t);
          }
        continue;
      }
      for (let row = top; row < Math.min(bottom, height); row++)
        for (let column = left; column < Math.min(right, width); column++)
          put(row * width + column, ask(row * width + column));
    }
}

/**
 * What the samples of a side tell of a pixel: the plane through them by least squares, near ones and those that look the
 * same way counting most. On what is flat the plane lies over the picture, on a body over the directions of its surface.
 *
 * @param without - A sample that is left out, by its place in the list; -1 for none.
 */
export function foretell(
  { width, data }: View,
  flat: boolean,
  pixel: number,
  samples: readonly Sample[],
  step: number,
  without: number,
): number {
  const row = Math.floor(pixel / width);
  const column = pixel - row * width;
  const at = SEEN * pixel;
  const [nx, ny, nz] = [data[at + 3], data[at + 4], data[at + 5]] as [number, number, number];
  const reach = step * REACH;
  let whole = 0;
  let light = 0;
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  let [u, v, w] = [0, 0, 0];
  let [uu, uv, uw, vv, vw, ww] = [0, 0, 0, 0, 0, 0];
  let [ul, vl, wl] = [0, 0, 0];
  for (let i = 0; i < samples.length; i++) {
    if (i === without) continue;
    const sample = samples[i] as Sample;
    const x = (sample.column - column) / reach;
    const y = (sample.row - row) / reach;
    const there = SEEN * sample.pixel;
    const dx = (data[there + 3] as number) - nx;
    const dy = (data[there + 4] as number) - ny;
    const dz = (data[there + 5] as number) - nz;
    const turned = (TURNED * (dx * dx + dy * dy + dz * dz)) / 2;
    const away = OWN + x * x + y * y + turned * turned;
    const weight = 1 / (away * away);
    const p = flat ? x : dx;
    const q = flat ? y : dy;
    const r = flat ? 0 : dz;
    const l = sample.light;
    whole += weight;
    light += weight * l;
    u += weight * p;
    v += weight * q;
    w += weight * r;
    uu += weight * p * p;
    uv += weight * p * q;
    uw += weight * p * r;
    vv += weight * q * q;
    vw += weight * q * r;
    ww += weight * r * r;
    ul += weight * p * l;
    vl += weight * q * l;
    wl += weight * r * l;
    if (l < least) least = l;
    if (l > most) most = l;
  }
  if (!(whole > 0)) return 0;
  light /= whole;
  u /= whole;
  v /= whole;
  w /= whole;
  // Covariances, with a ridge where the samples hardly differ in a direction.
  uu = uu / whole - u * u + RIDGE;
  vv = vv / whole - v * v + RIDGE;
  ww = ww / whole - w * w + RIDGE;
  uv = uv / whole - u * v;
  uw = uw / whole - u * w;
  vw = vw / whole - v * w;
  ul = ul / whole - u * light;
  vl = vl / whole - v * light;
  wl = wl / whole - w * light;
  const [a, b, c] = [vv * ww - vw * vw, uw * vw - uv * ww, uv * vw - uw * vv];
  const size = uu * a + uv * b + uw * c;
  const [d, e, f] = [uu * ww - uw * uw, uv * uw - uu * vw, uu * vv - uv * uv];
  const slope =
    (u * (a * ul + b * vl + c * wl) + v * (b * ul + d * vl + e * wl) + w * (c * ul + e * vl + f * wl)) / size;
  return Math.min(ABOVE * most, Math.max(BELOW * least, light - slope));
}
