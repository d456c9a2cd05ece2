import type { BlockRow } from "../property.js";

/** The row of `about`. */
export const about = {
  kind: "about",
  help: "Who wrote the recipe and how to find it again; no result depends on it.",
  named: "none",
  properties: [
    { name: "by", type: "text", help: "Who wrote it.", example: '"the workshop"', default: "nobody named" },
    {
      name: "tags",
      type: "texts",
      help: "Words to find it by.",
      example: '["hard", "one lamp"]',
      default: "none",
    },
    {
      name: "note",
      type: "text",
      help: "What the recipe is for.",
      example: '"A window that is not there."',
      default: "none",
    },
    {
      name: "made",
      type: "text",
      help: "When it was written, in any form.",
      example: '"spring term"',
      default: "not said",
    },
  ],
  parts: [],
} as const satisfies BlockRow;
