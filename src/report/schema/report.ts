import {
  array,
  boolean,
  enum as choice,
  literal,
  number,
  type output as Output,
  object,
  string,
  tuple,
} from "zod";
import { colourSchema } from "./colour.js";
import { facesSchema } from "./face.js";
import { finishingSchema } from "./finishing.js";
import { frame, sharpness, timing } from "./frame.js";
import { glossSchema } from "./gloss.js";
import { intentSchema } from "./intent.js";
import { thrownSchema } from "./thrown.js";

/**
 * The report, format 1: plain JSON in fixed units. Lengths in m, shadow edges in mm, angles in deg, luminous exposure
 * in lx s, luminous energy in lm s, differences of light in stops, colour in K. A value that cannot be had is null and
 * its `reason` says why. Arrays are in file order; names are values, never keys.
 */
const point = tuple([number(), number(), number()]).meta({
  description: "x, y, z in m",
});

/** A number, or null where it cannot be had. */
export const maybe = number().nullable();

const angularSize = object({
  equivalent: maybe.meta({
    description: "Full angle of the cone with the same solid angle, deg",
  }),
  least: maybe.meta({ description: "Least angular width, deg" }),
  greatest: maybe.meta({ description: "Greatest angular width, deg" }),
  diagonal: maybe.meta({
    description: "Across the diagonal of a rectangle, deg; else null",
  }),
  times_sun: maybe.meta({
    description: "Equivalent angle over the sun's 0.533 deg",
  }),
});

const shadowEdge = object({
  gap: number().meta({
    description: "From the edge that throws the shadow to the surface behind it, m",
  }),
  full: maybe.meta({
    description:
      "Full width of the half-shade on a square-on surface across the opening's widest measure, mm",
  }),
  ten_ninety: maybe.meta({
    description: "Width from 10 to 90 % of the light across the same measure, mm",
  }),
  full_least: maybe.meta({
    description: "Full width across the opening's narrowest measure, mm",
  }),
  ten_ninety_least: maybe.meta({
    description: "Width from 10 to 90 % of the light across that measure, mm",
  }),
});

const light = object({
  name: string(),
  role: string().nullable(),
  kind: choice(["flash", "steady"]),
  shape: string().meta({ description: "The lit opening in words" }),
  on: boolean(),
  position: point,
  seen_from: choice(["face", "aim"]).meta({
    description:
      "Where places and sizes are taken: the first subject's face, or the light's aim where there is nobody",
  }),
  distance: maybe.meta({
    description: "Slant from there to the centre of the opening, m",
  }),
  floor_distance: number().meta({
    description: "Along the floor from the mark, m",
  }),
  height: number(),
  bearing: maybe.meta({
    description: "Of the light that is seen, at the first subject's face, deg, + to camera-right",
  }),
  elevation: maybe.meta({ description: "At the first subject's face, deg" }),
  head: object({
    position: point,
    distance: maybe.meta({ description: "From the same place to the centre of its opening, m" }),
    bearing: maybe,
    elevation: maybe,
    height: number(),
  })
    .nullable()
    .meta({
      description:
        "The head itself, where the light that is seen is another: the patch that it lights, or a cloth; else null",
    }),
  patch: object({
    surface: string(),
    position: point.meta({ description: "Its middle" }),
    distance: maybe.meta({ description: "From the same place to its middle, m" }),
    height: number(),
    width: number(),
    length: number().meta({ description: "Square to its width, m" }),
  })
    .nullable()
    .meta({
      description:
        "What a head lights of the surface that it shines into: bearing, elevation, sizes and edges are of it; else null",
    }),
  elevation_at_feet: maybe.meta({
    description: "At the first subject's place on the floor, which is at the feet of one who stands, deg",
  }),
  angular_size: angularSize,
  solid_angle: maybe.meta({ description: "sr, at the first subject's face" }),
  projected_solid_angle: maybe.meta({
    description: "sr, on a receptor that looks at the light",
  }),
  energy: number().meta({
    description: "Luminous energy at the present setting after all losses, lm s",
  }),
  energy_at_full: number(),
  axial_intensity: number().meta({
    description: "cd s on the axis at the present setting",
  }),
  uncertainty: number().meta({
    description: "How far the output may be off to either side, stops",
  }),
  known_by: string(),
  power: object({
    setting: string(),
    below_full: maybe.meta({ description: "stops; null when off" }),
    watt_seconds: maybe,
    full_watt_seconds: maybe,
  }),
  colour: number(),
  shadow_edges: array(shadowEdge),
  shadow: object({
    length: maybe.meta({
      description: "Shadow of the first subject on the floor, from its place, m",
    }),
    direction: maybe.meta({
      description: "Where it falls, seen from above, deg from away-from-camera, + to camera-right",
    }),
    reason: string().nullable(),
  }),
  head_to_shin: maybe.meta({
    description: "Stops by which the shin gets less than the face from this light",
  }),
  reason: string().nullable(),
  intervals: object({
    energy: tuple([number(), number()]).nullable(),
    angular_size: tuple([number(), number()]).nullable(),
  }),
});

const station = object({
  name: string(),
  subject: string().nullable(),
  at: point,
  facing: point,
  receptor: choice(["disc", "dome"]),
  looks: string(),
  exposure: object({
    direct: number(),
    bounced: maybe,
    total: number(),
    error: maybe.meta({ description: "Remaining error of the total, stops" }),
    lights: array(object({ name: string(), direct: number(), bounced: maybe })),
  }),
  contributors: array(
    object({
      surface: string(),
      takes: number().meta({ description: "What the reading would lose if the surface were black, lx s" }),
      stops: maybe.meta({ description: "The same in stops; null where nothing else gives light" }),
    }),
  )
    .nullable()
    .meta({ description: "For shaded readings, what the surfaces give them, the greatest first; else null" }),
  from_key: maybe.meta({ description: "Stops over (+) or under (-) the first face's disc towards the key" }),
  tone: object({
    reflectance: number(),
    lightness: number().meta({ description: "CIE L* where the picture is exposed for that disc" }),
    srgb: number().meta({ description: "The same as a grey of sRGB, 0 to 255" }),
  })
    .nullable()
    .meta({ description: "How the surface comes out; null for a meter in the air" }),
  ambient: maybe.meta({
    description: "Room light over the shutter time, lx s",
  }),
  ambient_adds: maybe.meta({ description: "Stops by which the room light would raise the reading" }),
  f_number: maybe,
  shown: string().nullable().meta({ description: "Full-stop base and tenths, for example f/8 +0.7" }),
  interval: tuple([number(), number()]).nullable().meta({
    description:
      "Stops under and over the reading between which it lies in 95 of 100 cases, with inputs off by their tolerances",
  }),
  stops_from_aperture: maybe.meta({ description: "+ means over-exposed" }),
  ev100: maybe,
  reason: string().nullable(),
});

const shadow = object({
  surface: string().meta({ description: "The station on it" }),
  light: string(),
  in_light: maybe.meta({ description: "Where nothing hides the light, stops from the first face's disc" }),
  in_shadow: maybe.meta({ description: "Where the light is hidden wholly, stops from the same" }),
  depth: maybe.meta({ description: "Stops between the two" }),
  error: maybe.meta({ description: "Remaining error of the depth, stops" }),
  gap: maybe.meta({ description: "From the first face along the light to the surface, m" }),
  edge: maybe.meta({ description: "Full width of the half-shade of an edge that far before it, mm" }),
  edge_10_90: maybe.meta({ description: "Width from 10 to 90 % of the light, mm" }),
  reason: string().nullable(),
});

const result = object({
  name: string(),
  text: string().meta({
    description: "The result as one asks for it in a recipe",
  }),
  value: maybe,
  unit: string(),
  interval: tuple([number(), number()]).nullable().meta({
    description: "Between what it lies in 95 of 100 cases, with inputs off by their tolerances, in its unit",
  }),
  shown: string(),
  shown_interval: string().nullable().meta({ description: "The same in words; null where it does not show" }),
  reason: string().nullable(),
});

const nearest = object({
  text: string().meta({ description: "The changes in words" }),
  changes: array(
    object({
      what: string().meta({ description: "The property, as a recipe names it: key.distance" }),
      value: number().meta({ description: "What to set it to; a power in stops below full" }),
      unit: choice(["m", "deg", "stop", "f", "ISO"]),
      shown: string(),
    }),
  ).meta({ description: "The least change first; each is enough by itself" }),
});

const expectation = object({
  text: string(),
  outcome: choice(["passed", "failed", "undecidable"]),
  found: string().nullable(),
  value: maybe,
  unit: string().nullable(),
  shares: array(object({ name: string(), text: string() })).meta({
    description: "What each light gives to it, straight and bounced",
  }),
  reason: string().nullable(),
  nearest: nearest.nullable().meta({
    description:
      "Single changes by which it would hold, where it does not and one is within reach; else null",
  }),
  nearest_reason: string().nullable().meta({ description: "Why there is none" }),
  because: string().nullable(),
  line: number().nullable(),
});

/** One warning. */
export const warning = object({
  code: string(),
  severity: choice(["stop", "check", "note"]),
  message: string(),
  remedy: string(),
  caution: string().nullable(),
  about: string().nullable(),
});

const silence = object({
  code: string(),
  because: string().meta({ description: "Why it is accepted, as the recipe says" }),
  warnings: array(warning).meta({ description: "What it would say; empty where it does not speak" }),
});

const camera = object({
  position: point,
  distance: number().meta({ description: "Along the floor from the mark, m" }),
  height: number(),
  held: choice(["upright", "level"]),
  frame: tuple([number(), number()]).meta({
    description: "Width and height as held, mm",
  }),
  focal_length: maybe.meta({ description: "mm" }),
  shift: number().meta({ description: "How far the lens is raised, mm" }),
  aperture: maybe,
  shutter: maybe.meta({ description: "s" }),
  sensitivity: maybe,
  balance: number(),
  sync: maybe,
  focus_distance: maybe,
  close_focus_loss: maybe.meta({
    description: "stops lost to the bellows factor at the focus distance",
  }),
  highlight: object({
    headroom: maybe.meta({
      description:
        "Stops between the brightest skin or surface in the picture and pure white, - beyond; a background that is wished white does not count",
    }),
    of: string().nullable().meta({ description: "What is the brightest, in words" }),
    reflectance: maybe,
    reason: string().nullable().meta({ description: "Why there is none" }),
  }),
});

/** The report's schema, format 1. */
export const reportSchema = object({
  format: literal(1),
  title: string(),
  variant: object({
    title: string(),
    from: string().nullable().meta({ description: "The variant it comes from; null for the recipe" }),
    held: array(
      object({
        text: string(),
        by: string().meta({ description: "What was turned or moved" }),
        setting: string().nullable().meta({ description: "Where it stands now" }),
        reason: string().nullable().meta({ description: "Why it is not held, or not quite" }),
      }),
    ),
  })
    .nullable()
    .meta({ description: "The variant that the report is of; null for the recipe itself" }),
  headline: string(),
  matters_most: string().nullable().meta({
    description: "The measured input that matters most, with its effect",
  }),
  setup: array(string()).meta({
    description: "The set-up in words, a sentence each",
  }),
  camera: camera.nullable(),
  frame: frame.nullable().meta({
    description: "What the picture shows; null without a camera and its focal length",
  }),
  sharpness: sharpness.nullable().meta({
    description: "What is sharp; null where focal length, aperture or focus are not known",
  }),
  timing,
  lights: array(light),
  stations: array(station),
  shadows: array(shadow),
  gloss: glossSchema.meta({
    description: "Lights mirrored in glossy pieces; empty without a camera or gloss",
  }),
  colour: colourSchema.nullable().meta({ description: "Null where no light is on" }),
  intent: intentSchema.nullable().meta({ description: "Null where the recipe wishes for nothing" }),
  finishing: finishingSchema.nullable().meta({
    description: "What remains to be done with the picture; null where that is nothing",
  }),
  faces: facesSchema.meta({ description: "What the lights do on every face" }),
  thrown: thrownSchema.meta({ description: "Shadows as they fall, by the centre of each light" }),
  results: array(result),
  expectations: array(expectation),
  warnings: array(warning),
  silenced: array(silence).meta({
    description: "Warnings that the recipe accepts; they are not among `warnings`",
  }),
  assumed: array(object({ what: string(), value: string(), matters: boolean() })),
  not_claimed: array(string()),
});

/** The report of a set-up: plain JSON, format 1. `docs/guide/report.md` explains each field. */
export type Report = Output<typeof reportSchema>;
/** One light of a report. */
export type ReportLight = Report["lights"][number];
/** One place with its reading. */
export type ReportStation = Report["stations"][number];
/** What a shadow of one light does on one surface. */
export type ReportShadow = Report["shadows"][number];
/** One result that the report gives unasked, with the text by which a recipe asks for it. */
export type ReportResult = Report["results"][number];
/** One expectation with its outcome and what was found. */
export type ReportExpectation = Report["expectations"][number];
/** One warning with its remedy. */
export type ReportWarning = Report["warnings"][number];
/** One warning that the recipe silences, with its reason. */
export type ReportSilence = Report["silenced"][number];
