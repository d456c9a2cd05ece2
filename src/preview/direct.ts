import { type ApartWork, apart, apartWork, type Convex } from "../math/convex.js";
import { emptyVector, type LightVector } from "../physics/light-vector.js";
import type { Scene, SceneRoom } from "../scene/types.js";
import { insideRoom } from "../transport/bounce/first-hit.js";
import { roomBox } from "../transport/bounce/world.js";
import { prepareSource } from "../transport/direct.js";
import { hullOf, leastWidth, sourceHull } from "../transport/hiding/hulls.js";
import { type Occluder, occludersOf } from "../transport/hiding/occluder.js";
import { type ShadedSource, seenShare, shadedReading, shadedSource } from "../transport/hiding/shaded.js";
import { occludersFor } from "../transport/outside.js";
import { type Field, fieldsOf, type Patch, quartersOf } from "./fields.js";
import { meterAt, SEEN, type View } from "./view.js";

/** Pixels along the side of the smallest field that is filled in; places two pixels apart are looked at. */
const SMALL = 4;
/** The same of the largest. */
const LARGE = 16;
/**
 * How far the light between the corners of a field may be from what they tell, as a share of the most of them and of what
 * other lights give there. The field
 * is filled by the curve through all places that are looked at, which is off by much less, and by a quarter of this where
 * the slope of the light breaks.
 */
const EVEN = 0.04;
/** The same for a larger one over which half-shades lie: there is more room between the places that are looked at. */
const EVEN_LARGE = 0.01;

/** Where the least light in the corners of a field is less than this share of the most, an edge may lie in it. */
const STEEP = 0.5;
/** How far the light of two more places of such a small field may be from the curve, as a share of the most. */
const EVEN_STEEP = 0.01;

/** Before a light that is as wide as this, radians, nearly everything may stand, and is not asked for it first. */
const VAST = 0.5;

/** Something that can stand before the lights. */
interface Hindrance {
  readonly occluder: Occluder;
  readonly hull: Convex;
}

/** A light as the pixels ask it. */
interface Lamp {
  /** Past the occluders of the list below. */
  readonly shaded: ShadedSource;
  /** What is looked at as standing before it; written over for each question. */
  readonly before: Occluder[];
  readonly hull: Convex;
  readonly energy: number;
  /** What it gives each pixel, lx s per lm s; -1 where that was not asked yet. */
  readonly known: Float64Array;
  /** Buffers, written over by every question. */
  readonly work: ApartWork;
  readonly scratch: LightVector;
  readonly place: Convex;
}

/**
 * Adds what comes straight from the lights to every pixel, lx s. A field of one surface whose corners, middles and
 * centre lie on one slope of light is filled in: a large one where nothing can hide the light or every half-shade is wider
 * than the field, a small one elsewhere. A flat field of whose corners none sees any of the light for one and the same
 * thing is dark: that from which a convex thing hides all of a convex light is itself convex. All other pixels are
 * worked out one by one with what hides the light in part.
 */
export function addDirect(scene: Scene, view: View, exposure: Float64Array): void {
  const occluders = occludersOf(scene);
  const fields = fieldsOf(view, scene.polygons.length, LARGE);
  const outside = seenOutside(scene.room, view);
  for (const source of scene.sources) {
    if (!(source.energy > 0)) continue;
    const prepared = prepareSource(source);
    const possible = occludersFor(occluders, scene.room, shadedSource(prepared, []));
    const indoors = hindrances(possible);
    // What is seen through an opening lies outside, and the walls stand before it.
    const outdoors = outside === null || possible === occluders ? indoors : hindrances(occluders);
    const before: Occluder[] = [];
    const shaded = shadedSource(prepared, before);
    const known = new Float64Array(view.width * view.height).fill(-1);
    const lamp: Lamp = {
      shaded,
      before,
      hull: sourceHull(prepared.shape),
      energy: source.energy,
      known,
      work: apartWork(),
      scratch: emptyVector(),
      place: placeOf(new Float64Array(3)),
    };
    for (const field of fields) {
      const around = outside !== null && reachesOut(view, outside, field) ? outdoors : indoors;
      addField(lamp, view, scene.polygons.length, field, around, exposure);
    }
  }
}

const hindrances = (occluders: readonly Occluder[]): readonly Hindrance[] =>
  occluders.map((occluder) => ({ occluder, hull: hullOf(occluder) }));

/** 1 for each pixel that sees what lies outside the room; null where none does, and without a room. */
function seenOutside(room: SceneRoom | null, view: View): Uint8Array | null {
  if (room === null) return null;
  const box = roomBox(room);
  const outside = new Uint8Array(view.side.length);
  let some = false;
  for (let pixel = 0; pixel < outside.length; pixel++) {
    const at = SEEN * pixel;
    const [x, y, z] = [view.data[at] as number, view.data[at + 1] as number, view.data[at + 2] as number];
    if (view.side[pixel] === -1 || insideRoom(box, x, y, z)) continue;
    outside[pixel] = 1;
    some = true;
  }
  return some ? outside : null;
}

/** Whether a pixel of a field, or of its far edges, sees what lies outside. */
function reachesOut({ width, height }: View, outside: Uint8Array, { left, top, size }: Field): boolean {
  for (let row = top; row <= Math.min(top + size, height - 1); row++)
    for (let column = left; column <= Math.min(left + size, width - 1); column++)
      if (outside[row * width + column] === 1) return true;
  return false;
}

/** A place as a body without size. */
const placeOf = (at: Float64Array): Convex => ({ points: at, axes: new Float64Array(9), middle: at });

/** Adds a light to the pixels of a field, before which nothing but the hindrances can stand. */
function addField(
  lamp: Lamp,
  view: View,
  flats: number,
  field: Field,
  around: readonly Hindrance[],
  exposure: Float64Array,
): void {
  const { patch, size } = field;
  let near = around;
  if (patch !== null) {
    near = nearOf(lamp, patch.hull, patch.thing, around);
    if (near.length > 0 && isDark(lamp, view, patch, near)) return;
    const smooth = patch.whole && (size === SMALL || areWide(lamp, patch, near));
    if (smooth && fill(lamp, view, field, near, exposure)) return;
  }
  if (size > SMALL) {
    for (const quarter of quartersOf(view, flats, field))
      addField(lamp, view, flats, quarter, near, exposure);
    return;
  }
  const right = Math.min(field.left + size, view.width);
  const bottom = Math.min(field.top + size, view.height);
  for (let row = field.top; row < bottom; row++)
    for (let column = field.left; column < right; column++)
      put(
        exposure,
        row * view.width + column,
        lamp.energy * ask(lamp, view, row * view.width + column, near),
      );
}

const put = (exposure: Float64Array, pixel: number, light: number): void => {
  exposure[pixel] = (exposure[pixel] as number) + light;
};

/** What may stand between a light and some place of a hull. The thing that is seen hides nothing above its own horizon. */
function nearOf(lamp: Lamp, seen: Convex, thing: number, around: readonly Hindrance[]): readonly Hindrance[] {
  const near: Hindrance[] = [];
  for (const one of around)
    if (one.occluder.index !== thing && apart(seen, lamp.hull, one.hull, 0, lamp.work) === 0) near.push(one);
  return near;
}

/** Whether the half-shades that hindrances throw on a patch are at least as wide as the patch. */
function areWide({ shaded, work }: Lamp, { hull, wide }: Patch, near: readonly Hindrance[]): boolean {
  if (near.length === 0) return true;
  const { middle } = hull;
  const [x, y, z] = [middle[0], middle[1], middle[2]] as [number, number, number];
  const width = leastWidth(shaded.prepared.shape, x, y, z);
  if (!(width > 0)) return false;
  const wanted = wide / width;
  return near.every((one) => apart(hull, null, one.hull, wanted, work) > wanted);
}

/** Whether one hindrance alone hides all of the light from every place of a patch. */
function isDark(lamp: Lamp, view: View, patch: Patch, near: readonly Hindrance[]): boolean {
  if (!patch.flat) return false;
  for (const pixel of patch.corners) if (ask(lamp, view, pixel, near) > 0) return false;
  return near.some((one) => {
    // Of what the plane of the light goes through the part before it hides, and that part changes with the place.
    if (apart(lamp.hull, null, one.hull, 0, lamp.work) === 0) return false;
    lamp.before.length = 0;
    lamp.before.push(one.occluder);
    return patch.corners.every((pixel) => {
      const { at, facing } = meterAt(view, pixel);
      return seenShare(lamp.shaded, at, facing, false) === 0;
    });
  });
}

/** What a light gives a pixel, lx s per lm s. */
function ask(lamp: Lamp, view: View, pixel: number, around: readonly Hindrance[]): number {
  const known = lamp.known[pixel] as number;
  if (known >= 0) return known;
  const side = view.side[pixel] as number;
  let found = 0;
  if (side >= 0) {
    const { at, facing } = meterAt(view, pixel);
    lamp.before.length = 0;
    if (around.length > 0 && leastWidth(lamp.shaded.prepared.shape, at[0], at[1], at[2]) > VAST)
      for (const { occluder } of around) lamp.before.push(occluder);
    else if (around.length > 0) {
      const { points } = lamp.place;
      points[0] = at[0];
      points[1] = at[1];
      points[2] = at[2];
      for (const { occluder } of nearOf(lamp, lamp.place, side >> 1, around)) lamp.before.push(occluder);
    }
    found = shadedReading(lamp.shaded, at, facing, "disc", lamp.scratch);
  }
  lamp.known[pixel] = found;
  return found;
}

/** Fills a field by what its corners, the middles of its edges and its centre get, where that lies nearly on one slope. */
function fill(
  lamp: Lamp,
  view: View,
  { left, top, size }: Field,
  near: readonly Hindrance[],
  exposure: Float64Array,
): boolean {
  const { width } = view;
  const half = size / 2;
  const first = top * width + left;
  const second = first + half * width;
  const third = second + half * width;
  const a = ask(lamp, view, first, near);
  const b = ask(lamp, view, first + size, near);
  const c = ask(lamp, view, third, near);
  const d = ask(lamp, view, third + size, near);
  const most = Math.max(a, b, c, d);
  // Where a light sets behind a body's horizon its slope breaks.
  const steep = Math.min(a, b, c, d) < STEEP * most;
  // What is off is held against all the light that there is so far.
  const before = Math.min(
    exposure[first] as number,
    exposure[first + size] as number,
    exposure[third] as number,
    exposure[third + size] as number,
  );
  const whole = most + before / lamp.energy;
  const limit = (size > SMALL && near.length > 0 ? EVEN_LARGE : EVEN) * whole;
  if (size > SMALL && steep && most > limit) return false;
  // By how much the light between the corners is more than on a slope.
  const middle = ask(lamp, view, second + half, near) - (a + b + c + d) / 4;
  if (Math.abs(middle) > limit) return false;
  const upper = ask(lamp, view, first + half, near) - (a + b) / 2;
  const west = ask(lamp, view, second, near) - (a + c) / 2;
  const east = ask(lamp, view, second + size, near) - (b + d) / 2;
  const lower = ask(lamp, view, third + half, near) - (c + d) / 2;
  if (Math.max(Math.abs(upper), Math.abs(west), Math.abs(east), Math.abs(lower)) > limit) return false;
  const twist = middle - (upper + lower + west + east) / 2;
  const curve = (s: number, t: number): number => {
    const u = 4 * s * (1 - s);
    const v = 4 * t * (1 - t);
    const slope = (a * (1 - s) + b * s) * (1 - t) + (c * (1 - s) + d * s) * t;
    const edges = u * (upper * (1 - t) + lower * t) + v * (west * (1 - s) + east * s);
    return Math.max(0, slope + edges + u * v * twist);
  };
  if (steep) {
    const [one, three] = [first + width + 1, first + 3 * width + 3];
    if (Math.abs(ask(lamp, view, one, near) - curve(0.25, 0.25)) > EVEN_STEEP * whole) return false;
    if (Math.abs(ask(lamp, view, three, near) - curve(0.75, 0.75)) > EVEN_STEEP * whole) return false;
  }
  for (let row = 0; row < size; row++)
    for (let column = 0; column < size; column++)
      put(exposure, first + row * width + column, lamp.energy * curve(column / size, row / size));
  return true;
}
