import { discTowards } from "../../scene/held-meter.js";
import { lightPlace } from "../../scene/lit/seen.js";
import type { Scene, SceneSubject } from "../../scene/types.js";
import { firstFace, type Lit, stationOf } from "../plan.js";
import { whyNoLight } from "./no-light.js";
import { errorOf, readingAt, stopsOver } from "./reading.js";

/** A contrast in stops, or why there is none. */
export interface Contrast {
  readonly stops: number | null;
  readonly reason: string | null;
  /** How far it may be off, stops. */
  readonly error: number;
}

const none = (reason: string): Contrast => ({ stops: null, reason, error: 0 });

/** The subject that `face` or `ana.face` belongs to; the first for a bare face. */
export function subjectOfFace(scene: Scene, face: string): SceneSubject | null {
  const name = face.endsWith(".face") ? face.slice(0, -".face".length) : face;
  return (
    scene.subjects.find((row) => row.name === name) ?? (face === "face" ? (scene.subjects[0] ?? null) : null)
  );
}

/** The lit cheek against the shaded cheek, by flat receptors. Null where one of them gets no light at all. */
export function litToShadowStops(lit: Lit, face: string): Contrast {
  const { scene } = lit;
  const subject = subjectOfFace(scene, face);
  if (subject === null) return none(`there is no subject with ${face}`);
  const litCheek = stationOf(scene, subject, "lit_cheek");
  const shadedCheek = stationOf(scene, subject, "shaded_cheek");
  if (litCheek === null || shadedCheek === null) return none("without a light there is no lit side");
  const bright = readingAt(lit, litCheek);
  const dark = readingAt(lit, shadedCheek);
  if (!(bright.exposure > 0)) return none(`the lit cheek ${whyNoLight(scene, litCheek.at, litCheek.facing)}`);
  if (!(dark.exposure > 0))
    return none(`the shaded cheek ${whyNoLight(scene, shadedCheek.at, shadedCheek.facing)}`);
  return { stops: stopsOver(bright, dark), reason: null, error: errorOf(bright) + errorOf(dark) };
}

/**
 * What one light gives the first face against what another gives it, each metered alone by a flat receptor that looks
 * at that light.
 */
export function keyToFillStops(lit: Lit, key: string, fill: string): Contrast {
  const { scene } = lit;
  const face = firstFace(scene);
  if (face === null) return none("there is no subject");
  const [a, b] = [key, fill].map((name) => {
    const source = scene.sources.find((row) => row.name === name);
    const meter = source === undefined ? null : discTowards(scene.stations, face, lightPlace(source));
    return meter === null ? null : readingAt(lit, meter, [name]);
  });
  if (!a || !b) return none("there is no such light");
  const stops = stopsOver(a, b);
  if (stops === null) return none("one of the two gives the face nothing");
  return { stops, reason: null, error: errorOf(a) + errorOf(b) };
}
