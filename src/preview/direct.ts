import type { Vec3 } from "../core/vector.js";
import { emptyVector } from "../physics/light-vector.js";
import type { Scene } from "../scene/types.js";
import { prepareSource } from "../transport/direct.js";
import { occludersOf } from "../transport/hiding/occluder.js";
import { isClearNear, type ShadedSource, shadedReading, shadedSource } from "../transport/hiding/shaded.js";
import { occludersFor } from "../transport/outside.js";
import { meterAt, SEEN, type View } from "./view.js";

/** Pixels along the side of a field that is filled in; places two pixels apart are looked at. */
const FIELD = 4;
/** The same where nothing can hide the light: light that is not hidden has no edges. It is halved down to the former. */
const CLEAR_FIELD = 16;
/** How far the light in the middle of a field may be from what its corners tell, as a share of the most of them. */
const EVEN = 0.01;
/** The same for a large field, in which there is more room between the places that are looked at. */
const EVEN_LARGE = 0.002;

/** A large field is filled only where the least light in its corners is this share of the most. */
const SETTING = 0.5;

/** What one light gives the pixels, found when first asked for. */
type Asked = (column: number, row: number) => number;

/** A field of pixels and their far edges that see one side. */
interface Patch {
  readonly at: Vec3;
  /** No place of it is farther from `at`, m. */
  readonly room: number;
  /** Index of the thing that is seen. */
  readonly thing: number;
}

/**
 * Adds what comes straight from the lights to every pixel, lx s. A field of one surface whose corners, middles and
 * centre lie on one slope of light is filled in: a large one where nothing can hide the light, a small one elsewhere. All
 * other pixels, so those of every half-shade two pixels wide or more, are worked out one by one with what hides the light in
 * part.
 */
export function addDirect(scene: Scene, view: View, exposure: Float64Array): void {
  const occluders = occludersOf(scene);
  const patches = patchesOf(view);
  for (const source of scene.sources) {
    if (!(source.energy > 0)) continue;
    const prepared = prepareSource(source);
    const bare = shadedSource(prepared, []);
    const shaded = shadedSource(prepared, occludersFor(occluders, scene.room, bare));
    addLight(askedOf(shaded, view), shaded, source.energy, view, patches, exposure);
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

/** The large fields of a picture from its top left, row by row; null for those that see several things or none. */
function patchesOf(view: View): readonly (Patch | null)[] {
  const patches: (Patch | null)[] = [];
  for (let top = 0; top < view.height; top += CLEAR_FIELD)
    for (let left = 0; left < view.width; left += CLEAR_FIELD) patches.push(patchAt(view, left, top));
  return patches;
}

function patchAt(view: View, left: number, top: number): Patch | null {
  const right = left + CLEAR_FIELD;
  const bottom = top + CLEAR_FIELD;
  const side = view.side[top * view.width + left] as number;
  if (side < 0 || right >= view.width || bottom >= view.height) return null;
  if (!oneSide(view, left, top, right, bottom)) return null;
  const { at } = meterAt(view, (top + CLEAR_FIELD / 2) * view.width + left + CLEAR_FIELD / 2);
  let most = 0;
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++) {
      const place = SEEN * (row * view.width + column);
      const x = (view.data[place] as number) - at[0];
      const y = (view.data[place + 1] as number) - at[1];
      const z = (view.data[place + 2] as number) - at[2];
      most = Math.max(most, x * x + y * y + z * z);
    }
  return { at, room: Math.sqrt(most), thing: side >> 1 };
}

function addLight(
  ask: Asked,
  source: ShadedSource,
  energy: number,
  view: View,
  patches: readonly (Patch | null)[],
  exposure: Float64Array,
): void {
  const { width, height } = view;
  const put = (column: number, row: number, light: number): void => {
    const pixel = row * width + column;
    exposure[pixel] = (exposure[pixel] as number) + energy * light;
  };
  const field = (left: number, top: number, size: number, filled: number): void => {
    if (size <= filled && fill(ask, view, left, top, size, put)) return;
    if (size > FIELD) {
      const half = size / 2;
      for (const y of [top, top + half])
        for (const x of [left, left + half]) if (x < width && y < height) field(x, y, half, filled);
      return;
    }
    for (let row = top; row < Math.min(top + FIELD, height); row++)
      for (let column = left; column < Math.min(left + FIELD, width); column++)
        put(column, row, ask(column, row));
  };
  let number = 0;
  for (let top = 0; top < height; top += CLEAR_FIELD)
    for (let left = 0; left < width; left += CLEAR_FIELD) {
      const patch = patches[number++] ?? null;
      const isClear = patch !== null && isClearNear(source, patch.at, patch.room, patch.thing);
      field(left, top, CLEAR_FIELD, isClear ? CLEAR_FIELD : FIELD);
    }
}

/** Fills a field between its corners where it is one surface on one slope of light; false where it is not. */
function fill(
  ask: Asked,
  view: View,
  left: number,
  top: number,
  size: number,
  put: (column: number, row: number, light: number) => void,
): boolean {
  const right = left + size;
  const bottom = top + size;
  if (right >= view.width || bottom >= view.height || !oneSide(view, left, top, right, bottom)) return false;
  const a = ask(left, top);
  const b = ask(right, top);
  const c = ask(left, bottom);
  const d = ask(right, bottom);
  const most = Math.max(a, b, c, d);
  // Where a light sets behind a body's horizon its slope breaks.
  if (size > FIELD && Math.min(a, b, c, d) < SETTING * most) return false;
  const limit = (size > FIELD ? EVEN_LARGE : EVEN) * most;
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
