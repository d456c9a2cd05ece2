import type { BlockRow, PropertyRow } from "../property.js";

const reflectance = {
  name: "reflectance",
  type: "fraction",
  help: "Share of the light that comes back, or a surface by name.",
  example: "50 %",
  range: [0, 1],
} as const satisfies Omit<PropertyRow, "default">;

const colour = {
  name: "tint",
  type: "text",
  help: "The colour of the surface in a word, where it has one; a warning says where it colours a shade.",
  example: '"green"',
  default: "none: white, grey or black",
} as const satisfies PropertyRow;

const belongsTo = {
  name: "belongs_to",
  type: "word",
  words: ["room", "set"],
  help: "Whether the picture may show it: `set` for a surface that is the background or the ground of the picture.",
  example: "set",
  default: "room",
} as const satisfies PropertyRow;

/** The row of `room`. */
export const room = {
  kind: "room",
  help: "The room with its surfaces. Without it the surroundings are open and black.",
  named: "none",
  properties: [
    {
      name: "size",
      type: "volume",
      help: "Width (camera left to right), depth (along the camera line) and height.",
      example: "5 x 7 x 2.8 m",
      default: "needed",
      range: [0.5, 200],
    },
    {
      name: "mark",
      type: "mark",
      help: "Where the subject's mark lies: from the left or right wall, and from the back or front wall.",
      example: "from(left: 1.2 m, back: 70 cm)",
      default: "the middle of the room",
    },
    {
      name: "ambient",
      type: "illuminance",
      help: "Light of the room itself at the mark, measured with every light of the recipe off.",
      example: "300 lx",
      default: "0 lx",
      range: [0, 200_000],
      sure: true,
    },
    {
      name: "circuit",
      type: "watts",
      help: "What the circuit that feeds the lamps bears, as those who know the building say.",
      example: "2300 W",
      default: "not known",
      range: [1, 1_000_000],
      sure: true,
    },
  ],
  parts: ["walls", "wall", "ceiling", "floor", "opening"],
} as const satisfies BlockRow;

/** The row of `walls`. */
export const walls = {
  kind: "walls",
  help: "All four walls together.",
  named: "none",
  properties: [{ ...reflectance, default: "50 %" }, colour, belongsTo],
  parts: [],
} as const satisfies BlockRow;

/** The row of `wall`. */
export const wall = {
  kind: "wall",
  help: "One wall, as the camera sees it; it stands before `walls`.",
  named: "needed",
  names: ["left", "right", "back", "front"],
  properties: [{ ...reflectance, default: "as `walls`" }, colour, belongsTo],
  parts: [],
} as const satisfies BlockRow;

/** The row of `ceiling`. */
export const ceiling = {
  kind: "ceiling",
  help: "The ceiling.",
  named: "none",
  properties: [{ ...reflectance, default: "80 %" }, colour, belongsTo],
  parts: [],
} as const satisfies BlockRow;

/** The row of `floor`. */
export const floor = {
  kind: "floor",
  help: "The floor of the room.",
  named: "none",
  properties: [{ ...reflectance, default: "20 %" }, colour, belongsTo],
  parts: [],
} as const satisfies BlockRow;

/** The row of `opening`. */
export const opening = {
  kind: "opening",
  help: "A window or a door in a wall; it may have a light outside it.",
  named: "needed",
  properties: [
    {
      name: "wall",
      type: "word",
      words: ["left", "right", "back", "front"],
      help: "The wall it is in, as the camera sees it.",
      example: "left",
      default: "needed",
    },
    {
      name: "size",
      type: "rectangle",
      help: "Width x height.",
      example: "1.2 x 1.5 m",
      default: "needed",
      range: [0.01, 50],
    },
    {
      name: "at",
      type: "point",
      help: "The middle of its bottom edge.",
      example: "offset(left: 2 m, up: 90 cm)",
      default: "needed",
      from: "the subject's mark",
    },
  ],
  parts: [],
} as const satisfies BlockRow;
