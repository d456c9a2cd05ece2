import { beamToward } from "../physics/beam.js";
import { discReading } from "../physics/illuminance.js";
import { emptyVector } from "../physics/light-vector.js";
import { luminancePerEnergy } from "../physics/luminous-energy.js";
import { axisTo } from "./lamp/axis.js";
import { sourceBeam, sourceShape } from "./lamp/optics.js";
import { seenLight } from "./lit/seen.js";
import { assume, type Site } from "./site.js";
import type { SceneSubject, Source } from "./types.js";

/** Whether a light is on and one of the recipe's: the bare head behind a cloth is none of its own. */
const counts = ({ below, spillOf }: Source): boolean => below !== null && spillOf === undefined;

/** Whether a light is the key by what the recipe calls it: by its role, or without a role by its name. */
const isCalledKey = ({ name, role }: Source): boolean => role === "key" || (role === null && name === "key");

/** How far a light is from being meant as the key: one without a role, one that may light the face, one from behind. */
function remoteness({ role }: Source): 0 | 1 | 2 {
  if (role === null) return 0;
  return role === "fill" || role === "practical" ? 1 : 2;
}

/**
 * The key: the first light with the role that is on, else the one that is called `key` and has no other role, else,
 * where there is a subject, the light that gives its face most on a flat receptor turned to that light (area formula; a
 * beam is taken at the centre of the opening). Lights with another role are passed over while one without a role lights the
 * face, and rim, hair and background lights while a fill or a practical does. Of a head that shines into a surface the
 * lit patch counts, of one behind a cloth the cloth.
 */
export function keyOf(sources: readonly Source[], subject: SceneSubject | undefined): number | null {
  for (const isKey of [({ role }: Source) => role === "key", isCalledKey]) {
    const called = sources.findIndex((source) => counts(source) && isKey(source));
    if (called >= 0) return called;
  }
  if (subject === undefined) return null;
  const rows = sources.flatMap((source, index) => {
    const exposure = counts(source) ? exposureAt(seenLight(source), subject) : 0;
    return exposure > 0 ? [{ index, exposure, remote: remoteness(source) }] : [];
  });
  rows.sort((a, b) => a.remote - b.remote || b.exposure - a.exposure || a.index - b.index);
  return rows[0]?.index ?? null;
}

/** Puts a key that nothing names among what was assumed. */
export function sayChosenKey(site: Site, sources: readonly Source[], key: number): void {
  const chosen = sources[key];
  if (chosen === undefined || isCalledKey(chosen)) return;
  const lit = sources.filter(counts);
  const among = lit.some((source) => remoteness(source) > remoteness(chosen))
    ? chosen.role === null
      ? " of those without a role"
      : " of those that are not behind it"
    : "";
  const reason =
    lit.length === 1
      ? `${chosen.name}, the only light`
      : `${chosen.name}, because it gives the face most${among} and no light has the role key`;
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
  const share = flat ? beamToward(beam, off, -to[0], -to[1], -to[2]) : 1;
  const reading = discReading(shape, face[0], face[1], face[2], to[0], to[1], to[2], emptyVector());
  return source.energy * (luminancePerEnergy(shape, beam) ?? 0) * share * reading;
}
