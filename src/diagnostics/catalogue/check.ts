import { blockFindings } from "./check-blocks.js";
import { claimFindings } from "./check-claims.js";
import { kitFindings } from "./check-kits.js";
import { nameFindings } from "./check-names.js";
import { pathFindings } from "./check-paths.js";
import { sessionFindings } from "./check-sessions.js";
import { tableFindings } from "./check-tables.js";
import { valueFindings } from "./check-values.js";
import { variantFindings } from "./check-variants.js";

/** Findings of the check stage: names, blocks, values and claims. */
export const checkFindings = {
  ...blockFindings,
  ...nameFindings,
  ...kitFindings,
  ...valueFindings,
  ...claimFindings,
  ...pathFindings,
  ...tableFindings,
  ...variantFindings,
  ...sessionFindings,
} as const;
