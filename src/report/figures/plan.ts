import type { Vec3 } from "../../core/vector.js";
import type { Source } from "../../scene/types.js";
import { alongFloor, bearingOf } from "../geometry/directions.js";
import type { Plan } from "../plan.js";
import { sayBearing } from "../say/bearing.js";
import { fixed } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import type { Report } from "../schema/report.js";
import { setupSentences } from "../setup.js";
import { pictureEdges } from "./camera-wedge.js";
import { type Drawing, line, type Mark, type Place, type TapeMark } from "./drawing.js";
import { lensMark } from "./lens.js";
import { fromAbove, onSheet } from "./outlines.js";
import { bodyMarks, lampMarks, setMarks } from "./pieces.js";
import { wallMarks } from "./room-section.js";
import type { LooseLabel } from "./settle.js";
import { floorShadows, shadowsNear } from "./shadow-marks.js";
import { framedDrawing, usualLetters } from "./sheet.js";
import { standMarks } from "./stands.js";

const MARK: Vec3 = [0, 0, 0];
/** Half the length of the strokes of a cross, m. */
const CROSS = 0.09;

/** The set-up from above: room, set, marks, lamps with where they look, what the lens takes in, and the tapes. */
export function planDrawing(plan: Plan, thrown: Report["thrown"], letters: number = usualLetters): Drawing {
  const { scene } = plan;
  const sheet = fromAbove;
  const lamps = scene.sources;
  const { camera, room } = scene;
  const below: readonly Mark[] = [...wallMarks(scene), ...setMarks(sheet, scene)];
  const above: readonly Mark[] = [
    ...pictureEdges(sheet, scene, "left and right"),
    ...standMarks(sheet, scene),
    ...bodyMarks(sheet, scene, [0, 0, 1]),
  ];
  const whole = floorShadows(thrown);
  const places = lamps.map(({ centre }) => onSheet(sheet, centre));
  const shadows = shadowsNear(whole, [...below, ...above, line("tape", "lamps", ...places)]);
  const cut = shadows.some((shadow) => !whole.some(({ outline }) => sameOutline(outline, shadow.outline)));
  const beyond = cut ? "; they go on beyond the figure" : "";
  const shadowWords = shadows.length === 0 ? "" : ` Grey on the floor: people's shadows${beyond}.`;
  const marks: Mark[] = [...below, ...shadows, ...above];
  marks.push(...crossMarks());
  for (const lamp of lamps) marks.push(...lampMarks(sheet, lamp));
  const loose: LooseLabel[] = [{ text: "mark", near: [0, 0], away: CROSS, weight: "plain" }];
  const tapes: TapeMark[] = [];
  for (const lamp of lamps.filter((source) => source.spillOf === undefined)) {
    loose.push({
      text: `${lamp.name}, ${sayLength(lamp.centre[2])} up`,
      near: onSheet(sheet, lamp.centre),
      away: 0.12,
      weight: "strong",
    });
    tapes.push(...lampTapes(lamp, camera === null ? null : camera.at));
  }
  for (const name of namesOfSet(plan)) loose.push(name);
  if (camera !== null) {
    marks.push(lensMark(onSheet(sheet, camera.at)));
    loose.push({
      text: `lens, ${sayLength(camera.at[2])} up`,
      near: onSheet(sheet, camera.at),
      away: 0.12,
      weight: "strong",
    });
    tapes.push({
      kind: "tape",
      from: [0, 0],
      to: onSheet(sheet, camera.at),
      text: sayLength(alongFloor(MARK, camera.at)),
      beside: 0,
    });
  }
  return framedDrawing({
    title: `Plan: ${plan.recipe.title}`,
    description: setupSentences(plan).join(" "),
    notes: [
      `Seen from above, the camera's side at the bottom. Tapes run along the floor; angles are at the mark, from the way to the camera's side.${shadowWords}`,
      ...(room === null ? [] : ["Walls are cut at 1.20 m."]),
    ],
    marks: [...marks, ...tapes],
    loose,
    dimensions: room === null ? null : { ...room, low: room.front, high: room.back, zero: [0, 0] },
    letters,
  });
}

const sameOutline = (a: readonly Place[], b: readonly Place[]): boolean =>
  a.length === b.length && a.every(([x, y], i) => x === b[i]?.[0] && y === b[i]?.[1]);

const angle = (degrees: number): string => `${fixed(degrees, Math.abs(degrees % 1) < 0.05 ? 0 : 1)} deg`;

/** Both tapes to the place under a lamp: from the subject's mark, and from below the lens. */
function lampTapes({ centre }: Source, lens: Vec3 | null): readonly TapeMark[] {
  const side = bearingOf(MARK, centre);
  const bearing = side === null || Math.abs(side) < 0.05 ? "" : `, ${sayBearing(side, angle, "")}`;
  const to: Place = [centre[0], centre[1]];
  const away = alongFloor(MARK, centre);
  const first: TapeMark = {
    kind: "tape",
    from: [0, 0],
    to,
    text: `${sayLength(away)}${bearing}`,
    beside: 0,
  };
  if (lens === null) return away > 0.05 ? [first] : [];
  const second: TapeMark = {
    kind: "tape",
    from: [lens[0], lens[1]],
    to,
    text: sayLength(alongFloor(lens, centre)),
    beside: 0,
  };
  return away > 0.05 ? [first, second] : [second];
}

const crossMarks = (): readonly Mark[] => [
  line("ground", "mark", [-CROSS, 0], [CROSS, 0]),
  line("ground", "mark", [0, -CROSS], [0, CROSS]),
];

/** Names beside the middle of each piece of the set. */
function namesOfSet({ scene, recipe }: Plan): readonly LooseLabel[] {
  return (recipe.set?.parts ?? []).flatMap((piece) => {
    const { name } = piece;
    const place = name === null ? undefined : scene.landmarks.get(name);
    if (name === null || place === undefined) return [];
    return [{ text: name, near: onSheet(fromAbove, place.at), away: 0.08, weight: "plain" as const }];
  });
}
