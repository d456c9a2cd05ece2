import type { CatalogueRow } from "./row.js";

/** Findings of the lex stage. */
export const lexFindings = {
} as const satisfies Record<string, CatalogueRow>;
