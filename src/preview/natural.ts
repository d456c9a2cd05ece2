import type { Vec3 } from "../core/vector.js";
import { degrees } from "../math/rotation.js";
import { flashFNumber } from "../physics/exposure.js";
import { overcastLuminance } from "../physics/overcast-sky.js";
import { sunAngularDiameter } from "../physics/sun-size.js";
import { wayTo } from "../report/frame/look.js";
import { lensOf } from "../report/frame/project.js";
import { bearingOf, directionTo } from "../report/geometry/directions.js";
import { sunLightOf } from "../report/intent/sun-light.js";
import { sunPlace } from "../report/intent/sun-place.js";
import { keyReading } from "../report/light/key-reading.js";
import type { Plan } from "../report/plan.js";
import { keyLight } from "../report/rules/key-light.js";
import { sideWords } from "../report/say/over-under.js";
import { sayAngle, sayFNumber, sayLength } from "../report/say/quantity.js";
import { lightPlace } from "../scene/lit/seen.js";
import type { Scene } from "../scene/types.js";
import { sceneLight } from "../transport/scene-light.js";
import { showLamps } from "./lamps.js";
import { type Look, noLens, recorded, rightExposure } from "./look.js";
import { evenSky, overcastSky, sunSource, windowSource } from "./natural-lights.js";
import { inItsRoom, inTheOpen } from "./natural-scene.js";
import { type View, viewOf } from "./view.js";

/** Natural lights that a set-up may be looked at in: one of these, or the one that its `pass_for` names. */
export const naturalNames = ["intent", "sun", "overcast", "window"] as const;

/** The name of a natural light. */
export type NaturalName = (typeof naturalNames)[number];

/** A set-up in natural light. */
export interface NaturalLook {
  readonly look: Look;
  /** A word or two to stand under the picture. */
  readonly label: string;
  /** What light it is, what was done for it, and what it is exposed for. */
  readonly words: string;
}

/** What lies behind everything in the open. */
interface Sky {
  /** For the sine of an elevation, cd s/m2. */
  readonly luminance: (sine: number) => number;
  /** What sun and sky give level ground, lx s. */
  readonly level: number;
}

/** A set-up with its lamps exchanged for natural light. */
interface Exchanged {
  readonly scene: Scene;
  readonly label: string;
  readonly light: string;
  /** The sky, where there is one. */
  readonly sky: Sky | null;
  /** Whether the light has the strength of the real one. */
  readonly absolute: boolean;
}

/** How bright an overcast day is has no say here: its picture is exposed for the face. lx. */
const ANY_LEVEL = 10_000;
/** The same for a window, lm/m2. */
const ANY_WINDOW = 3000;
const AWAY = "ceiling and walls are away, but for those that the picture shows";

/**
 * Works out the picture with all lamps exchanged for a natural light that comes from where the key is seen from the first
 * face, exposed so that the face reads what it reads in the light of the lamps. A text says why there is none.
 *
 * @param width - Pixels across, as for `lookOf`.
 */
export function naturalLookOf(plan: Plan, name: NaturalName, width: number): NaturalLook | string {
  const view = viewOf(plan.scene, width);
  if (view === null) return noLens;
  const exchanged = exchange(plan, name, view);
  if (typeof exchanged === "string") return exchanged;
  const { scene, label, light, sky, absolute } = exchanged;
  const lamps = keyReading(plan);
  const natural = keyReading({ scene, light: sceneLight(scene) });
  const right = rightExposure(plan);
  if (lamps === null || natural === null || right === null)
    return "The face gets no light of the lamps, or none of the natural light, so there is nothing to expose for.";
  const factor = natural.exposure / lamps.exposure;
  const seen = viewOf(scene, width);
  if (seen === null) return noLens;
  const luminance = recorded(scene, seen, right * factor);
  if (sky !== null) showSky(scene, seen, sky, right * factor, luminance);
  const lit = scene.sources.filter((source) => source.name === "sun" || source.name === "window");
  showLamps(scene, lit, seen, right * factor, luminance);
  const { camera } = scene;
  const reads =
    absolute && camera !== null && camera.iso !== null && camera.shutter !== null
      ? ` In the sun itself it would read ${sayFNumber(flashFNumber(natural.exposure, camera.iso, natural.constant))} at the shutter and ISO that are set.`
      : "";
  return {
    look: { width: seen.width, height: seen.height, luminance, view: seen },
    label,
    words: `${light} Exposed so that the face reads as it does in the light of the lamps.${reads}`,
  };
}

function exchange(plan: Plan, asked: NaturalName, view: View): Exchanged | string {
  const { scene, recipe } = plan;
  const key = keyLight(plan);
  const towards = key === null ? null : directionTo(key.face, lightPlace(key.source));
  if (key === null || towards === null)
    return "A picture beside it needs a subject and a key that is on: natural light comes from where the key stands.";
  const wish = recipe.intent?.pass_for;
  if (asked === "intent" && wish === undefined)
    return "The recipe does not say what it should pass for. Write `pass_for` in `intent`, or ask for sun or overcast.";
  const seconds = scene.camera?.shutter ?? 1;
  const sun = wish === undefined ? null : sunPlace(wish);
  const kind = asked !== "intent" ? asked : sun !== null ? "sun" : wish?.kind;
  if (kind === "overcast") {
    const level = ANY_LEVEL * seconds;
    const zenith = (level * 9) / (7 * Math.PI);
    return {
      scene: inTheOpen(scene, view, overcastSky(level), key.face, null),
      label: "overcast sky",
      light: `The same under an overcast sky (CIE), in the open: ${AWAY}.`,
      sky: { level, luminance: (sine) => zenith * overcastLuminance(Math.asin(Math.min(1, sine))) },
      absolute: false,
    };
  }
  if (kind === "window") {
    if (wish?.kind !== "window")
      return "How large the window is and how far it stands has to be in the recipe: `pass_for: window(size: 1.2 x 1.8 m, distance: 2.2 m)` in `intent`.";
    const size = { width: wish.size.width.value, height: wish.size.height.value, away: wish.distance.value };
    const light = windowSource(key.face, towards, size, ANY_WINDOW * seconds);
    return {
      scene: inItsRoom(scene, light, key.face, towards),
      label: "window",
      light: `The same by a window of ${sayLength(size.width)} by ${sayLength(size.height)}, ${sayLength(size.away)} from the face, ${place(key.face, towards, key.elevation)}.`,
      sky: null,
      absolute: false,
    };
  }
  if (!(key.elevation > 0))
    return "The key does not stand above the horizon of the face, so no sun can be there.";
  const altitude = Math.asin(towards[2]);
  const width = sun === null ? (sunAngularDiameter(1) ?? 0) : (sun.size * Math.PI) / 180;
  const light = sunLightOf({ elevation: degrees(altitude), day: sun?.day ?? null });
  const level = (light?.sky ?? 0) * seconds;
  const square = (light?.square ?? 0) * seconds;
  const other =
    sun !== null && Math.abs(sun.elevation - key.elevation) >= 1
      ? ` (the wish is ${sayAngle(sun.elevation)})`
      : "";
  return {
    scene: inTheOpen(
      scene,
      view,
      [sunSource(key.face, towards, width, square), ...evenSky(level)],
      key.face,
      towards,
    ),
    label: "clear sun",
    light: `The same in a clear sun of ${sayAngle((width * 180) / Math.PI)}, ${place(key.face, towards, key.elevation)}${other}, with its sky, in the open: ${AWAY}.`,
    sky: { level: level + square * towards[2], luminance: () => level / Math.PI },
    absolute: true,
  };
}

/** Where a light is seen from the face. */
function place(face: Vec3, [x, y, z]: Vec3, elevation: number): string {
  const side = bearingOf(face, [face[0] + x, face[1] + y, face[2] + z]);
  const where = side === null ? "straight overhead" : sideWords(side);
  return `where the key is: ${where}, ${sayAngle(elevation)} up`;
}

/** The sky behind everything; below the horizon ground goes on, as bright as it is here. */
function showSky(scene: Scene, view: View, sky: Sky, right: number, luminance: Float64Array): void {
  const ground = scene.polygons.find(({ kind }) => kind === "floor")?.frontReflectance ?? 0;
  const lens = scene.camera === null ? null : lensOf(scene.camera);
  if (lens === null) return;
  const { width, height } = view;
  for (let pixel = 0; pixel < width * height; pixel++) {
    if (view.side[pixel] !== -1) continue;
    const row = Math.floor(pixel / width);
    const column = pixel - row * width;
    const way = wayTo(lens, [(2 * column + 1) / width - 1, 1 - (2 * row + 1) / height]);
    const light = way[2] < 0 ? ground * sky.level : Math.PI * sky.luminance(way[2]);
    luminance[pixel] = light / right;
  }
}
