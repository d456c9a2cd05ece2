import type { Vec3 } from "../../core/vector.js";
import { addScaled, distance } from "../../math/vector.js";
import { seenLight } from "../../scene/lit/seen.js";
import type { Scene, Source } from "../../scene/types.js";
import { areaOf } from "../frame/region.js";
import { firstSubject, lightsOn } from "../plan.js";
import { ownerOf } from "../say/surfaces.js";
import type { ReportShadow } from "../schema/report.js";
import type { ReportThrown, ThrownShadow } from "../schema/thrown.js";
import type { Cast } from "./cast.js";
import { type EdgeAt, narrowWidth } from "./edges.js";
import { backgroundCorners, fanOf } from "./fan.js";
import { stretchInPicture } from "./in-picture.js";
import {
  areas,
  growthOf,
  heights,
  middleEdge,
  outlineEdges,
  reachFrom,
  runsOver,
  type Shadow,
  seamsOf,
} from "./shadows-of.js";
import { thinned } from "./thin.js";

/**
 * Every shadow as it falls: of each subject by each light that is on, on each surface, and of pieces where the picture
 * shows them.
 *
 * @param cast - The scene's shadows.
 * @param depths - What a shadow does on each surface, from which its depth is taken.
 */
export function reportThrown(cast: Cast, depths: readonly ReportShadow[]): ReportThrown {
  const { scene, throwers } = cast;
  const lights = lightsOn(scene);
  const shadows = lights.flatMap((source) => {
    return [...throwers.people, ...throwers.pieces].flatMap((thrower) => {
      const found = cast.shadows(source, thrower);
      return found.flatMap((shadow) => {
        // What is thrown outside of the picture by a piece is of no use to anyone.
        if (thrower.subject === null && !((areas(shadow).inFrame ?? 0) > 0)) return [];
        return [row(scene, source, shadow, found, depths)];
      });
    });
  });
  return { shadows, fans: lights.map((source) => fanRow(scene, source)), doubled: [...doubled(shadows)] };
}

function row(
  scene: Scene,
  source: Source,
  shadow: Shadow,
  all: readonly Shadow[],
  depths: readonly ReportShadow[],
): ThrownShadow {
  const { thrower, surface, parts } = shadow;
  const { all: area, inFrame } = areas(shadow);
  const [low, high] = heights(shadow);
  return {
    light: source.name,
    of: thrower.name,
    kind: thrower.subject === null ? "piece" : "subject",
    surface,
    outlines: parts.flatMap(({ ground, region, rings }) =>
      rings.map((ring, i) => ({
        surface: ground.polygon.name,
        hole: areaOf([region[i] ?? []]) < 0,
        ring: thinned(ring).map(([x, y, z]): [number, number, number] => [x, y, z]),
      })),
    ),
    area,
    in_frame: inFrame === null ? null : Math.min(1, inFrame / area),
    reach: thrower.subject === null ? null : reachFrom(shadow, thrower.subject.place),
    low,
    high,
    growth: growthOf(shadow),
    depth: depthNear(scene, source, shadow, depths),
    crosses: [...seamsOf(shadow, all)],
    runs_over: runsOver(shadow),
    edge: edgeRow(scene, outlineEdges(shadow)),
  };
}

/** The depth of a light's shadow at the station of the surface that is nearest to the middle of its outline. */
function depthNear(
  scene: Scene,
  source: Source,
  { surface, parts }: Shadow,
  depths: readonly ReportShadow[],
): number | null {
  const points = parts.flatMap(({ rings }) => rings.flat());
  const sum = (axis: 0 | 1 | 2): number => points.reduce((total, p) => total + p[axis], 0) / points.length;
  const middle: Vec3 = [sum(0), sum(1), sum(2)];
  let best: number | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const found of depths) {
    if (found.light !== source.name || ownerOf(found.surface) !== surface) continue;
    const at = scene.stations.find((station) => station.name === found.surface && station.natural)?.at;
    const away = at === undefined ? Number.POSITIVE_INFINITY : distance(at, middle);
    if (away < least) [least, best] = [away, found.depth];
  }
  return best;
}

const MILLIMETRES = 1000;

function edgeRow(scene: Scene, edges: readonly EdgeAt[]): ThrownShadow["edge"] {
  const [least, middle, greatest] = [edges[0], middleEdge(edges), edges[edges.length - 1]];
  if (least === undefined || middle === null || greatest === undefined) return null;
  const narrow = [least, middle, greatest].map(narrowWidth);
  const [a, b, c] = narrow;
  const { camera } = scene;
  const seen =
    camera === null
      ? null
      : stretchInPicture(
          camera,
          addScaled(middle.at, middle.across, -middle.full / 2),
          addScaled(middle.at, middle.across, middle.full / 2),
        );
  return {
    places: edges.length,
    gap: middle.gap,
    distance: middle.away,
    full: {
      least: least.full * MILLIMETRES,
      middle: middle.full * MILLIMETRES,
      greatest: greatest.full * MILLIMETRES,
    },
    ten_ninety:
      a == null || b == null || c == null
        ? null
        : { least: a * MILLIMETRES, middle: b * MILLIMETRES, greatest: c * MILLIMETRES },
    share: seen?.share ?? null,
    pixels: seen?.pixels ?? null,
  };
}

function fanRow(scene: Scene, source: Source): ReportThrown["fans"][number] {
  const corners = backgroundCorners(scene);
  const middle = firstSubject(scene)?.place ?? [0, 0, 0];
  return {
    light: source.name,
    degrees: corners.length === 0 ? null : fanOf(seenLight(source).centre, corners, middle),
  };
}

/** Surfaces on which more than one light throws a shadow of a subject; inside the frame where there is one. */
function doubled(shadows: readonly ThrownShadow[]): ReportThrown["doubled"] {
  const seen = shadows.filter(
    ({ kind, in_frame }) => kind === "subject" && (in_frame === null || in_frame > 0),
  );
  return [...new Set(seen.map(({ surface }) => surface))].flatMap((surface) => {
    const own = seen.filter((shadow) => shadow.surface === surface);
    const names = [...new Set(own.map(({ light }) => light))];
    if (names.length < 2) return [];
    const lights = names.map((name) => ({
      name,
      depth: own.find((shadow) => shadow.light === name && shadow.depth !== null)?.depth ?? null,
    }));
    return [{ surface, lights }];
  });
}
