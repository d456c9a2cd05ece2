import { emptyVector } from "../physics/light-vector.js";
import type { Scene } from "../scene/types.js";
import { prepareSource } from "../transport/direct.js";
import { occludersOf } from "../transport/hiding/occluder.js";
import { type ShadedSource, shadedReading, shadedSource } from "../transport/hiding/shaded.js";
import { occludersFor } from "../transport/outside.js";
import { meterAt, type View } from "./view.js";

/** Pixels along the side of a field that is filled in; places two pixels apart are looked at. */
const FIELD = 4;
/** How far the light in the middle of a field may be from what its corners tell, as a share of the most of them. */
const EVEN = 0.01;

/** What one light gives the pixels, found when first asked for. */
type Asked = (column: number, row: number) => number;

/**
 * Adds what comes straight from the lights to every pixel, lx s. A field of one surface whose corners, middles and
 * centre lie on one slope of light is filled in; everywhere else, so in every half-shade two pixels wide or more, each pixel is
 * worked out by itself with what hides the light in part.
 */
export function addDirect(scene: Scene, view: View, exposure: Float64Array): void {
  const occluders = occludersOf(scene);
  for (const source of scene.sources) {
    if (!(source.energy > 0)) continue;
    const prepared = prepareSource(source);
    const bare = shadedSource(prepared, []);
    const shaded = shadedSource(prepared, occludersFor(occluders, scene.room, bare));
    addLight(askedOf(shaded, view), source.energy, view, exposure);
  }
}

function askedOf(source: ShadedSource, view: View): Asked {
  const known = new Float64Array(view.width * view.height).fill(-1);
  const scratch = emptyVector();
  return (column, row) => {
    const pixel = row * view.width + column;
    const before = known[pixel] as number;
    if (before >= 0) return before;
    const { at, facing } = meterAt(view, pixel);
    const found = view.side[pixel] === -1 ? 0 : shadedReading(source, at, facing, "disc", scratch);
    known[pixel] = found;
    return found;
  };
}

function addLight(ask: Asked, energy: number, view: View, exposure: Float64Array): void {
  const { width, height } = view;
  const put = (column: number, row: number, light: number): void => {
    const pixel = row * width + column;
    exposure[pixel] = (exposure[pixel] as number) + energy * light;
  };
  const field = (left: number, top: number): void => {
    if (fill(ask, view, left, top, put)) return;
    for (let row = top; row < Math.min(top + FIELD, height); row++)
      for (let column = left; column < Math.min(left + FIELD, width); column++)
        put(column, row, ask(column, row));
  };
  for (let top = 0; top < height; top += FIELD)
    for (let left = 0; left < width; left += FIELD) field(left, top);
}

/** Fills a field between its corners where it is one surface on one slope of light; false where it is not. */
function fill(
  ask: Asked,
  view: View,
  left: number,
  top: number,
  put: (column: number, row: number, light: number) => void,
): boolean {
  const size = FIELD;
  const right = left + size;
  const bottom = top + size;
  if (right >= view.width || bottom >= view.height || !oneSide(view, left, top, right, bottom)) return false;
  const a = ask(left, top);
  const b = ask(right, top);
  const c = ask(left, bottom);
  const d = ask(right, bottom);
  const limit = EVEN * Math.max(a, b, c, d);
  const half = size / 2;
  const near = (x: number, y: number, expected: number): boolean =>
    Math.abs(ask(left + x, top + y) - expected) <= limit;
  const even =
    near(half, half, (a + b + c + d) / 4) &&
    near(half, 0, (a + b) / 2) &&
    near(0, half, (a + c) / 2) &&
    near(size, half, (b + d) / 2) &&
    near(half, size, (c + d) / 2);
  if (!even) return false;
  for (let row = 0; row < size; row++) {
    const t = row / size;
    for (let column = 0; column < size; column++) {
      const s = column / size;
      put(left + column, top + row, (a * (1 - s) + b * s) * (1 - t) + (c * (1 - s) + d * s) * t);
    }
  }
  return true;
}

/** Whether all pixels of a field and its far edges see the same side. */
function oneSide({ side, width }: View, left: number, top: number, right: number, bottom: number): boolean {
  const first = side[top * width + left];
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++) if (side[row * width + column] !== first) return false;
  return true;
}
