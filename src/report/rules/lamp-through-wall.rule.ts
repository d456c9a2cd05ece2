import type { Vec3 } from "../../core/vector.js";
import { add, distance, scale, subtract } from "../../math/vector.js";
import type { Recipe } from "../../model/types.js";
import { lampName } from "../../scene/lit/seen.js";
import type { SceneRoom, Source } from "../../scene/types.js";
import { headAt } from "../change/head-behind-cloth.js";
import { moveTo, withSource } from "../change/move-source.js";
import { alongFloor, bearingOf, elevationOf, pointAt } from "../geometry/directions.js";
import { hasOpening, type WallSide } from "../geometry/openings.js";
import { faceName, faceWords, firstFace, type Plan } from "../plan.js";
import { startWithHead } from "../say/light.js";
import { floorTo } from "../say/number.js";
import { sayAngle, sayCentimetres, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { powerWords } from "./power-words.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Free floor from a place to each wall, m; negative outside. */
export function freeFloor(room: SceneRoom, at: Vec3): readonly (readonly [wall: WallSide, free: number])[] {
  return [
    ["left", at[0] - room.left],
    ["right", room.right - at[0]],
    ["front", at[1] - room.front],
    ["back", room.back - at[1]],
  ];
}

/** The share (0 to 1) of the way from a place to another at which the free floor is still kept; 0 where nowhere. */
function shareInside(room: SceneRoom, from: Vec3, to: Vec3, needed: number): number {
  let share = 1;
  const there = freeFloor(room, to);
  freeFloor(room, from).forEach(([, atStart], i) => {
    const atEnd = there[i]?.[1] ?? atStart;
    if (atEnd >= needed) return;
    if (atStart <= needed) share = 0;
    else share = Math.min(share, (atStart - needed) / (atStart - atEnd));
  });
  return share;
}

/** The line on which a lamp is brought in: where it starts, a far end of it, and both in words. */
interface Line {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly said: string;
  /** The side angle, where it is not the one that the recipe has; else empty. */
  readonly turned: string;
}

/**
 * The line from the face, where the lamp's own bearing is taken there and so stays as it is; else from the mark, with the
 * bearing that the lamp has from there, to a degree, where its own is taken elsewhere.
 */
function lineOf({ scene, recipe }: Plan, source: Source): Line {
  const light = recipe.lights.find(({ name }) => name === lampName(source));
  const tape = light?.distance ?? light?.floor_distance;
  const face = firstFace(scene);
  const to = source.centre;
  if (face !== null && tape !== undefined && light?.position === undefined) {
    const { from } = tape;
    const isNamed = from?.kind === "named" && from.path.join(".") === faceName(scene);
    const isPlain = from === null && light?.distance !== undefined && light.aim === undefined;
    if (isNamed || isPlain) return { from: face, to, said: faceWords(scene), turned: "" };
  }
  const line: Line = { from: [0, 0, 0], to, said: "the mark", turned: "" };
  const bearing = bearingOf(line.from, to);
  const isElsewhere = light?.distance !== undefined || (tape?.from ?? null) !== null;
  if (bearing === null || light?.position !== undefined || !isElsewhere) return line;
  const whole = Math.round(bearing);
  const side = whole < 0 ? "left" : "right";
  return {
    ...line,
    to: pointAt(line.from, whole, alongFloor(line.from, to), to[2]),
    turned: ` at ${side}(${sayAngle(Math.abs(whole))})`,
  };
}

/** No head is brought nearer to its cloth than this, m. */
const NEAREST = 0.3;
const STEP = 0.01;

/** The head behind a cloth brought nearer to it, on the line on which it stands, until it has its floor. */
function nearerCloth(plan: Plan, room: SceneRoom, head: Source, needed: number): string {
  const none = "There is no floor for it behind the cloth: hang the cloth further in, or shift the mark.";
  const light = plan.scene.sources.find(({ name }) => name === head.spillOf);
  if (light?.cloth === undefined) return none;
  const now = distance(head.centre, light.centre);
  const way = scale(subtract(head.centre, light.centre), 1 / now);
  for (let away = floorTo(now, STEP); away >= NEAREST; away = Number((away - STEP).toFixed(2))) {
    const at = add(light.centre, scale(way, away));
    if (freeFloor(room, at).some(([, free]) => free < needed)) continue;
    const there = headAt(plan, light.name, light.centre, way, away);
    return `Bring it to ${sayLength(away)} from ${light.cloth.scrim} instead of ${sayLength(now)}${powerWords(plan, there, head)}.`;
  }
  return none;
}

function remedyFor(plan: Plan, room: SceneRoom, index: number, source: Source, needed: number): string {
  if (source.spillOf !== undefined) return nearerCloth(plan, room, source, needed);
  const { from, to, said, turned } = lineOf(plan, source);
  const share = shareInside(room, from, to, needed);
  const level = alongFloor(from, to);
  const away = floorTo(share * level, 0.01);
  if (!(away > 0.3)) return "There is no place for it on this line: choose another bearing or move the mark.";
  const k = away / level;
  const [x, y] = from;
  const moved = moveTo(source, [x + (to[0] - x) * k, y + (to[1] - y) * k, to[2]]);
  const face = firstFace(plan.scene);
  const bring = `Bring it in to ${sayLength(away)} from ${said} along the floor${turned}`;
  if (face === null) return `${bring}.`;
  const power = powerWords(plan, withSource(plan, index, moved), source);
  if (source.patch !== undefined) return `${bring}, at the same height${power}.`;
  return `${bring}, at the same height: it then stands at ${sayAngle(elevationOf(face, moved.centre))} to the face${power}.`;
}

/** The radius of the feet of a lamp's stand where the recipe says it, m. */
function feetOf(recipe: Recipe, source: Source): number | null {
  const light = recipe.lights.find((row) => row.name === lampName(source));
  return light?.parts.find((part) => part.block === "stand")?.feet?.value ?? null;
}

/** The lamp, or the feet of its stand, have no floor in the room. */
export const lampThroughWall: Rule = {
  code: "lamp-through-wall",
  thresholds: ["stand_feet"],
  safety: false,
  page: {
    when: "A lamp is outside the room, or nearer to a wall than the `feet` of its stand reach, `stand_feet` (50 cm) where the recipe does not say them. On a boom only the lamp itself counts. A wall with an `opening` lets a lamp stand outside.",
    means: "There is no floor for the stand: the throw is longer than the room.",
    todo: "Shorten the throw, turn the set in the room, or shift the mark. Nearer, the light is larger, steeper and falls off more.",
    source: "Geometry; the floor of a stand is common practice, no source.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const { room } = scene;
    if (room === null) return [];
    return scene.sources.flatMap((source, index): RuleFinding[] => {
      // A cloth hangs where it is hung; its head stands on the stand.
      const hangs = source.cloth !== undefined || (source.stand?.boom ?? null) !== null;
      const needed = hangs ? 0 : (feetOf(recipe, source) ?? threshold(recipe, "stand_feet"));
      const [wall, free] = [...freeFloor(room, source.centre)].sort((a, b) => a[1] - b[1])[0] ?? [
        "left",
        needed,
      ];
      if (free >= needed - 1e-9 || hasOpening(recipe.room, wall)) return [];
      const message =
        free < 0
          ? `${startWithHead(source)} stands ${sayCentimetres(-free)} beyond the ${wall} wall.`
          : `${startWithHead(source)} stands ${sayCentimetres(free)} from the ${wall} wall; its stand needs ${sayCentimetres(needed)} of floor.`;
      return [
        {
          severity: "stop",
          message,
          remedy: remedyFor(plan, room, index, source, needed),
          about: lampName(source),
        },
      ];
    });
  },
};
