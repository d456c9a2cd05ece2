import { litOwners } from "../change/blacken.js";
import type { Plan } from "../plan.js";
import { firstSubject, stationOf } from "../plan.js";
import { list } from "../say/number.js";
import { sayPercent, sayStops } from "../say/quantity.js";
import { ownerOf, sayOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** The colours of surfaces, by what they belong to. */
function tints({ scene }: Plan): ReadonlyMap<string, string> {
  return new Map(
    scene.polygons.flatMap(({ name, tint }) => (tint === undefined ? [] : [[ownerOf(name), tint] as const])),
  );
}

/** What a coloured surface does for the shaded cheek. */
interface Coloured {
  readonly surface: string;
  readonly tint: string;
  /** Of the light there. */
  readonly share: number;
  /** How much darker the cheek is with the surface black, in words. */
  readonly darker: string;
  /** Whether a lamp shines into it. */
  readonly lit: boolean;
}

function findingOf(first: Coloured, more: readonly Coloured[]): RuleFinding {
  const { surface, share, darker, tint } = first;
  const ways = [
    `${sayPercent(share)} of the light on the shaded cheek comes by way of ${sayOwner(surface)}`,
    ...more.map((row) => `${sayPercent(row.share)} by way of ${sayOwner(row.surface)}`),
  ];
  const cover =
    more.length === 0
      ? `Cover it with white, or with black: the shaded cheek is then ${darker}.`
      : `Cover them with white, or with black: with ${sayOwner(surface)} alone black the shaded cheek is ${darker}.`;
  return {
    severity: "note",
    message: `${list(ways)}: the shade turns ${tint}.`,
    remedy: [first, ...more].some(({ lit }) => lit)
      ? "It is the light itself: shine into something white instead, or lay white over the part that is lit."
      : cover,
    about: surface,
  };
}

/** A coloured surface fills the shaded side. */
export const bounceColour: Rule = {
  code: "bounce-colour",
  thresholds: ["bounce_colour"],
  safety: false,
  page: {
    when: "A surface that has a `tint` gives more than `bounce_colour` (15 %) of the light on the shaded cheek of the first subject: what that loses with the surface black, all further bounces included.",
    means: "The shade takes the colour of the surface, and no white balance takes it out of one side alone.",
    todo: "Cover the surface with white or black, or keep light off it.",
    source: "Common practice, no source. Light takes a tinted surface as grey; only its share is computed.",
  },
  check: (plan) => {
    const { scene, light, recipe } = plan;
    const coloured = tints(plan);
    const subject = firstSubject(scene);
    const shaded = subject === null ? null : stationOf(scene, subject, "shaded_cheek");
    if (shaded === null || coloured.size === 0) return [];
    const own = new Set(litOwners(plan));
    const lights = scene.sources.map((source) => ({ source, energy: source.energy }));
    const most = threshold(recipe, "bounce_colour");
    const found = light.contributors(lights, shaded).flatMap(({ surface, takes, without }): Coloured[] => {
      const tint = coloured.get(surface);
      const share = takes / (takes + without);
      if (tint === undefined || share <= most + 1e-9) return [];
      const darker = without > 0 ? `${sayStops(Math.log2((takes + without) / without))} darker` : "black";
      return [{ surface, tint, share, darker, lit: own.has(surface) }];
    });
    // What has one colour is one cause, however many surfaces have it.
    return [...new Set(found.map(({ tint }) => tint))].flatMap((tint) => {
      const [first, ...more] = found.filter((row) => row.tint === tint);
      return first === undefined ? [] : [findingOf(first, more)];
    });
  },
};
