import type { Vec3 } from "../../core/vector.js";
import { addScaled, distance, scale } from "../../math/vector.js";
import { seenLight } from "../../scene/lit/seen.js";
import type { Scene, Source } from "../../scene/types.js";
import { sceneLight } from "../../transport/scene-light.js";
import { directionTo } from "../geometry/directions.js";
import { sightOf } from "../geometry/sight.js";
import { faceWords, firstFace, type Plan } from "../plan.js";
import { sayOwner } from "../say/surfaces.js";
import { withoutPeople } from "../without-people.js";
import { type Reading, readingAt } from "./reading.js";

/** The line that a meter is carried along. */
export interface MeterLine {
  /** The centre of the light that the meter looks at all along. */
  readonly from: Vec3;
  /** Unit vector away from the light. */
  readonly way: Vec3;
  /** From the light to the place that all else is compared with, m. */
  readonly spot: number;
  /** That place in words: `the face`, or `the aim of key` where there is nobody. */
  readonly spotName: string;
  /** From the light to the end of the line, m. */
  readonly end: number;
  /** What ends it, in words; null in the open. */
  readonly endName: string | null;
}

/** A meter on the line. */
export interface LinePlace {
  /** From the light, m. */
  readonly away: number;
  readonly reading: Reading;
}

/** The line with what a flat receptor reads at each of its places, the nearest to the light first. */
export interface LineWalk {
  readonly line: MeterLine;
  readonly spot: LinePlace;
  readonly places: readonly LinePlace[];
}

/** Places of a line, besides the one that all is compared with. */
const PLACES = 40;
/** The line starts so many times nearer to the light than the spot is: three doublings, 6 stops by the inverse square. */
const NEARER = 8;
/** Free way between the opening and the first meter, and between the last meter and what ends the line, m. */
const FREE = 0.02;
/** Without anything behind, the line goes on as far as it came, and no less than this, m. */
const BEYOND = 2;

/**
 * A line from a light through the first subject's face, or through the light's aim where there is nobody, to what it meets
 * first behind, in a scene without people. Null where the spot is in the light itself.
 */
export function meterLine(scene: Scene, empty: Scene, source: Source): MeterLine | null {
  const seen = seenLight(source);
  const face = firstFace(scene);
  const spot = face ?? seen.aim;
  const from = seen.centre;
  const way = directionTo(from, spot);
  const away = distance(from, spot);
  if (way === null || away <= startOf(seen, away)) return null;
  // From a little before the spot: an aim may lie on a surface, and the line then ends at it.
  const before = addScaled(spot, way, -FREE);
  const met = sightOf(empty)(before, way);
  const last = met === null ? away + Math.max(BEYOND, away) : Math.max(away, away - FREE + met.way - FREE);
  return {
    from,
    way,
    spot: away,
    spotName: face === null ? `the aim of ${source.name}` : faceWords(scene),
    end: last,
    endName: met === null ? null : sayOwner(met.owner),
  };
}

/** How far from the centre of a light its line starts, m: never in the light. */
function startOf({ shape }: Source, spot: number): number {
  const radius = shape.kind === "sphere" || shape.kind === "capsule" ? shape.radius : 0;
  return Math.max(spot / NEARER, radius + FREE);
}

/**
 * What a flat receptor that looks at a light reads along its line, from all lights and by way of all surfaces but people.
 * Places stand closer near the light. Null where there is no line, or no light at the spot.
 */
export function walkLine({ scene }: Plan, source: Source): LineWalk | null {
  const empty = withoutPeople(scene);
  const line = meterLine(scene, empty, source);
  if (line === null) return null;
  const lit = { scene: empty, light: sceneLight(empty) };
  const facing = scale(line.way, -1);
  const placeAt = (away: number): LinePlace => ({
    away,
    reading: readingAt(lit, { at: addScaled(line.from, line.way, away), facing, receptor: "disc" }),
  });
  const spot = placeAt(line.spot);
  if (!(spot.reading.exposure > 0)) return null;
  const start = startOf(seenLight(source), line.spot);
  const [near, far] = [Math.sqrt(start), Math.sqrt(line.end)];
  const others = Array.from({ length: PLACES + 1 }, (_, i) => {
    const root = near + ((far - near) * i) / PLACES;
    return i === PLACES ? line.end : root * root;
  }).filter((away) => Math.abs(away - line.spot) > 1e-9);
  const places = [...others.map(placeAt), spot].sort((a, b) => a.away - b.away);
  return { line, spot, places };
}
