import type { Vec3 } from "../../core/vector.js";
import { dot, subtract } from "../../math/vector.js";
import { bodiesOf, coverageOf, isSet } from "../frame/coverage.js";
import { bodyInPicture, type Lens, lensOf, polygonInPicture } from "../frame/project.js";
import type { Region, Place as Spot } from "../frame/region.js";
import { shareOf, union } from "../frame/region.js";
import { seamsOf } from "../frame/seams.js";
import { openingInPicture, type SeenThing, seenThings } from "../frame/seen.js";
import { lightsOf, type Plan } from "../plan.js";
import { list } from "../say/number.js";
import { sayLength, sayPercent } from "../say/quantity.js";
import { ownerOf } from "../say/surfaces.js";
import type { Report } from "../schema/report.js";
import { area, type Drawing, type Ink, line, type Mark, type Place } from "./drawing.js";
import type { LooseLabel } from "./settle.js";
import { shadowsInPicture } from "./shadow-marks.js";
import { framedDrawing, usualLetters } from "./sheet.js";

/** What is drawn round the picture, in halves of the frame. */
const MARGIN = 0.12;
/** Lines that hatch what is bare, across the picture's width. */
const HATCH = 44;

/**
 * The picture as the lens sees it, in outlines: set, people, folds and edges, what is bare hatched, and what shows that
 * is neither. Drawn in the metres of the plane that is in focus. A text where there is no picture.
 */
export function frameDrawing(plan: Plan, thrown: Report["thrown"]): Drawing | string {
  const { scene, recipe } = plan;
  const { camera } = scene;
  if (camera === null) return "There is no camera.";
  const lens = lensOf(camera);
  if (lens === null) return "The camera's focal length is not known.";
  const focus = camera.focus === null ? 1 : dot(subtract(camera.focus, camera.at), camera.forward);
  const wide = focus / lens.across;
  const high = focus / lens.up;
  const put = ([x, y]: Spot): Place => [x * wide, y * high];
  const ring = (x: number, y: number): readonly Place[] =>
    (
      [
        [-x, -y],
        [x, -y],
        [x, y],
        [-x, y],
      ] as const
    ).map(put);
  const drawn = (ink: Ink, name: string, region: Region): readonly Mark[] =>
    region.map((part) => area(ink, name, part.map(put)));
  const things = seenThings(scene, recipe);
  const marks: Mark[] = [...byDepth(plan, lens, thrown, things, put, drawn)];
  const cover = coverageOf(scene);
  const bare = typeof cover === "string" ? [] : cover.bare;
  marks.push(...hatched(bare).map(([a, b]) => line("missing", "bare", put(a), put(b))));
  for (const { name, from, to } of seamsOf(scene)) marks.push(line("contour", name, put(from), put(to)));
  marks.push(area("frame", "the picture", ring(1, 1)));
  const loose: LooseLabel[] = things.map(({ name, box }) => ({
    text: name,
    near: put([(box.left + box.right) / 2, (box.bottom + box.top) / 2]),
    away: 0.04 * high,
    weight: "strong",
  }));
  const open = shareOf(bare);
  const covered =
    typeof cover === "string"
      ? `How much of it the set covers has no value: ${cover}.`
      : open > 0
        ? `Set and people cover ${sayPercent(1 - open)} of it; what is hatched is bare.`
        : "Set and people cover all of it.";
  const seen = things.length === 0 ? "" : ` Also in it: ${list(things.map(({ name }) => name))}.`;
  return framedDrawing({
    title: `Frame: ${recipe.title}`,
    description: `The picture through the lens. ${covered}${seen}`,
    notes: [
      covered,
      `To scale in the plane of focus, ${sayLength(focus)} from the lens: ${sayLength(2 * wide)} by ${sayLength(2 * high)}.`,
    ],
    marks,
    loose,
    dimensions: null,
    letters: usualLetters,
  });
}

/**
 * Set, people, lamps and what carries them, the farthest first, so that what stands before a thing is drawn over it. A sheet
 * is as far as its farthest corner: the floor part of a paper lies behind who stands on it. Shadows come before the
 * farthest person, on the set behind.
 */
function byDepth(
  { scene }: Plan,
  lens: Lens,
  thrown: Report["thrown"],
  things: readonly SeenThing[],
  put: (spot: Spot) => Place,
  drawn: (ink: Ink, name: string, region: Region) => readonly Mark[],
): readonly Mark[] {
  const { camera } = lens;
  const depthOf = (point: Vec3): number => dot(subtract(point, camera.at), camera.forward);
  const shows = (kind: SeenThing["kind"], name: string): boolean =>
    things.some((row) => row.kind === kind && row.name === name);
  const rows: { readonly depth: number; readonly marks: readonly Mark[] }[] = [];
  for (const polygon of scene.polygons) {
    if (!isSet(polygon)) continue;
    const region = polygonInPicture(lens, polygon.vertices, MARGIN);
    const ink = polygon.kind === "paper" ? "paper" : "set";
    const depth = Math.max(...polygon.vertices.map(depthOf));
    rows.push({ depth, marks: drawn(ink, ownerOf(polygon.name), region) });
  }
  const farthest = Math.max(0, ...scene.subjects.map(({ place }) => depthOf(place)));
  rows.push({ depth: farthest, marks: shadowsInPicture(lens, thrown, MARGIN, put) });
  for (const body of scene.bodies) {
    if (body.of === "subject") continue;
    const depth =
      body.kind === "capsule" ? (depthOf(body.from) + depthOf(body.to)) / 2 : depthOf(body.centre);
    const carries = body.of === "stand";
    const owner = body.name.replace(/ (?:boom|stand)$/, "");
    if (carries && !shows("stand", owner) && !shows("boom", owner)) continue;
    rows.push({
      depth,
      marks: drawn(carries ? "tube" : "set", body.name, bodyInPicture(lens, body, MARGIN)),
    });
  }
  for (const subject of scene.subjects) {
    const parts = bodiesOf(scene, subject).map((body) => bodyInPicture(lens, body, MARGIN));
    const name = subject.name === "" ? "person" : subject.name;
    rows.push({ depth: depthOf(subject.place), marks: drawn("person", name, union(...parts)) });
  }
  for (const source of lightsOf(scene)) {
    if (shows("lamp", source.name))
      rows.push({
        depth: depthOf(source.centre),
        marks: drawn("lamp", source.name, openingInPicture(lens, source, MARGIN)),
      });
  }
  // The order of those equally far stays: the order above.
  return rows.sort((a, b) => b.depth - a.depth).flatMap(({ marks }) => marks);
}

/** Slanted lines through a part of the picture, by the even-odd rule. */
function hatched(region: Region): readonly (readonly [Spot, Spot])[] {
  const lines: (readonly [Spot, Spot])[] = [];
  if (region.length === 0) return lines;
  for (let i = 0; i < HATCH; i++) {
    // The line x + y = c.
    const c = -2 + (4 * (i + 0.5)) / HATCH;
    const met = region.flatMap((part) => crossings(part, c)).sort((a, b) => a - b);
    for (let k = 0; k + 1 < met.length; k += 2) {
      const a = met[k] as number;
      const b = met[k + 1] as number;
      lines.push([
        [a, c - a],
        [b, c - b],
      ]);
    }
  }
  return lines;
}

/** Where the sides of a ring meet the line x + y = c: their x. */
function crossings(ring: readonly Spot[], c: number): readonly number[] {
  return ring.flatMap(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length] as Spot;
    const a = ax + ay - c;
    const b = bx + by - c;
    return a > 0 === b > 0 ? [] : [ax + ((bx - ax) * a) / (a - b)];
  });
}
