import type { CatalogueRow } from "./row.js";

/** Findings of the scene stage. */
export const sceneFindings = {
} as const satisfies Record<string, CatalogueRow>;
