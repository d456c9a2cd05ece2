import { thresholdTable } from "../thresholds.js";
import { scaleBlock } from "./scale-block.js";

/** The row of `thresholds`. */
export const thresholds = scaleBlock(
  "thresholds",
  "Where the warnings speak, for this recipe.",
  thresholdTable,
);
