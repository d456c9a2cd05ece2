import type { CatalogueRow } from "./row.js";

/** Findings of the check stage. */
export const checkFindings = {
} as const satisfies Record<string, CatalogueRow>;
