import type { Vec3 } from "../../core/vector.js";
import { add, distance, scale, subtract } from "../../math/vector.js";
import type { Recipe, RoomModel } from "../../model/types.js";
import { lampName } from "../../scene/lit/seen.js";
import type { SceneRoom, Source } from "../../scene/types.js";
import { headAt } from "../change/head-behind-cloth.js";
import { moveTo, withSource } from "../change/move-source.js";
import { alongFloor, elevationOf } from "../geometry/directions.js";
import { firstFace, type Plan } from "../plan.js";
import { startWithHead } from "../say/light.js";
import { floorTo } from "../say/number.js";
import { sayAngle, sayCentimetres, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { faceChange } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule, RuleFinding } from "./rule.js";

type Wall = "left" | "right" | "front" | "back";

/** Free floor from a place to each wall, m; negative outside. */
export function freeFloor(room: SceneRoom, at: Vec3): readonly (readonly [wall: Wall, free: number])[] {
  return [
    ["left", at[0] - room.left],
    ["right", room.right - at[0]],
    ["front", at[1] - room.front],
    ["back", room.back - at[1]],
  ];
}

/** Whether a wall has a window or door, through which a lamp may shine from outside. */
function hasOpening(room: RoomModel | null, wall: Wall): boolean {
  return room?.parts.some((part) => part.block === "opening" && part.wall === wall) ?? false;
}

/** The share (0 to 1) of the way from the mark to a place at which the free floor is still kept; 0 where nowhere. */
function shareInside(room: SceneRoom, at: Vec3, needed: number): number {
  let share = 1;
  const here = freeFloor(room, at);
  freeFloor(room, [0, 0, 0]).forEach(([, atMark], i) => {
    const there = here[i]?.[1] ?? atMark;
    if (there >= needed) return;
    if (atMark <= needed) share = 0;
    else share = Math.min(share, (atMark - needed) / (atMark - there));
  });
  return share;
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
    return `Bring it to ${sayLength(away)} from ${light.cloth.scrim} instead of ${sayLength(now)}${powerWords(plan.scene, head, -faceChange(plan, there))}.`;
  }
  return none;
}

function remedyFor(plan: Plan, room: SceneRoom, index: number, source: Source, needed: number): string {
  if (source.spillOf !== undefined) return nearerCloth(plan, room, source, needed);
  const share = shareInside(room, source.centre, needed);
  const level = alongFloor([0, 0, 0], source.centre);
  const away = floorTo(share * level, 0.01);
  if (!(away > 0.3)) return "There is no place for it on this line: choose another bearing or move the mark.";
  const k = away / level;
  const moved = moveTo(source, [source.centre[0] * k, source.centre[1] * k, source.centre[2]]);
  const face = firstFace(plan.scene);
  const bring = `Bring it in to ${sayLength(away)} from the mark along the floor`;
  if (face === null) return `${bring}.`;
  const change = faceChange(plan, withSource(plan, index, moved));
  const power = powerWords(plan.scene, source, -change);
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
