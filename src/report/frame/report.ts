import { dot, subtract } from "../../math/vector.js";
import type { SceneCamera, SceneSubject } from "../../scene/types.js";
import { inFrame } from "../geometry/frame.js";
import { firstSubject, type Plan, partName } from "../plan.js";
import type { Report } from "../schema/report.js";
import { closings } from "./close-gap.js";
import { behind, type Coverage, coverageOf, subjectInPicture } from "./coverage.js";
import { framingOf, subjectHeight } from "./framing.js";
import { frameTop, handLimit } from "./hands.js";
import { type Lens, lensOf } from "./project.js";
import { type Place, shareOf } from "./region.js";
import { seamsOf } from "./seams.js";
import { seenThings } from "./seen.js";
import {
  airyOf,
  blurOf,
  type Optics,
  opticsOf,
  pixelPitch,
  type SharpRange,
  sharpRange,
} from "./sharpness.js";
import { bareSides } from "./sides.js";

type Frame = NonNullable<Report["frame"]>;

/** Shares of the frame from its left and from its top. */
const fromCorner = ([x, y]: Place): [number, number] => [snapped((1 + x) / 2), snapped((1 - y) / 2)];

/** Takes what rounding left off a place on the edge of the frame. */
function snapped(share: number): number {
  const near = Math.round(share);
  return Math.abs(share - near) < 1e-12 ? near : share;
}

/** The picture of the report; null without a camera or its focal length. */
export function reportFrame(plan: Plan): Report["frame"] {
  const { scene, recipe } = plan;
  const { camera } = scene;
  const lens = camera === null ? null : lensOf(camera);
  if (camera === null || lens === null) return null;
  const { pixels } = camera;
  const found = coverageOf(scene);
  const known = typeof found === "string" ? null : found;
  const pixel = (place: Place): [number, number] | null => {
    const [left, top] = fromCorner(place);
    return pixels === null ? null : [left * pixels.width, top * pixels.height];
  };
  return {
    coverage: known?.covered ?? null,
    reason: typeof found === "string" ? found : null,
    pixels: pixels === null ? null : [pixels.width, pixels.height],
    bare_pixels:
      known === null || pixels === null ? null : (1 - known.covered) * pixels.width * pixels.height,
    sides: known === null ? [] : sidesOf(known, camera),
    behind: known === null ? [] : behind(scene, known.bare).map((row) => ({ ...row })),
    closings: known === null || known.covered === 1 ? [] : closings(recipe, scene).map((row) => ({ ...row })),
    seams: seamsOf(scene).map(({ kind, name, side, from, to }) => ({
      kind,
      name,
      side,
      from: fromCorner(from),
      to: fromCorner(to),
      from_pixel: pixel(from),
      to_pixel: pixel(to),
    })),
    things: seenThings(scene, recipe).map(({ kind, name, share, box }) => {
      const [left, top] = fromCorner([box.left, box.top]);
      const [right, bottom] = fromCorner([box.right, box.bottom]);
      return { kind, name, share, box: { left, top, right, bottom } };
    }),
    subject: subjectOf(plan, lens),
  };
}

function sidesOf({ bare, set }: Coverage, { pixels }: SceneCamera): Frame["sides"] {
  return bareSides(bare, set)
    .filter(({ share }) => share > 0)
    .map(({ side, share, depth }) => {
      const along = side === "top" || side === "bottom" ? pixels?.height : pixels?.width;
      const known = side !== "within" && along !== undefined;
      return { side, share, depth, pixels: known ? depth * along : null };
    });
}

function subjectOf({ scene }: Plan, lens: Lens): Frame["subject"] {
  const subject = firstSubject(scene);
  if (subject === null) return null;
  const top = frameTop(lens, subject);
  const limit = handLimit(lens, scene, subject);
  return {
    name: subject.name === "" ? null : subject.name,
    framing: framingOf(lens, scene, subject),
    height: subjectHeight(lens, scene, subject),
    area: shareOf(subjectInPicture(lens, scene, subject)),
    above_head: top === null ? null : top - subject.top,
    hand_limit: limit?.height ?? null,
    hand_limit_by: limit === null ? null : (limit.piece ?? limit.by),
  };
}

const inMillimetres = ({ circle, near, far, hyperfocal }: SharpRange) => ({
  circle: circle * 1000,
  near,
  far,
  hyperfocal,
});

/** Sharpness of the report; null where aperture, focal length or focus are not known. */
export function reportSharpness(plan: Plan): Report["sharpness"] {
  const optics = opticsOf(plan.scene);
  if (typeof optics === "string") return null;
  const { camera } = optics;
  const pitch = pixelPitch(camera);
  const airy = airyOf(optics);
  return {
    circle: inMillimetres(sharpRange(optics, camera.circleOfConfusion)),
    two_pixels: pitch === null ? null : inMillimetres(sharpRange(optics, 2 * pitch)),
    airy: airy * 1000,
    airy_pixels: pitch === null ? null : airy / pitch,
    points: pointsOf(plan, optics, pitch),
  };
}

/** Faces and the recipe's own points in the picture. */
function pointsOf(
  { scene, recipe }: Plan,
  optics: Optics,
  pitch: number | null,
): NonNullable<Report["sharpness"]>["points"] {
  const face = (subject: SceneSubject) => ({ name: partName(scene, subject, "face"), at: subject.face });
  const own = [
    ...recipe.points.map((point) => point.name ?? "point"),
    ...scene.subjects.flatMap((subject, i) =>
      (recipe.subjects[i]?.parts ?? []).map((point) => partName(scene, subject, point.name ?? "point")),
    ),
  ];
  const points = [
    ...scene.subjects.map(face),
    ...own.flatMap((name) => {
      const place = scene.landmarks.get(name);
      return place === undefined ? [] : [{ name, at: place.at }];
    }),
  ];
  return points.flatMap(({ name, at }) => {
    const blur = inFrame(optics.camera, at) ? blurOf(optics, at) : null;
    if (blur === null) return [];
    return [
      {
        name,
        depth: dot(subtract(at, optics.camera.at), optics.camera.forward),
        blur: blur * 1000,
        pixels: pitch === null ? null : blur / pitch,
        sharp: blur <= optics.camera.circleOfConfusion * (1 + 1e-9) ? "yes" : "no",
      } as const,
    ];
  });
}
