import type { Vec3 } from "../core/vector.js";
import { addScaled, dot, subtract } from "../math/vector.js";
import { crosses } from "../scene/crosses.js";
import { lampName, lightPlace, seenLight } from "../scene/lit/seen.js";
import type { Source, Station } from "../scene/types.js";
import { directPerLumenSecond } from "../transport/direct.js";
import { directionTo } from "./geometry/directions.js";
import { readingAt, sumOf } from "./light/reading.js";
import { shadowEdge, shadowEdge10to90 } from "./light/shadow-edge.js";
import { reflectanceAt } from "./light/surface-tone.js";
import { firstFace, type Lit, lightsOn } from "./plan.js";
import { ownerOf } from "./say/surfaces.js";
import type { ReportShadow } from "./schema/report.js";

/**
 * What a shadow does on each surface of set and floor, for every light that shines on it: how deep it is where the
 * light is hidden wholly, and, apart from that, how wide the edge of the first subject's head would be there.
 */
export function reportShadows(lit: Lit, key: number | null): readonly ReportShadow[] {
  const surfaces = lit.scene.stations.filter(
    (station) => station.natural && station.subject === null && reflectanceAt(lit.scene, station) !== null,
  );
  return surfaces.flatMap((station) =>
    lightsOn(lit.scene).flatMap((source) => reportShadow(lit, station, source, key)),
  );
}

function reportShadow(lit: Lit, station: Station, source: Source, key: number | null): ReportShadow[] {
  const parts = lit.scene.sources.filter((part) => lampName(part) === source.name);
  const open = sumOf(
    parts.map(
      (part) => part.energy * directPerLumenSecond(part, station.at, station.facing, station.receptor),
    ),
  );
  if (!(open > 0)) return [];
  const reading = readingAt(lit, station);
  const own = reading.shares.find((share) => share.name === source.name)?.direct ?? 0;
  // What is left in the shadow: the other lights and all that bounces.
  const rest = Math.max(0, reading.exposure - own);
  const from = (exposure: number): number | null =>
    key !== null && key > 0 && exposure > 0 ? Math.log2(exposure / reading.constant / key) : null;
  const gap = gapBehindFace(lit, source, station);
  const edge = gap === null ? null : shadowEdge(seenLight(source), gap);
  const narrow = gap === null ? null : shadowEdge10to90(seenLight(source), gap);
  return [
    {
      surface: station.name,
      light: source.name,
      in_light: from(open + rest),
      in_shadow: from(rest),
      depth: rest > 0 ? Math.log2((open + rest) / rest) : null,
      error: rest > 0 ? Math.log2(1 + reading.error / rest) : null,
      gap,
      edge: edge === null ? null : 1000 * edge,
      edge_10_90: narrow === null ? null : 1000 * narrow,
      reason:
        rest > 0
          ? gap === null
            ? "the shadow of the head falls beside it"
            : null
          : "no other light reaches it: the shadow is black",
    },
  ];
}

/** From the first face along the light to the surface of a station; null where the line misses its piece. */
function gapBehindFace({ scene }: Lit, source: Source, station: Station): number | null {
  const face = firstFace(scene);
  const along = face === null ? null : directionTo(lightPlace(source), face);
  if (face === null || along === null) return null;
  const gap = dot(subtract(station.at, face), station.facing) / dot(along, station.facing);
  if (!(gap > 0) || gap > 50) return null;
  const there = addScaled(face, along, gap);
  return scene.polygons.some(
    (polygon) => samePiece(polygon.name, station.name) && hits(polygon, there, station),
  )
    ? gap
    : null;
}

function samePiece(polygon: string, station: string): boolean {
  return ownerOf(polygon) === ownerOf(station);
}

function hits(polygon: Parameters<typeof crosses>[0], at: Vec3, { facing }: Station): boolean {
  return crosses(polygon, addScaled(at, facing, 2e-3), addScaled(at, facing, -2e-3));
}
