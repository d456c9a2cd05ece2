import type { Vec3 } from "../../core/vector.js";
import { dot, length, subtract } from "../../math/vector.js";
import { imageDistance } from "../../scene/lens.js";
import { lightPlace, seenLight } from "../../scene/lit/seen.js";
import type { SceneCamera, SceneSubject, Source } from "../../scene/types.js";
import { directPerLumenSecond } from "../../transport/direct.js";
import type { Meter } from "../../transport/meter.js";
import { onSection, toSphere } from "../geometry/outline.js";
import type { Lit } from "../plan.js";
import { headOutline, type Side, sayHeadSide } from "./head-outline.js";
import { directFrom } from "./reading.js";

/** The band at the edge of a head that one light reaches, as the lens sees it. */
export interface Rim {
  /** In the plane through the middle of the head that is parallel to the picture, m. */
  readonly width: number | null;
  /** The same as a share of the frame's width; null without a focal length. */
  readonly share: number | null;
  readonly reason: string | null;
}

const none = (reason: string): Rim => ({ width: null, share: null, reason });

/**
 * The width of a rim on one side of a head, by the middle of the light: from where it sinks below the surface to the
 * outline. On the section through lens, middle of the head and that side, places of the unit sphere lie at an angle `a`
 * from the lens; they see the light where `cos(a) l1 + sin(a) l2 > 1`, that is within `acos(1 / |l|)` of the light's own
 * angle, and are seen by the lens up to `acos(1 / |eye|)`.
 */
export function rimWidth(lit: Lit, subject: SceneSubject, source: Source, side: Side): Rim {
  const outline = headOutline(lit.scene, subject, side);
  if (typeof outline === "string") return none(outline);
  if (!(source.energy > 0)) return none(`${source.name} is off`);
  const { camera, head, seen } = outline;
  const light = toSphere(head, lightPlace(source));
  const [ahead, aside] = [dot(light, seen.near), dot(light, seen.side)];
  const away = Math.sqrt(ahead * ahead + aside * aside);
  const edge = Math.acos(1 / length(seen.eye));
  const half = away > 1 ? Math.acos(1 / away) : 0;
  const middle = Math.atan2(aside, ahead);
  const start = middle - half;
  if (away <= 1 || start >= edge || middle + half <= edge)
    return none(`${source.name} does not reach ${sayHeadSide(side)} that the lens sees`);
  if (start <= 0) return none(`${source.name} reaches past the middle of the head: it makes no rim`);
  const { at, normal } = onSection(seen, (start + edge) / 2);
  if (!(reaching(lit, source, { at, facing: normal, receptor: "disc" }) > 0))
    return none(`${source.name} is hidden from ${sayHeadSide(side)}, or does not shine there`);
  const depth = dot(subtract(head.centre, camera.at), camera.forward);
  const [a, b] = [start, edge].map((angle) => inPlane(camera, depth, onSection(seen, angle).at));
  const [x, y] = [(b?.[0] ?? 0) - (a?.[0] ?? 0), (b?.[1] ?? 0) - (a?.[1] ?? 0)];
  const width = Math.sqrt(x * x + y * y);
  const image = imageDistance(camera);
  return {
    width,
    share: image === null ? null : (width * image) / (depth * camera.frameWidth),
    reason: null,
  };
}

/** What a light gives a place straight; a lit patch as if nothing stood in its way. */
function reaching(lit: Lit, source: Source, meter: Meter): number {
  return source.patch === undefined
    ? directFrom(lit, source.name, meter)
    : directPerLumenSecond(seenLight(source), meter.at, meter.facing, meter.receptor);
}

/** A place thrown from the lens on the plane at a depth: along the width and the height of the picture, m. */
function inPlane(camera: SceneCamera, depth: number, at: Vec3): readonly [number, number] {
  const sight = subtract(at, camera.at);
  const scale = depth / dot(sight, camera.forward);
  return [dot(sight, camera.right) * scale, dot(sight, camera.up) * scale];
}
