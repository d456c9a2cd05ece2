import type { CatalogueRow } from "./row.js";

/** Findings of the parse stage. */
export const parseFindings = {
} as const satisfies Record<string, CatalogueRow>;
