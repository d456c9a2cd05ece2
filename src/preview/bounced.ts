import type { Scene } from "../scene/types.js";
import type { SceneLight } from "../transport/scene-light.js";
import { meterAt, SEEN, type View } from "./view.js";

/** One place where bounced light was worked out. */
interface Sample {
  readonly column: number;
  readonly row: number;
  readonly pixel: number;
  /** lx s. */
  readonly light: number;
}

/** Samples across the picture's shorter side, and the fewest on a side that is seen. */
const ACROSS = 12;
const FEWEST = 14;
/** How many steps of the grid a sample reaches. */
const REACH = 1.6;

/**
 * Adds the light that surfaces bounce to every pixel, lx s: all bounces, worked out at places spread over the picture,
 * more of them on small things, and filled in between places of the same surface that look alike.
 */
export function addBounced(scene: Scene, light: SceneLight, view: View, exposure: Float64Array): void {
  const { width, height, side } = view;
  const step = Math.max(4, Math.min(width, height) / ACROSS);
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
  for (let pixel = 0; pixel < side.length; pixel++) {
    const samples = bySide.get(side[pixel] as number);
    if (samples !== undefined)
      exposure[pixel] = (exposure[pixel] as number) + blend(view, pixel, samples, step * REACH);
  }
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

/** The samples of the same side, near ones and those that look the same way counting most. */
function blend({ width, data }: View, pixel: number, samples: readonly Sample[], reach: number): number {
  const row = Math.floor(pixel / width);
  const column = pixel - row * width;
  const at = SEEN * pixel;
  let sum = 0;
  let weights = 0;
  for (const sample of samples) {
    const x = (sample.column - column) / reach;
    const y = (sample.row - row) / reach;
    const there = SEEN * sample.pixel;
    const alike =
      (data[at + 3] as number) * (data[there + 3] as number) +
      (data[at + 4] as number) * (data[there + 4] as number) +
      (data[at + 5] as number) * (data[there + 5] as number);
    const turned = Math.max(0, 1 - alike) * 6;
    const weight = 1 / (0.02 + x * x + y * y + turned * turned);
    const strong = weight * weight;
    sum += strong * sample.light;
    weights += strong;
  }
  return weights > 0 ? sum / weights : 0;
}
