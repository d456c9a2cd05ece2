import type { Assumption, Scene, ScenePolygon } from "../../scene/types.js";
import { withReflectance } from "../change/surfaces.js";
import { backgroundStation } from "../light/background.js";
import { readingAt, stopsOver } from "../light/reading.js";
import { faceWords, firstSubject, lightsOn, stationOf } from "../plan.js";
import { sayPercent, sayStops } from "../say/quantity.js";
import { ownerOf, sayOwner } from "../say/surfaces.js";
import { threshold, tolerance } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** A flat surface whose reflectance the recipe does not say. */
interface Unsaid {
  /** As the list of what was assumed calls it. */
  readonly what: string;
  readonly words: string;
  readonly has: (polygon: ScenePolygon) => boolean;
}

/** The surface of an assumption; null where it is about something else. */
export function unsaidSurface({ what }: Assumption): Unsaid | null {
  if (what === "ceiling" || what === "floor") {
    return { what, words: sayOwner(what), has: ({ kind }) => kind === what };
  }
  if (what === "walls") return { what, words: "the walls", has: ({ kind }) => kind === "wall" };
  const piece = /^surface of (.+)$/.exec(what)?.[1];
  return piece === undefined ? null : { what, words: piece, has: ({ name }) => ownerOf(name) === piece };
}

/** The readings that are watched, with words for each. */
function watched(scene: Scene): readonly (readonly [words: string, station: Scene["stations"][number]])[] {
  const subject = firstSubject(scene);
  const face = subject === null ? null : stationOf(scene, subject, "face");
  const shaded = subject === null ? null : stationOf(scene, subject, "shaded_cheek");
  const back = backgroundStation(scene);
  return [
    ...(face === null ? [] : [[faceWords(scene), face] as const]),
    ...(shaded === null ? [] : [["the shaded cheek", shaded] as const]),
    ...(back === null ? [] : [[back.name, back] as const]),
  ];
}

/** A reflectance that nobody has said moves a reading. */
export const reflectanceAssumed: Rule = {
  code: "reflectance-assumed",
  thresholds: ["assumed"],
  safety: false,
  page: {
    when: "The recipe does not say how much light a surface of room or set throws back, and with that off by `assumed_reflectance` (20 %, in `tolerances`), worked out anew, the first face, its shaded cheek or the background would read more than `assumed` (0.2 stop) otherwise. Pieces of the set are asked, people are not.",
    means:
      "A default decided the result. Rooms differ more than any lamp: the same bulb is hard and deep in a dark room and flat in a white one.",
    todo: "Say what the surface is: white paint throws back about 80 %, a grey wall 50 %, a wooden floor 30 %, black cloth 3 %.",
    source:
      "Defaults are 80 / 50 / 20 % for ceiling, walls and floor (lighting handbooks' usual); how far they may be off is common practice, no source.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    if (lightsOn(scene).length === 0) return [];
    const by = tolerance(recipe, "assumed_reflectance");
    return scene.assumed.flatMap((row): RuleFinding[] => {
      const unsaid = unsaidSurface(row);
      const own = unsaid === null ? undefined : scene.polygons.find(unsaid.has);
      if (unsaid === null || own === undefined) return [];
      const plain = own.frontReflectance;
      const other = plain - by >= 0.02 ? plain - by : plain + by;
      const changed = withReflectance(plan, unsaid.has, other);
      let most = 0;
      let where = "";
      for (const [words, station] of watched(scene)) {
        const moved = stopsOver(readingAt(changed, station), readingAt(plan, station)) ?? 0;
        if (Math.abs(moved) <= Math.abs(most)) continue;
        most = moved;
        where = words;
      }
      if (Math.abs(most) <= threshold(recipe, "assumed") + 1e-9) return [];
      return [
        {
          severity: "note",
          message: `The recipe does not say what ${unsaid.words} ${unsaid.what === "walls" ? "throw" : "throws"} back: ${sayPercent(plain)} is assumed, and with ${sayPercent(other)} ${where} would read ${sayStops(Math.abs(most))} ${most < 0 ? "less" : "more"}.`,
          remedy: "Say the reflectance in the recipe, or meter the place once.",
          about: unsaid.what,
        },
      ];
    });
  },
};
