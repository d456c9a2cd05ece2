import type { BlockRow } from "../property.js";

/** The row of `silence`. */
export const silence = {
  kind: "silence",
  help: "Warnings that are known and accepted, each with its reason; the report lists them. Safety warnings cannot be silenced.",
  named: "none",
  properties: [],
  anyText: true,
  parts: [],
} as const satisfies BlockRow;
