import { shadowResults } from "./shadow-results.js";

/** What an argument of a result may be. */
export type ArgumentType =
  | "length"
  | "angle"
  | "point"
  | "light"
  | "face"
  | "outline"
  | "reading"
  | "extent"
  | "surface-name"
  | "lights"
  | "side"
  | "frame-side";

/** The types that results have; a claim compares like with like. Mirrors `ResultType` of the model. */
export type ResultTypeName =
  | "angle"
  | "length"
  | "number"
  | "contrast"
  | "stops"
  | "f-number"
  | "exposure"
  | "ev"
  | "luminous-energy"
  | "colour-temperature"
  | "mired"
  | "truth";

/** What a recipe must have for some results to exist. `surface`: a set or a room. `light`: one that is on. */
export type ResultNeed = "subject" | "camera" | "set" | "surface" | "light";

/** One result that an expectation, a table column or a goal may ask for. */
export interface ResultRow {
  readonly name: string;
  /** What it is taken of: `key.angular_size` is of a light; a function is of nothing. */
  readonly of: "light" | "station" | "camera" | "nothing";
  readonly args: readonly {
    readonly name: string;
    readonly type: ArgumentType;
    readonly needed: boolean;
    /** May be repeated: a function of any number of readings. */
    readonly many?: boolean;
    /** What the recipe must have where this argument is left out. */
    readonly instead?: ResultNeed;
  }[];
  readonly type: ResultTypeName;
  readonly help: string;
  readonly example: string;
  /** What the recipe must have for it; nothing where left out. */
  readonly needs?: readonly ResultNeed[];
  /** True where a light that is off has no such result. */
  readonly lit?: boolean;
  /** Of these arguments there is one, and not two. */
  readonly oneOf?: readonly string[];
}

const at = { name: "at", type: "point", needed: false, instead: "subject" } as const;
const gap = { name: "gap", type: "length", needed: false } as const;
const on = { name: "on", type: "surface-name", needed: false } as const;
const across = { name: "across", type: "extent", needed: false } as const;
const a = { name: "a", type: "reading", needed: true } as const;
const b = { name: "b", type: "reading", needed: true } as const;

/** Every result of the language. */
export const results = [
  {
    name: "angular_size",
    of: "light",
    args: [at],
    type: "angle",
    help: "Full angle of the cone with the same solid angle, from the face or `at:`.",
    example: "key.angular_size",
  },
  {
    name: "angular_least",
    of: "light",
    args: [at],
    type: "angle",
    help: "Least angular width; of a rectangle the mid-line angle.",
    example: "key.angular_least",
  },
  {
    name: "angular_greatest",
    of: "light",
    args: [at],
    type: "angle",
    help: "Greatest angular width; of a rectangle the mid-line angle.",
    example: "key.angular_greatest",
  },
  {
    name: "angular_diagonal",
    of: "light",
    args: [at],
    type: "angle",
    help: "Angle across the diagonal of a rectangle.",
    example: "key.angular_diagonal",
  },
  {
    name: "times_sun",
    of: "light",
    args: [at],
    type: "number",
    help: "Angular size in suns of 0.533 deg.",
    example: "key.times_sun",
  },
  {
    name: "shadow_edge",
    of: "light",
    args: [gap, across, on],
    oneOf: ["gap", "on"],
    type: "length",
    help: "Full width of the half-shade of an edge at the aim, on a surface `gap` behind it; with `on`, of the subjects' own outlines where they fall on that surface, the middle width along them, inside the frame.",
    example: "key.shadow_edge(gap: 12 cm)",
  },
  {
    name: "shadow_edge_10_90",
    of: "light",
    args: [gap, across, on],
    oneOf: ["gap", "on"],
    type: "length",
    help: "The same from 10 to 90 % of the light.",
    example: "key.shadow_edge_10_90(gap: 12 cm)",
  },
  {
    name: "elevation",
    of: "light",
    args: [at],
    type: "angle",
    help: "Height of the light above the horizontal, from the face or `at:`.",
    example: "key.elevation",
  },
  {
    name: "bearing",
    of: "light",
    args: [at],
    type: "angle",
    help: "Side angle from the camera's side, + to camera-right, from the face or `at:`.",
    example: "key.bearing",
  },
  {
    name: "distance",
    of: "light",
    args: [{ name: "from", type: "point", needed: false, instead: "subject" }],
    type: "length",
    help: "Slant distance from the face or `from:`.",
    example: "key.distance",
  },
  {
    name: "floor_distance",
    of: "light",
    args: [],
    type: "length",
    help: "Along the floor from the mark.",
    example: "key.floor_distance",
  },
  {
    name: "height",
    of: "light",
    args: [],
    type: "length",
    help: "Height of the centre of the lit opening.",
    example: "key.height",
  },
  {
    name: "shadow_length",
    of: "light",
    args: [on],
    type: "length",
    help: "Length of the first subject's shadow on a level floor, walls and set left out; with `on`, how far its shadow on that surface reaches from the subject's place, along the floor.",
    example: "key.shadow_length",
    needs: ["subject"],
  },
  ...shadowResults,
  {
    name: "energy",
    of: "light",
    args: [],
    type: "luminous-energy",
    help: "Luminous energy at the present setting after all losses.",
    example: "key.energy",
  },
  {
    name: "reserve",
    of: "light",
    args: [],
    type: "stops",
    help: "Stops between the present setting and full power.",
    example: "key.reserve",
    lit: true,
  },
  {
    name: "fall_off",
    of: "light",
    args: [
      { name: "from", type: "point", needed: true },
      { name: "to", type: "point", needed: true },
    ],
    type: "stops",
    help: "Stops by which `to` gets less than `from`, receptors looking at the light.",
    example: "key.fall_off(from: face, to: shin)",
  },
  {
    name: "f_number",
    of: "nothing",
    args: [a],
    type: "f-number",
    help: "A reading as f-number at the camera's ISO.",
    example: "f_number(face.disc(towards: key))",
    needs: ["camera"],
  },
  {
    name: "exposure",
    of: "nothing",
    args: [a],
    type: "exposure",
    help: "A reading as luminous exposure in lx s.",
    example: "exposure(floor)",
  },
  {
    name: "ev",
    of: "nothing",
    args: [a],
    type: "ev",
    help: "A reading as exposure value at ISO 100 over the shutter time.",
    example: "ev(floor)",
    needs: ["camera"],
  },
  {
    name: "stops_from_aperture",
    of: "nothing",
    args: [a],
    type: "stops",
    help: "A reading against the set aperture; + is over-exposed.",
    example: "stops_from_aperture(floor)",
    needs: ["camera"],
  },
  {
    name: "colour_temperature",
    of: "nothing",
    args: [a],
    type: "colour-temperature",
    help: "Colour temperature of the light of a reading, all lights mixed; surfaces are taken as grey.",
    example: "colour_temperature(face.disc(towards: key))",
  },
  {
    name: "warmth",
    of: "nothing",
    args: [a],
    type: "mired",
    help: "How far the light of a reading lies from the camera's white balance; + comes out warm.",
    example: "warmth(floor)",
    needs: ["camera"],
  },
  {
    name: "lightness",
    of: "nothing",
    args: [a],
    type: "number",
    help: "CIE L* of the surface under a reading, in a picture that is exposed for the key's reading at the face and not edited; 100 and what is cut off there.",
    example: "lightness(back)",
    needs: ["camera"],
  },
  {
    name: "srgb",
    of: "nothing",
    args: [a],
    type: "number",
    help: "The same as a grey of sRGB, 0 to 255.",
    example: "srgb(back)",
    needs: ["camera"],
  },
  {
    name: "stops",
    of: "nothing",
    args: [a, b],
    type: "stops",
    help: "Stops between two readings; + means more light on the first.",
    example: "stops(face.disc(towards: key), floor)",
  },
  {
    name: "lit_to_shadow",
    of: "nothing",
    args: [{ name: "face", type: "face", needed: true }],
    type: "contrast",
    help: "The lit cheek against the shaded cheek.",
    example: "lit_to_shadow(face)",
    needs: ["light"],
  },
  {
    name: "key_to_fill",
    of: "nothing",
    args: [
      { name: "key", type: "light", needed: true },
      { name: "fill", type: "light", needed: true },
    ],
    type: "contrast",
    help: "What one light gives the face against what another gives it.",
    example: "key_to_fill(sun, window)",
    needs: ["subject"],
    lit: true,
  },
  {
    name: "evenness",
    of: "nothing",
    args: [{ name: "reading", type: "reading", needed: true, many: true }],
    type: "stops",
    help: "Stops between the most and the least of some readings; of one surface, as in `evenness(back)`, over the part of it that the picture shows.",
    example: "evenness(back.left, back, back.right)",
  },
  {
    name: "headroom",
    of: "nothing",
    args: [],
    type: "length",
    help: "Set that the picture shows above the head that has least of it; negative where set or picture end below the top of that head.",
    example: "headroom",
    needs: ["camera", "subject", "set"],
  },
  {
    name: "near_limit",
    of: "nothing",
    args: [],
    type: "length",
    help: "Nearest distance from the lens, along its axis, that is still sharp at the set aperture and focus.",
    example: "near_limit",
    needs: ["camera"],
  },
  {
    name: "far_limit",
    of: "nothing",
    args: [],
    type: "length",
    help: "Farthest distance from the lens, along its axis, that is still sharp; without a value where there is no end.",
    example: "far_limit",
    needs: ["camera"],
  },
  {
    name: "no_warnings",
    of: "nothing",
    args: [],
    type: "truth",
    help: "No warning of severity stop or check.",
    example: "no_warnings",
  },
  {
    name: "coverage",
    of: "nothing",
    args: [],
    type: "number",
    help: "Share of the frame that is set or subject. Needs a background: a flat, a paper, a panel, or a surface of the room with `belongs_to: set`.",
    example: "coverage",
    needs: ["camera", "surface"],
  },
  {
    name: "uncovered",
    of: "nothing",
    args: [{ name: "side", type: "frame-side", needed: false }],
    type: "number",
    help: "Share of the frame that is neither set nor subject; with a `side`, left, right, top or bottom, how far in from there it reaches, as a share of the frame's width or height.",
    example: "uncovered(left)",
    needs: ["camera", "surface"],
  },
  {
    name: "subject_share",
    of: "nothing",
    args: [],
    type: "number",
    help: "Height of the first subject in the picture as a share of the frame's height.",
    example: "subject_share",
    needs: ["camera", "subject"],
  },
  {
    name: "hand_limit",
    of: "nothing",
    args: [],
    type: "length",
    help: "Height above the floor up to which a hand of the first subject, straight up, stays in the picture and before the set.",
    example: "hand_limit",
    needs: ["camera", "surface"],
  },
  {
    name: "highlight_headroom",
    of: "nothing",
    args: [],
    type: "stops",
    help: "Stops between the brightest skin or surface in the picture and pure white; negative where it lies beyond. A background that is wished white does not count.",
    example: "highlight_headroom",
  },
  {
    name: "hyperfocal",
    of: "nothing",
    args: [],
    type: "length",
    help: "The nearest focus with which the farthest distance is still sharp at the set aperture.",
    example: "hyperfocal",
  },
  {
    name: "blur",
    of: "nothing",
    args: [{ name: "at", type: "point", needed: true }],
    type: "length",
    help: "Diameter on the sensor of the blur of a point that is out of focus.",
    example: "blur(at: face)",
  },
  {
    name: "blur_pixels",
    of: "nothing",
    args: [{ name: "at", type: "point", needed: true }],
    type: "number",
    help: "The same in pixels; needs the camera's `pixels`.",
    example: "blur_pixels(at: face)",
  },
  {
    name: "separation",
    of: "nothing",
    args: [
      { name: "outline", type: "outline", needed: true },
      { name: "against", type: "surface-name", needed: false },
      { name: "side", type: "side", needed: true },
    ],
    type: "stops",
    help: "The edge of the head, `hair` or `face`, against what lies behind it in the picture; + means that the edge is brighter. `side` of the picture: left, right or top.",
    example: "separation(hair, back, side: left)",
    needs: ["camera", "surface"],
  },
  {
    name: "rim_width",
    of: "nothing",
    args: [
      { name: "light", type: "light", needed: true },
      { name: "side", type: "side", needed: true },
    ],
    type: "length",
    help: "Width of the band that a light from behind draws along the edge of the first head, as the lens sees it, in the plane of the head. `side` of the picture: left, right or top.",
    example: "rim_width(rim, side: left)",
    needs: ["camera", "subject"],
    lit: true,
  },
  {
    name: "rim_share",
    of: "nothing",
    args: [
      { name: "light", type: "light", needed: true },
      { name: "side", type: "side", needed: true },
    ],
    type: "number",
    help: "The same band as a share of the frame's width.",
    example: "rim_share(rim, side: left)",
    needs: ["camera", "subject"],
    lit: true,
  },
] as const satisfies readonly ResultRow[];

/** The row of a result by name and by what it is taken of. */
export function findResult(name: string, of: ResultRow["of"]): ResultRow | null {
  for (const row of results) if (row.name === name && row.of === of) return row;
  return null;
}
