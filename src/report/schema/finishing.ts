import { array, enum as choice, number, type output as Output, object, string, tuple } from "zod";

/*
 * What remains to be done with the picture afterwards, each item with the number of the report that it follows from.
 * Places are shares of the frame's width from its left and of its height from its top.
 */
const maybe = number().nullable();

const place = tuple([number(), number()]);
const pixel = place.nullable().meta({ description: "The same in pixels" });

const source = string().meta({ description: "The part of the report that it follows from" });

const ramp = object({
  at: place.meta({ description: "Where the set ends, from the left and from the top" }),
  at_pixel: pixel,
  surface: string().meta({ description: "The piece that ends there" }),
  per_metre: number().meta({
    description: "Stops by which its light grows for each metre outwards along the piece",
  }),
  error: number().meta({ description: "How far that may be off by bounced light, stops per metre" }),
  strip: maybe.meta({
    description: "From there to the edge of the picture, along the piece as if it went on, m",
  }),
  across: maybe.meta({ description: "Stops over that strip, if the light goes on so" }),
});

const extension = object({
  side: choice(["left", "right", "top", "bottom", "within"]),
  share: number().meta({ description: "Share of the picture" }),
  depth: number().meta({ description: "How far in it reaches at most, as a share of the width or height" }),
  pixels: maybe.meta({ description: "The same in pixels" }),
  ramps: array(ramp).meta({ description: "The light to go on with, at up to two places of the set's edge" }),
  reason: string().nullable().meta({ description: "Why there is none" }),
  from: source,
});

const line = object({
  kind: choice(["fold", "edge", "corner"]),
  name: string(),
  from: place,
  to: place,
  from_pixel: pixel,
  to_pixel: pixel,
  source,
});

const contrast = object({
  of: string().meta({ description: "What is too shallow or too deep" }),
  wanted: number().meta({ description: "stops" }),
  found: number().meta({ description: "stops" }),
  slope: number().meta({ description: "wanted / found: by which differences in stops are multiplied" }),
  pivot: maybe.meta({ description: "Grey of sRGB that stays: the skin of the first face, 0 to 255" }),
  from: source,
});

const lift = object({
  of: string().meta({ description: "`picture`, or the part of it that is lifted" }),
  stops: number().meta({ description: "What it is lifted by in all" }),
  as_iso: maybe.meta({ description: "The ISO whose noise it then shows: ISO x 2 to the lift" }),
  from: source,
});

/** What remains to be done with the picture. */
export const finishingSchema = object({
  extensions: array(extension),
  lines: array(line).meta({ description: "Folds, edges and corners within the set" }),
  white_balance: object({
    set: maybe.meta({
      description: "White balance to develop with, in steps of 50 K; null outside of 1000 to 25,000",
    }),
    shift: number().meta({
      description: "Mired from the camera's white balance, + makes the picture warmer",
    }),
    from: source,
  }).nullable(),
  contrast: array(contrast),
  lifts: array(lift),
});

/** What remains to be done with a picture. */
export type ReportFinishing = Output<typeof finishingSchema>;
