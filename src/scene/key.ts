import { beamShare } from "../physics/beam.js";
import { discReading } from "../physics/illuminance.js";
import { emptyVector } from "../physics/light-vector.js";
import { luminancePerEnergy } from "../physics/luminous-energy.js";
import { axisTo } from "./lamp/axis.js";
import { sourceBeam, sourceShape } from "./lamp/optics.js";
import { seenLight } from "./lit/seen.js";
import { assume, type Site } from "./site.js";
import type { SceneSubject, Source } from "./types.js";

/**
 * The key: the first light with the role that is on, else, where there is a subject, the light that gives its face
 * most on a flat receptor turned to that light (area formula; a beam is taken at the centre of the opening). Of a head
 * that shines into a surface the lit patch counts, of one behind a cloth the cloth.
 */
export function keyOf(sources: readonly Source[], subject: SceneSubject | undefined): number | null {
  for (let i = 0; i < sources.length; i++) {
    const source = sources[i] as Source;
    if (source.role === "key" && source.below !== null) return i;
  }
  if (subject === undefined) return null;
  let best: number | null = null;
  let most = 0;
  for (let i = 0; i < sources.length; i++) {
    const source = sources[i] as Source;
    const counts = source.below !== null && source.spillOf === undefined;
    const exposure = counts ? exposureAt(seenLight(source), subject) : 0;
    if (exposure > most) {
      most = exposure;
      best = i;
    }
  }
  return best;
}

/** Puts a key that no role names among what was assumed; its name decides nothing. */
export function sayChosenKey(site: Site, sources: readonly Source[], key: number): void {
  const chosen = sources[key];
  if (chosen === undefined || chosen.role === "key") return;
  const lit = sources.filter((source) => source.below !== null && source.spillOf === undefined);
  const reason =
    lit.length === 1
      ? `${chosen.name}, the only light`
      : `${chosen.name}, because it gives the face most and no light has the role key`;
  assume(site, "key", reason, lit.length > 1);
}

/** Luminous exposure of a flat receptor at the face that looks at the source, lx s. */
function exposureAt(source: Source, { face }: SceneSubject): number {
  const to = axisTo(face, source.centre);
  if (to === null) return 0;
  const shape = sourceShape(source);
  const beam = sourceBeam(source);
  const off = -(to[0] * source.axis[0] + to[1] * source.axis[1] + to[2] * source.axis[2]);
  const flat = shape.kind === "disc" || shape.kind === "polygon";
  const share = flat ? beamShare(beam, off) : 1;
  const reading = discReading(shape, face[0], face[1], face[2], to[0], to[1], to[2], emptyVector());
  return source.energy * (luminancePerEnergy(shape, beam) ?? 0) * share * reading;
}
