import type { Scene } from "../scene/types.js";
import type { SceneLight } from "../transport/scene-light.js";
import { evenOut, foretell, type Sample } from "./even-out.js";
import { meterAt, type View } from "./view.js";

/** Samples across the picture's shorter side, and the fewest on a side that is seen. */
const ACROSS = 9;
const FEWEST = 8;
/** Rounds in which samples are added beside those that their neighbours do not foretell, and the most that are added. */
const ROUNDS = 4;
const MOST_ADDED = 80;
/** How far the whole light at a sample may be from what its neighbours foretell, in stops. */
const FORETOLD = 0.12;
/** Samples are no nearer to each other than this, px. */
const NEAREST = 4;

/**
 * Adds the light that surfaces bounce to every pixel, lx s: all bounces, worked out at places spread over the picture, more
 * of them on small things and where the light changes, and filled in between places of the same surface.
 *
 * @param exposure - Holds what comes straight from the lights.
 */
export function addBounced(scene: Scene, light: SceneLight, view: View, exposure: Float64Array): void {
  const { width, height, side } = view;
  const step = Math.max(4, Math.min(width, height) / ACROSS);
  const flats = scene.polygons.length;
  const bySide = new Map<number, Sample[]>();
  const sample = (pixel: number): void => {
    const on = side[pixel] as number;
    if (on < 0 || !((view.reflectance[pixel] as number) > 0)) return;
    const list = bySide.get(on) ?? [];
    bySide.set(on, list);
    const row = Math.floor(pixel / width);
    list.push({ column: pixel - row * width, row, pixel, light: lightAt(scene, light, view, pixel) });
  };
  for (let y = step / 2; y < height; y += step)
    for (let x = step / 2; x < width; x += step) sample(Math.floor(y) * width + Math.floor(x));
  for (const [on, pixels] of pixelsBySide(view)) {
    const have = bySide.get(on)?.length ?? 0;
    for (let k = have; k < Math.min(FEWEST, pixels.length); k++)
      sample(pixels[Math.floor(((k + 0.5) * pixels.length) / FEWEST)] as number);
  }
  let left = MOST_ADDED;
  for (let round = 0; round < ROUNDS && left > 0; round++) {
    const wanted = [...bySide.values()].flatMap((samples) =>
      unforetold(view, flats, samples, exposure, step),
    );
    // The worst first; of equals the first in the picture.
    wanted.sort((a, b) => b.off - a.off || a.pixel - b.pixel);
    for (const { pixel } of wanted.slice(0, left)) sample(pixel);
    left -= wanted.length;
    if (wanted.length === 0) break;
  }
  evenOut(view, flats, bySide, step, exposure);
}

/**
 * Places half way from samples that the others do not foretell to their neighbours, with how far off that was, in stops.
 * Samples are held against each other in the whole light, as the picture shows it.
 */
function unforetold(
  view: View,
  flats: number,
  samples: readonly Sample[],
  exposure: Float64Array,
  step: number,
): readonly { readonly pixel: number; readonly off: number }[] {
  const { width, height, side } = view;
  const wanted: { readonly pixel: number; readonly off: number }[] = [];
  samples.forEach(({ pixel, column, row, light }, i) => {
    const direct = exposure[pixel] as number;
    const on = side[pixel] as number;
    const told = foretell(view, on >> 1 < flats, pixel, samples, step, i);
    const off = Math.abs(Math.log2((direct + told) / (direct + light)));
    if (!(off > FORETOLD)) return;
    const gap = nearest(samples, column, row, pixel);
    const half = Math.min(step, gap) / 2;
    if (half < NEAREST) return;
    for (const [x, y] of [
      [column - half, row],
      [column + half, row],
      [column, row - half],
      [column, row + half],
    ] as const) {
      const [u, v] = [Math.round(x), Math.round(y)];
      if (u < 0 || v < 0 || u >= width || v >= height || side[v * width + u] !== on) continue;
      if (nearest(samples, u, v, -1) < NEAREST) continue;
      if (wanted.some((other) => apartOf(width, other.pixel, u, v) < NEAREST)) continue;
      wanted.push({ pixel: v * width + u, off });
    }
  });
  return wanted;
}

/** The way from a place of the picture to the nearest sample but one, px. */
function nearest(samples: readonly Sample[], column: number, row: number, but: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const sample of samples) {
    if (sample.pixel === but) continue;
    const [x, y] = [sample.column - column, sample.row - row];
    least = Math.min(least, Math.sqrt(x * x + y * y));
  }
  return least;
}

function apartOf(width: number, pixel: number, column: number, row: number): number {
  const there = Math.floor(pixel / width);
  const [x, y] = [pixel - there * width - column, there - row];
  return Math.sqrt(x * x + y * y);
}

function lightAt(scene: Scene, light: SceneLight, view: View, pixel: number): number {
  const meter = { ...meterAt(view, pixel), receptor: "disc" } as const;
  let sum = 0;
  for (const source of scene.sources)
    if (source.energy > 0) sum += source.energy * light.reach(source, meter).bounced;
  return sum;
}

function pixelsBySide({ side }: View): ReadonlyMap<number, readonly number[]> {
  const all = new Map<number, number[]>();
  side.forEach((on, pixel) => {
    if (on < 0) return;
    const list = all.get(on) ?? [];
    all.set(on, list);
    list.push(pixel);
  });
  return all;
}
