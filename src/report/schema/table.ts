import { array, boolean, literal, object, string } from "zod";
import { maybe } from "./report.js";

const column = object({
  title: string(),
  unit: string().meta({
    description:
      "The unit of the column's numbers: one of the language's, `f`, `ISO`, `1`, or `text` where it has no numbers",
  }),
  swept: boolean().meta({ description: "Whether it shows what is varied; such columns come first" }),
  blank: boolean().meta({ description: "Whether a worksheet leaves it blank" }),
});

const cell = object({
  value: maybe.meta({ description: "The number in the unit of the column" }),
  shown: string().nullable().meta({ description: "As it is read out" }),
  reason: string().nullable().meta({ description: "Why there is no value" }),
});

const table = object({
  title: string(),
  note: string().nullable(),
  columns: array(column),
  rows: array(array(cell).meta({ description: "A cell for each column" })),
});

/** What `halfshade table` gives as JSON, format 1. */
export const tableSchema = object({
  format: literal(1),
  recipe: string().meta({ description: "The title of the recipe" }),
  tables: array(table),
});
