import { toleranceTable } from "../tolerances.js";
import { scaleBlock } from "./scale-block.js";

export const tolerances = scaleBlock(
  "tolerances",
  "How far measured inputs may be off, for the whole recipe.",
  toleranceTable,
);
