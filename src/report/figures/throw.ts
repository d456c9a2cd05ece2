import type { Vec3 } from "../../core/vector.js";
import { distance, normalise } from "../../math/vector.js";
import type { Scene, Source } from "../../scene/types.js";
import { bodyOwner, PERSON } from "../../transport/bounce/surfaces.js";
import { alongFloor, elevationOf } from "../geometry/directions.js";
import { floorShadow } from "../light/floor-shadow.js";
import { faceWords, firstSubject, type Plan } from "../plan.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { area, type Drawing, line, type Mark, type Place, type TapeMark } from "./drawing.js";
import { onSheet, openingOutline, type Sheet } from "./outlines.js";
import { bodyMarks, lampMarks } from "./pieces.js";
import type { LooseLabel } from "./settle.js";
import { framedDrawing, usualLetters } from "./sheet.js";

/** How far a shadow is drawn, m beyond the subject. */
const SHADOW = 6;

/**
 * The throw of a light: the upright sheet through the first subject and the lamp, the lamp on the left. It shows how steeply the
 * light comes down at the face and at the feet, where the shadow ends, and what room is left under the ceiling.
 * Null without a subject, and for a lamp straight above it.
 */
export function throwDrawing(plan: Plan, source: Source): Drawing | null {
  const { scene } = plan;
  const subject = firstSubject(scene);
  if (subject === null) return null;
  const { place, face, pose } = subject;
  const centre = source.patch?.centre ?? source.centre;
  const right = normalise([place[0] - centre[0], place[1] - centre[1], 0]);
  if (right === undefined) return null;
  const sheet: Sheet = { zero: place, right, up: [0, 0, 1] };
  const at = (point: Vec3): Place => onSheet(sheet, point);
  const lamp = at(centre);
  const { length: long } = floorShadow(scene, source);
  const drawn = Math.min(long ?? SHADOW, SHADOW);
  const open = long === null || long > SHADOW;
  const tip: Place = open ? [drawn, heightAt(lamp, subject.top, drawn)] : [drawn, 0];
  const from = Math.min(lamp[0] - 0.6, ...openingOutline(sheet, source).map(([x]) => x - 0.2));
  const to = Math.max(drawn, 0.8) + 0.3;
  const marks: Mark[] = [
    line("wall", "floor", [from, 0], [to, 0]),
    ...(scene.room === null
      ? []
      : [line("wall", "ceiling", [from, scene.room.height], [to, scene.room.height])]),
    area("shadow", "shadow on the floor", [
      [0, 0],
      [drawn, 0],
      [drawn, -0.04],
      [0, -0.04],
    ]),
    line("beam", "to the top of the head", lamp, tip),
    line("beam", "to the feet", lamp, [0, 0]),
    ...bodyMarks(sheet, { bodies: bodiesOf(scene, subject.name) }, [0, 0, 1]),
    line("beam", "to the face", lamp, at(face)),
    ...lampMarks(sheet, source),
  ];
  const tapes: TapeMark[] = [
    { kind: "tape", from: [lamp[0], 0], to: lamp, text: sayLength(lamp[1]), beside: 0 },
    { kind: "tape", from: [lamp[0], 0], to: [0, 0], text: sayLength(alongFloor(centre, place)), beside: 0 },
  ];
  if (scene.room !== null && scene.room.height > lamp[1]) {
    const gap = sayLength(scene.room.height - lamp[1]);
    tapes.push({ kind: "tape", from: lamp, to: [lamp[0], scene.room.height], text: gap, beside: 0 });
  }
  const slant = sayLength(distance(centre, face));
  const loose: LooseLabel[] = [
    { text: source.name, near: lamp, away: 0.14, weight: "strong" },
    {
      text: `${faceWords(scene)}: ${sayAngle(elevationOf(face, centre))} up, slant ${slant}`,
      near: at(face),
      away: 0.2,
      weight: "plain",
    },
    {
      text: `${pose === "standing" ? "feet" : "floor"}: ${sayAngle(elevationOf(place, centre))} up`,
      near: [0, 0.06],
      away: 0.3,
      weight: "plain",
    },
    {
      text:
        long === null
          ? "the shadow has no end on the floor"
          : open
            ? `the shadow ends ${sayLength(long)} behind`
            : `shadow ${sayLength(long)}`,
      near: [drawn, 0],
      away: 0.12,
      weight: "plain",
    },
  ];
  return framedDrawing({
    title: `Throw of ${source.name}: ${plan.recipe.title}`,
    description: `${loose.map(({ text }) => text).join("; ")}.`,
    notes: [
      "The upright sheet through the first subject's place and the lamp; walls and set stop shadows and are left out here.",
    ],
    marks: [...marks, ...tapes],
    loose,
    dimensions: null,
    letters: usualLetters,
  });
}

/** The bodies of the subject of that name. */
const bodiesOf = ({ bodies }: Scene, name: string): Scene["bodies"] =>
  bodies.filter((body) => [PERSON, name].includes(bodyOwner(body.name)));

/** Height above the floor of the line from the lamp over a height at 0. */
function heightAt([x, z]: Place, top: number, beyond: number): number {
  return Math.max(0, top + ((top - z) * beyond) / (0 - x));
}
