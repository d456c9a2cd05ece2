import type { Vec3 } from "../../core/vector.js";
import { alongFloor } from "../geometry/directions.js";
import { lightsOf, type Plan } from "../plan.js";
import { sayLength } from "../say/quantity.js";
import { setupSentences } from "../setup.js";
import { pictureEdges } from "./camera-wedge.js";
import type { Drawing, Mark, Place, TapeMark } from "./drawing.js";
import { lensMark } from "./lens.js";
import { fromRight, onSheet } from "./outlines.js";
import { bodyMarks, lampMarks, setMarks } from "./pieces.js";
import { roomSide } from "./room-section.js";
import type { LooseLabel } from "./settle.js";
import { framedDrawing, usualLetters } from "./sheet.js";
import { standMarks } from "./stands.js";

/**
 * The set-up from camera-right, all of it laid on one upright sheet: floor and ceiling, set, people, lamps with their
 * heights, and what the lens takes in from its lower to its upper edge.
 */
export function sideDrawing(plan: Plan, letters: number = usualLetters): Drawing {
  const { scene } = plan;
  const sheet = fromRight;
  const { camera, room } = scene;
  const marks: Mark[] = [...roomSide(scene)];
  marks.push(
    ...setMarks(sheet, scene),
    ...pictureEdges(sheet, scene, "top and bottom"),
    ...standMarks(sheet, scene),
    ...bodyMarks(sheet, scene, [1, 0, 0]),
  );
  for (const source of scene.sources) marks.push(...lampMarks(sheet, source));
  const loose: LooseLabel[] = [];
  const tapes: TapeMark[] = [];
  for (const lamp of lightsOf(scene)) {
    const at = onSheet(sheet, lamp.centre);
    loose.push({ text: lamp.name, near: at, away: 0.12, weight: "strong" });
    tapes.push(upTo(at));
    if (room !== null && lamp.centre[2] < room.height)
      tapes.push({
        kind: "tape",
        from: at,
        to: [at[0], room.height],
        text: sayLength(room.height - at[1]),
        beside: 0,
      });
  }
  if (camera !== null) {
    const at = onSheet(sheet, camera.at);
    marks.push(lensMark(at));
    loose.push({ text: "lens", near: at, away: 0.12, weight: "strong" });
    tapes.push(upTo(at), {
      kind: "tape",
      from: [at[0], 0],
      to: [0, 0],
      text: sayLength(alongFloor([0, 0, 0] as Vec3, camera.at)),
      beside: 0,
    });
  }
  for (const subject of scene.subjects) {
    const at = onSheet(sheet, subject.face);
    loose.push({
      text: `${subject.name === "" ? "face" : subject.name}, ${sayLength(at[1])} up`,
      near: at,
      away: 0.16,
      weight: "plain",
    });
  }
  return framedDrawing({
    title: `Side: ${plan.recipe.title}`,
    description: setupSentences(plan).join(" "),
    notes: [
      "Seen from camera-right, the camera's side on the left; all is laid on one sheet, whatever its distance.",
      ...(camera === null
        ? []
        : ["The tape along the floor is the true length from the mark to below the lens."]),
    ],
    marks: [...marks, ...tapes],
    loose,
    dimensions:
      room === null
        ? null
        : { left: room.front, right: room.back, low: 0, high: room.height, zero: [0, 0] as Place },
    letters,
  });
}

/** The height of a place above the floor. */
function upTo(at: Place): TapeMark {
  return { kind: "tape", from: [at[0], 0], to: at, text: sayLength(at[1]), beside: 0 };
}
