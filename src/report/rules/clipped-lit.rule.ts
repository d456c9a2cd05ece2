import { dot } from "../../math/vector.js";
import type { Scene, Station } from "../../scene/types.js";
import { surfaceUnder } from "../geometry/background-points.js";
import { directionTo } from "../geometry/directions.js";
import { inFrame } from "../geometry/frame.js";
import { readingAt, stopsFromAperture } from "../light/reading.js";
import { faceWords, firstSubject, type Plan, stationOf } from "../plan.js";
import { sayPercent, sayStops } from "../say/quantity.js";
import { ownerOf, sayOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { backgroundStation } from "./background-off.rule.js";
import { whiteWish } from "./background-spread.js";
import type { Rule } from "./rule.js";

/** Something in the picture, how much light it throws back, and where its light is metered. */
interface Lit {
  readonly what: string;
  readonly reflectance: number;
  readonly station: Station;
}

/** Cosine of the angle to its normal from which a surface is seen edge on. */
const EDGE_ON = 0.05;

/** The first face's skin, and flat surfaces in the picture; not a background that is wished white. */
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
  return [...skinOf(scene), ...surfaces];
}

function skinOf(scene: Scene): readonly Lit[] {
  const subject = firstSubject(scene);
  const station = subject === null ? null : stationOf(scene, subject, "face");
  const head = scene.bodies.find((body) => body.name === "head" || body.name === `${subject?.name}.head`);
  if (station === null || head === undefined) return [];
  return [{ what: `the skin of ${faceWords(scene)}`, reflectance: head.reflectance, station }];
}

/** Something light in the picture is lit beyond white. */
export const clippedLit: Rule = {
  code: "clipped-lit",
  thresholds: ["clip"],
  safety: false,
  page: {
    when: "The camera says an aperture and an ISO value, and the skin of the first face, or a station of set or floor in the picture, comes nearer to pure white than `clip` (0.1 stop): its reflectance times its light over the light that the aperture is right for. A background that `intent` wishes at or over a reading is meant to, and is left out.",
    means: "Paper, a dress or a forehead has no texture left there.",
    todo: "Close the aperture or turn the lights down by what it says, feather the light off it, or take something darker.",
    source:
      "An incident meter puts a surface that throws all light back at pure white; the threshold is common practice, no source.",
  },
  check: (plan) => {
    const margin = threshold(plan.recipe, "clip");
    let worst: (Lit & { readonly over: number }) | null = null;
    for (const lit of inPicture(plan)) {
      const { exposure, constant } = readingAt(plan, lit.station);
      const level = stopsFromAperture(plan.scene, exposure, constant);
      if (level === null || !(lit.reflectance > 0)) continue;
      const over = level + Math.log2(lit.reflectance) + margin;
      if (over > 1e-9 && (worst === null || over > worst.over)) worst = { ...lit, over };
    }
    if (worst === null) return [];
    return [
      {
        severity: "check",
        message: `${worst.what} (${sayPercent(worst.reflectance)}) is ${sayStops(worst.over)} too bright to keep its texture.`,
        remedy: `Close the aperture or turn the lights down by ${sayStops(worst.over)}, or feather them off it.`,
        about: worst.what,
      },
    ];
  },
};
