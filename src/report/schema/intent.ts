import { array, enum as choice, number, type output as Output, object, string } from "zod";

const maybe = number().nullable();

/** The natural light that a set-up is to pass for, in numbers. */
const natural = object({
  kind: choice(["sunlight", "overcast", "window"]),
  text: string().meta({ description: "As the recipe says it" }),
  elevation: maybe.meta({ description: "Of the sun above the horizon, deg" }),
  azimuth: maybe.meta({ description: "Of the sun from north over east, deg; null without place and time" }),
  angular_size: maybe.meta({ description: "Full angle of the cone with the same solid angle, deg" }),
  shadow_depth: maybe.meta({ description: "Of its shadows on level ground, stops" }),
  colour: maybe.meta({ description: "Straight from the sun, K" }),
  mixed_colour: maybe.meta({ description: "Of sun and sky together on a plane turned to the sun, K" }),
  level_illuminance: maybe.meta({ description: "On open level ground, lx" }),
  illuminance: maybe.meta({
    description:
      "On a plane turned to the sun, upright under an overcast sky, or at the face and turned to the window, lx",
  }),
  output: maybe.meta({
    description: "Of a steady light of the window's size that gives the face as much, lm",
  }),
  f_number: maybe.meta({ description: "What a disc there would read at the camera's shutter and ISO" }),
  shown: string().nullable().meta({ description: "The same in words" }),
  fall_off: maybe.meta({ description: "Of a window, over the next metre behind the subject, stops" }),
  planes: array(
    object({
      plane: choice(["top", "front", "side"]),
      stops: number().meta({ description: "Against level ground under the whole sky" }),
    }),
  ),
  basis: array(string()).meta({ description: "Where the numbers come from" }),
});

const criterion = object({
  wish: choice(["pass_for", "pattern", "side", "lit_to_shadow", "background", "edges"]),
  name: string().meta({ description: "What is compared" }),
  wanted: string(),
  wanted_least: maybe,
  wanted_most: maybe,
  found: string().nullable(),
  value: maybe,
  unit: choice(["deg", "stop", "mired", "1"]),
  verdict: choice(["met", "nearly", "missed", "not known"]),
  reason: string().nullable().meta({ description: "Why it is not known" }),
  remedy: string().nullable().meta({ description: "What would bring it nearer; null where it is met" }),
});

/** What the recipe wishes for, and how it is met point by point. */
export const intentSchema = object({
  passes_for: natural.nullable(),
  criteria: array(criterion),
  summary: string(),
});

/** A natural light in numbers. */
export type ReportNatural = Output<typeof natural>;
/** One point of a wish. */
export type ReportCriterion = Output<typeof criterion>;
/** The wishes of a recipe. */
export type ReportIntent = Output<typeof intentSchema>;
