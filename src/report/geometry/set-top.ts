import type { Vec3 } from "../../core/vector.js";
import type { Scene, SceneCamera, ScenePolygon, SceneSubject } from "../../scene/types.js";
import { wallPolygons, wallWords } from "../../scene/wall-places.js";
import { alongFloor } from "./directions.js";
import { framed } from "./frame.js";

/** Pieces of the set that stand behind a subject as its background. */
const upright: ReadonlySet<ScenePolygon["kind"]> = new Set(["flat", "paper", "panel"]);

/** How high the set reaches behind a subject, as the lens sees it. */
export interface SetTop {
  /** Height of the visible top of the set in the subject's plane, m. */
  readonly visible: number;
  /** Height of the real edge that makes it, m. */
  readonly edge: number;
  /** From the subject to that edge along the floor, m. */
  readonly gap: number;
  /** From the lens to the subject along the floor, m. */
  readonly distance: number;
  /** The piece whose edge it is. */
  readonly piece: string;
  /** Whether the edge lies below the top of the frame, so that the picture shows it. */
  readonly inFrame: boolean;
}

/** The part of a polygon in the upright plane through the lens and a subject, behind the subject: points of its rim. */
function cutBehind(
  polygon: ScenePolygon,
  lens: Vec3,
  dx: number,
  dy: number,
  beyond: number,
): readonly Vec3[] {
  const points: Vec3[] = [];
  const side = (p: Vec3): number => (p[0] - lens[0]) * dy - (p[1] - lens[1]) * dx;
  const { vertices } = polygon;
  vertices.forEach((a, i) => {
    const b = vertices[i + 1 < vertices.length ? i + 1 : 0] ?? a;
    const sa = side(a);
    const sb = side(b);
    if (sa === 0) points.push(a);
    if ((sa < 0 && sb > 0) || (sa > 0 && sb < 0)) {
      const t = sa / (sa - sb);
      points.push([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t]);
    }
  });
  return points.filter((p) => (p[0] - lens[0]) * dx + (p[1] - lens[1]) * dy > beyond);
}

/** A stretch of the upright line through a head before which the lens sees a piece of the set. */
interface Stretch {
  readonly low: number;
  readonly top: Omit<SetTop, "inFrame">;
}

/** Pieces that stand apart by less than this in the picture, m in the subject's plane, hang together. */
const JOINT = 0.001;

/**
 * The visible top of the set behind a subject: as far up as the set goes on without a gap from behind the top of the
 * head, or where it ends below. Rays from the lens through the line of the subject's head are followed to the set; what
 * hangs above a gap does not count. A wall that belongs to the set counts where none of its pieces stands behind the head.
 * Null without a camera, or where nothing of the set does.
 */
export function setTop(scene: Scene, subject: SceneSubject): SetTop | null {
  const { camera } = scene;
  if (camera === null) return null;
  const distance = alongFloor(camera.at, subject.face);
  if (distance < 1e-6) return null;
  const dx = (subject.face[0] - camera.at[0]) / distance;
  const dy = (subject.face[1] - camera.at[1]) / distance;
  const behind = (sheets: readonly ScenePolygon[]): Stretch[] => {
    const ends = sheets
      .filter(({ normal }) => Math.abs(normal[2]) <= 0.5)
      .flatMap((sheet) =>
        cutBehind(sheet, camera.at, dx, dy, distance).map((point) => {
          const away = alongFloor(camera.at, point);
          const visible = camera.at[2] + ((point[2] - camera.at[2]) * distance) / away;
          return { visible, edge: point[2], gap: away - distance, distance, piece: sheet.name };
        }),
      );
    const [low, ...more] = [...ends].sort((one, other) => one.visible - other.visible);
    const top = more[more.length - 1];
    return low === undefined || top === undefined ? [] : [{ low: low.visible, top }];
  };
  const pieces = scene.polygons.filter(({ kind }) => upright.has(kind)).flatMap((sheet) => behind([sheet]));
  // An opening in a wall is no end of it.
  const walls = (): Stretch[] =>
    [...wallWords.keys()].flatMap((word) =>
      behind(wallPolygons(scene.polygons, word).filter(({ asSet }) => asSet === true)),
    );
  const stretches = pieces.length > 0 ? pieces : walls();
  let best: Stretch["top"] | null = null;
  for (const { low, top } of [...stretches].sort((one, other) => one.low - other.low)) {
    const reached: number = Math.max(subject.top, best?.visible ?? 0);
    if (low <= reached + JOINT && (best === null || top.visible > best.visible)) best = top;
  }
  return best === null
    ? null
    : { ...best, inFrame: belowFrameTop(camera, [subject.face[0], subject.face[1], best.visible]) };
}

function belowFrameTop(camera: SceneCamera, point: Vec3): boolean {
  const place = framed(camera, point);
  return place === null || place.y < 1;
}

/** The height at which the set behind would have to end for its visible top to be at `wanted` in the subject's plane. */
export function edgeForVisible(top: SetTop, lensHeight: number, wanted: number): number {
  return lensHeight + ((wanted - lensHeight) * (top.distance + top.gap)) / top.distance;
}

/** The height of the lens at which the visible top of the same set is at `wanted`; null where the set touches. */
export function lensForVisible(top: SetTop, wanted: number): number | null {
  if (top.gap < 1e-6) return null;
  return (wanted * (top.distance + top.gap) - top.edge * top.distance) / top.gap;
}
