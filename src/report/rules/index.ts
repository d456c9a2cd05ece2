import type { Rule } from "./rule.js";

/** Every rule, in the order in which a report names them. */
export const rules: readonly Rule[] = [];
