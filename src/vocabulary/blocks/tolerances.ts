import { toleranceTable } from "../tolerances.js";
import { scaleBlock } from "./scale-block.js";

/** The row of `tolerances`. */
export const tolerances = scaleBlock(
  "tolerances",
  "How far measured inputs may be off, for the whole recipe.",
  toleranceTable,
);
