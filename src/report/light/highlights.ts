import { dot } from "../../math/vector.js";
import type { SceneSubject, Station } from "../../scene/types.js";
import { surfaceUnder } from "../geometry/background-points.js";
import { directionTo } from "../geometry/directions.js";
import { inFrame } from "../geometry/frame.js";
import { faceWords, type Plan, partName, stationOf } from "../plan.js";
import { ownerOf, sayOwner } from "../say/surfaces.js";
import { backgroundStation, whiteWish } from "./background.js";
import { type Reading, readingAt, stopsFromAperture } from "./reading.js";

/** Something in the picture, how much light it throws back, and where its light is metered. */
interface Lit {
  readonly what: string;
  readonly reflectance: number;
  readonly station: Station;
}

/** The brightest thing in the picture. */
export interface Highlight {
  /** In words: `the skin of the face`, or what the set's surface is called. */
  readonly what: string;
  readonly reflectance: number;
  readonly station: Station;
  readonly reading: Reading;
  /**
   * Stops between it and pure white, - where it lies beyond: an incident meter puts a surface that throws all light back
   * at pure white, so a reflectance r whose light is s stops over the aperture lies -log2 r - s under it.
   */
  readonly headroom: number;
}

/** Cosine of the angle to its normal from which a surface is seen edge on. */
const EDGE_ON = 0.05;

/** The skin of faces, and flat surfaces in the picture; not a background that is wished white. */
function inPicture(plan: Plan): readonly Lit[] {
  const { scene } = plan;
  const { camera } = scene;
  if (camera === null) return [];
  const spared = whiteWish(plan) ? backgroundStation(scene)?.name : undefined;
  const surfaces = scene.stations.flatMap((station): Lit[] => {
    if (!station.natural || station.subject !== null || !inFrame(camera, station.at)) return [];
    // Turned away from the lens, or seen edge on.
    const sight = directionTo(station.at, camera.at);
    if (sight === null || dot(sight, station.facing) < EDGE_ON) return [];
    const owner = ownerOf(station.name);
    const polygon = surfaceUnder(scene, station);
    if (polygon === null || owner === spared) return [];
    return [{ what: sayOwner(owner), reflectance: polygon.frontReflectance, station }];
  });
  const skin = scene.subjects
    .filter((subject) => inFrame(camera, subject.face))
    .flatMap((subject) => skinOf(plan, subject));
  return [...skin, ...surfaces];
}

function skinOf({ scene }: Plan, subject: SceneSubject): readonly Lit[] {
  const station = stationOf(scene, subject, "face");
  const head = scene.bodies.find((body) => body.name === partName(scene, subject, "head"));
  if (station === null || head === undefined) return [];
  return [{ what: `the skin of ${faceWords(scene, subject)}`, reflectance: head.reflectance, station }];
}

/** What comes nearest to pure white in the picture, or why that cannot be said. */
export function brightestOf(plan: Plan): Highlight | string {
  const { camera } = plan.scene;
  if (camera === null) return "there is no camera";
  if (camera.aperture === null || camera.iso === null)
    return "the camera's aperture and sensitivity are not both known";
  let best: Highlight | null = null;
  for (const lit of inPicture(plan)) {
    const reading = readingAt(plan, lit.station);
    const level = stopsFromAperture(plan.scene, reading.exposure, reading.constant);
    if (level === null || !(lit.reflectance > 0)) continue;
    const headroom = -Math.log2(lit.reflectance) - level;
    if (best === null || headroom < best.headroom) best = { ...lit, reading, headroom };
  }
  return best ?? "no face and no surface in the picture gets light that is metered";
}
