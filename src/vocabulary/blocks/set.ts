import type { BlockRow, PropertyRow } from "../property.js";

const at = (help: string) =>
  ({
    name: "at",
    type: "point",
    help,
    example: "offset(behind: 60 cm)",
    default: "needed",
    from: "the subject's mark",
  }) as const satisfies PropertyRow;

const faces = {
  name: "faces",
  type: "direction",
  help: "The point or side its front looks at.",
  example: "face",
  default: "the camera's side (-y)",
} as const satisfies PropertyRow;

const front = {
  name: "front",
  type: "surface",
  help: "The front: a surface by name, or its reflectance.",
  example: "white_board",
  default: "as `reflectance`, else white board",
} as const satisfies PropertyRow;

const back = {
  name: "back",
  type: "surface",
  help: "The back.",
  example: "black_cloth",
  default: "as the front",
} as const satisfies PropertyRow;

const reflectance = {
  name: "reflectance",
  type: "surface",
  help: "Share of the light that comes back, or a surface by name.",
  example: "80 %",
  default: "85 %",
} as const satisfies PropertyRow;

const finish = {
  name: "finish",
  type: "word",
  words: ["matt", "glossy"],
  help: "Glossy: the report says what the lens sees mirrored; gloss is not in the stops.",
  example: "matt",
  default: "matt",
} as const satisfies PropertyRow;

const panelSize = {
  name: "size",
  type: "rectangle",
  help: "Width x height.",
  example: "1.2 x 2.4 m",
  default: "needed",
  range: [0.01, 50],
} as const satisfies PropertyRow;

/** The row of `set`. */
export const set = {
  kind: "set",
  help: "What stands and hangs round the subject: flats, paper, cards, scrims, furniture.",
  named: "none",
  properties: [],
  parts: ["flat", "paper", "card", "scrim", "table", "box", "sphere", "capsule", "disc", "panel"],
} as const satisfies BlockRow;

/** The row of `flat`. */
export const flat = {
  kind: "flat",
  help: "One upright leaf; two are joined by `hinge`.",
  named: "needed",
  properties: [
    panelSize,
    at("The middle of its bottom edge; not for a hinged one."),
    faces,
    {
      name: "hinge",
      type: "hinge",
      help: "The edge of another flat it is joined to, left and right as the camera sees them.",
      example: "left_edge(back)",
      default: "stands alone",
    },
    {
      name: "opening",
      type: "angle",
      help: "Inside angle between the two leaves on the camera's side.",
      example: "115 deg",
      default: "90 deg where there is a hinge",
      range: [10, 350],
    },
    {
      name: "secured",
      type: "word",
      words: ["weighed_down", "fixed", "no"],
      help: "What keeps it from falling.",
      example: "weighed_down",
      default: "not said, which a high flat is asked about",
    },
    {
      name: "thickness",
      type: "length",
      help: "Thickness of the leaf.",
      example: "25 mm",
      default: "20 mm",
      range: [0, 0.5],
    },
    front,
    back,
    reflectance,
    finish,
  ],
  parts: [],
} as const satisfies BlockRow;

/** The row of `paper`. */
export const paper = {
  kind: "paper",
  help: "A paper roll on the floor, with a sweep up behind if it hangs.",
  named: "needed",
  properties: [
    {
      name: "width",
      type: "length",
      help: "Width of the roll.",
      example: "2.72 m",
      default: "needed",
      range: [0.1, 30],
    },
    {
      name: "run",
      type: "length",
      help: "Length on the floor, from `at` towards the camera.",
      example: "4 m",
      default: "needed",
      range: [0, 60],
    },
    {
      name: "hangs",
      type: "length",
      help: "Height of the roll above the floor, where the paper hangs down behind.",
      example: "2.6 m",
      default: "does not hang: it only lies on the floor",
      range: [0.1, 20],
    },
    {
      name: "curve",
      type: "length",
      help: "Radius of the sweep between the hanging part and the floor.",
      example: "40 cm",
      default: "0 cm",
      range: [0, 5],
    },
    {
      name: "at",
      type: "point",
      help: "The middle of its back edge on the floor.",
      example: "offset(behind: 1.5 m)",
      default: "1 m behind the mark",
      from: "the subject's mark",
    },
    faces,
    reflectance,
    finish,
  ],
  parts: [],
} as const satisfies BlockRow;

/** The row of `card`. */
export const card = {
  kind: "card",
  help: "A loose board or cloth that gives light back or takes it away.",
  named: "needed",
  properties: [panelSize, at("Its centre."), faces, front, back, reflectance, finish],
  parts: [],
} as const satisfies BlockRow;

/** The row of `scrim`. */
export const scrim = {
  kind: "scrim",
  help: "A framed cloth that light goes through.",
  named: "needed",
  properties: [
    panelSize,
    at("Its centre."),
    faces,
    {
      name: "loses",
      type: "stops",
      help: "Loss on the way through.",
      example: "1.5 stop",
      default: "1 stop",
      range: [0, 10],
    },
    { ...reflectance, default: "40 %, less where more than half goes through" },
  ],
  parts: [],
} as const satisfies BlockRow;

/** The row of `table`. */
export const table = {
  kind: "table",
  help: "A table top at its height, for still life.",
  named: "needed",
  properties: [
    { ...panelSize, help: "Width x depth of the top.", example: "1.2 x 0.8 m" },
    {
      name: "height",
      type: "length",
      help: "Height of the top above the floor.",
      example: "80 cm",
      default: "75 cm",
      range: [0.01, 5],
    },
    at("The middle of the top, on the floor below it."),
    { ...reflectance, default: "50 %" },
  ],
  parts: [],
} as const satisfies BlockRow;

const bodyReflectance = { ...reflectance, default: "30 %" } as const;

/** The row of `box`. */
export const box = {
  kind: "box",
  help: "A box, upright.",
  named: "needed",
  properties: [
    {
      name: "size",
      type: "volume",
      help: "Width x depth x height.",
      example: "40 x 40 x 60 cm",
      default: "needed",
      range: [0.001, 50],
    },
    at("The middle of its bottom."),
    faces,
    bodyReflectance,
  ],
  parts: [],
} as const satisfies BlockRow;

/** The row of `sphere`. */
export const sphere = {
  kind: "sphere",
  help: "A sphere.",
  named: "needed",
  properties: [
    {
      name: "diameter",
      type: "length",
      help: "Its diameter.",
      example: "30 cm",
      default: "needed",
      range: [0.001, 20],
    },
    at("Its centre."),
    bodyReflectance,
  ],
  parts: [],
} as const satisfies BlockRow;

/** The row of `capsule`. */
export const capsule = {
  kind: "capsule",
  help: "An upright round post with rounded ends.",
  named: "needed",
  properties: [
    {
      name: "diameter",
      type: "length",
      help: "Its diameter.",
      example: "8 cm",
      default: "needed",
      range: [0.001, 20],
    },
    {
      name: "height",
      type: "length",
      help: "Its height, ends included.",
      example: "25 cm",
      default: "needed",
      range: [0.001, 20],
    },
    at("The middle of its foot."),
    bodyReflectance,
  ],
  parts: [],
} as const satisfies BlockRow;

/** The row of `disc`. */
export const disc = {
  kind: "disc",
  help: "A flat round disc.",
  named: "needed",
  properties: [
    {
      name: "diameter",
      type: "length",
      help: "Its diameter.",
      example: "60 cm",
      default: "needed",
      range: [0.001, 20],
    },
    at("Its centre."),
    faces,
    bodyReflectance,
  ],
  parts: [],
} as const satisfies BlockRow;

/** The row of `panel`. */
export const panel = {
  kind: "panel",
  help: "A free flat rectangle at any height and tilt.",
  named: "needed",
  properties: [panelSize, at("Its centre."), faces, front, back, bodyReflectance],
  parts: [],
} as const satisfies BlockRow;
