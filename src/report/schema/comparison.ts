import { array, boolean, enum as choice, literal, object, string } from "zod";
import { maybe, warning } from "./report.js";

const difference = object({
  path: string().meta({ description: "The property by its path, or a whole block: `key.distance`, `fill`" }),
  before: string().nullable().meta({ description: "As it is written; null where the first does not say it" }),
  after: string().nullable(),
});

const value = object({
  what: string(),
  scale: choice(["stops", "degrees", "share"]).meta({
    description: "What the change is given in: stops, degrees, or a share of the first (1 is twice as much)",
  }),
  before: string().nullable().meta({ description: "In words; null where the first has no such value" }),
  after: string().nullable(),
  change: maybe.meta({ description: "+ where the second has more; null where one of the two has no value" }),
  shown: string().nullable().meta({ description: "The change in words: `+1.3 stop`, `-40 %`" }),
  matters: boolean().meta({
    description: "Whether it is more than the remaining error, and more than anyone would see",
  }),
});

const hold = object({
  in: string().meta({ description: "Which of the two, by its label" }),
  text: string(),
  by: string().meta({ description: "The dial that is turned" }),
  setting: string().nullable(),
  reason: string().nullable().meta({ description: "Why it cannot be held" }),
});

const expectation = object({
  in: string().meta({ description: "Which of the two, by its label" }),
  text: string(),
  outcome: choice(["failed", "undecidable"]),
  found: string().nullable().meta({ description: "What was found instead" }),
  reason: string().nullable().meta({ description: "Why it cannot be told" }),
});

const comparison = object({
  before: string().meta({ description: "What the first is called" }),
  after: string(),
  changes: array(difference).meta({ description: "What is written differently" }),
  light: array(value).meta({ description: "What that does to the light" }),
  gone: array(warning).meta({ description: "Warnings that only the first has" }),
  appeared: array(warning).meta({ description: "Warnings that only the second has" }),
  held: array(hold),
  failed: array(expectation).meta({ description: "Expectations of either that do not hold" }),
});

/** What `halfshade compare` and `halfshade diff` give as JSON, format 1. */
export const comparisonSchema = object({ format: literal(1), comparisons: array(comparison) });
