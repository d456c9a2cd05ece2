import { about } from "./blocks/about.js";
import { camera, meter } from "./blocks/camera.js";
import { intent } from "./blocks/intent.js";
import { gel, light, modifier, stand } from "./blocks/light.js";
import { ceiling, floor, opening, room, wall, walls } from "./blocks/room.js";
import { box, capsule, card, disc, flat, panel, paper, scrim, set, sphere, table } from "./blocks/set.js";
import { silence } from "./blocks/silence.js";
import { point, subject } from "./blocks/subject.js";
import { thresholds } from "./blocks/thresholds.js";
import { tolerances } from "./blocks/tolerances.js";
import type { BlockRow } from "./property.js";

/** Every kind of block, by kind. The key and the row's `kind` are the same word. */
export const blocks = {
  about,
  room,
  walls,
  wall,
  ceiling,
  floor,
  opening,
  set,
  flat,
  paper,
  card,
  scrim,
  table,
  box,
  sphere,
  capsule,
  disc,
  panel,
  subject,
  point,
  light,
  stand,
  modifier,
  gel,
  camera,
  meter,
  intent,
  tolerances,
  thresholds,
  silence,
} as const satisfies Record<string, BlockRow>;

/** The name of a kind of block. */
export type BlockKind = keyof typeof blocks;

/** Kinds that stand by themselves in a recipe, in the order in which the formatter of a made recipe writes them. */
export const topKinds = [
  "about",
  "room",
  "set",
  "subject",
  "point",
  "light",
  "camera",
  "meter",
  "intent",
  "tolerances",
  "thresholds",
  "silence",
] as const satisfies readonly BlockKind[];

/** Kinds that may be defined for use with `like` or `with`. */
export const definableKinds = [
  "light",
  "modifier",
  "gel",
  "camera",
  "room",
  "subject",
  "flat",
  "paper",
  "card",
  "scrim",
  "table",
  "box",
  "sphere",
  "capsule",
  "disc",
  "panel",
  "meter",
  "stand",
] as const satisfies readonly BlockKind[];

/** The row of a kind of block, or null for a word that is none. */
export function blockRow(kind: string): BlockRow | null {
  return Object.hasOwn(blocks, kind) ? blocks[kind as BlockKind] : null;
}
