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
import { maybe } from "./report.js";

const stops = "stops, + for more light";

const change = object({
  path: string().meta({ description: "The property by its path: `key.height`" }),
  planned: string().nullable(),
  built: string().nullable(),
});

const level = object({
  f_number: maybe.meta({ description: "At the camera's sensitivity on the day; null without one" }),
  shown: string().nullable(),
});

const reading = object({
  what: string().meta({ description: "Where and how the meter was held: `face.disc(towards: key)`" }),
  measured: level,
  planned: level,
  built: level.meta({ description: "What the set-up should have read as it was built" }),
  tolerance: number().meta({ description: "How far the reading may be off, stops" }),
  off_plan: maybe.meta({ description: `The reading against the plan, ${stops}` }),
  off_built: maybe.meta({ description: `The reading against the set-up as built, ${stops}` }),
  left: maybe.meta({ description: `What is left of it when every lamp gives what is found, ${stops}` }),
  after: maybe.meta({ description: `How far it is off the plan after what is to be turned, ${stops}` }),
  verdict: choice(["same", "near", "note", "act"])
    .nullable()
    .meta({ description: "By `off_plan`: up to 0.1, up to 0.2, up to 0.3 stop, and more" }),
  reason: string().nullable(),
});

const lamp = object({
  name: string(),
  stops: maybe.meta({ description: `What it gives against its setting, ${stops}; null where not told` }),
  interval: tuple([number(), number()]).nullable().meta({ description: "Within the tolerances, stops" }),
  factor: maybe.meta({ description: "The same as a factor" }),
  reason: string().nullable(),
});

const cause = object({
  kind: choice(["all", "output", "distance", "height", "bearing", "reflectance", "background", "meter-aim"]),
  about: string().nullable().meta({ description: "The lamp, the surfaces, or the place of the meter" }),
  amount: maybe.meta({ description: "By how much, in `unit`; null for a pattern" }),
  unit: choice(["stop", "m", "deg", "1"]).nullable(),
  left: maybe.meta({ description: "What it leaves of the readings, root of the mean square, stops" }),
  message: string(),
  advice: string(),
});

const pair = object({
  causes: array(cause).length(2).meta({ description: "Two things that account for the readings together" }),
  left: number().meta({ description: "What they leave of the readings, root of the mean square, stops" }),
});

const turn = object({
  light: string().nullable().meta({ description: "Null for all lamps together" }),
  by: number().meta({ description: `To a tenth, ${stops}` }),
  setting: string().nullable().meta({ description: "Where the dial then stands: `full - 1.3 stop`" }),
  reason: string().nullable().meta({ description: "Why it does not go as far as wanted" }),
});

const remedy = object({
  turns: array(turn),
  worst: number().meta({ description: "The greatest that a reading is off the plan then, stops" }),
  carry: object({ light: string(), from: number(), to: number(), worst: number() })
    .nullable()
    .meta({ description: "The same by carrying the lamp along its tape, m" }),
});

/** What a session comes to, format 1. */
export const sessionSchema = object({
  format: literal(1),
  title: string(),
  of: string().meta({ description: "The path of the recipe, as the session says it" }),
  variant: string()
    .nullable()
    .meta({ description: "The title of the variant that was built, if it was one" }),
  recipe: string().meta({ description: "The title of the recipe" }),
  headline: string(),
  changes: array(change).meta({ description: "What was built otherwise than planned" }),
  readings: array(reading).meta({ description: "In the order of the file" }),
  lamps: array(lamp).meta({ description: "The lamps as the readings tell them" }),
  told_apart: boolean().meta({ description: "Whether the readings tell every lamp from the others" }),
  remains: maybe.meta({
    description:
      "What is left of the readings when every lamp gives what is found: root of the mean square, stops",
  }),
  diagnosis: string(),
  causes: array(cause).meta({ description: "What accounts for the readings by itself, the simplest first" }),
  pairs: array(pair).meta({
    description: "Where nothing does by itself: pairs that do, the best first, three at most",
  }),
  remedy: remedy.nullable(),
  not_claimed: array(string()),
});

/** What a session comes to. */
export type SessionReport = Output<typeof sessionSchema>;
/** One reading of a session. */
export type SessionReading = SessionReport["readings"][number];
/** Two causes of a session. */
export type SessionPair = SessionReport["pairs"][number];
/** One cause of a session. */
export type SessionCause = SessionReport["causes"][number];
