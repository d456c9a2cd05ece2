import type { BlockRow } from "../property.js";

/** The row of `intent`. */
export const intent = {
  kind: "intent",
  help: "What the picture should look like; results are compared with it.",
  named: "none",
  properties: [
    {
      name: "pass_for",
      type: "natural_light",
      help: "The natural light it should pass for.",
      example: "sunlight(elevation: 30 deg)",
      default: "no wish",
      sure: true,
    },
    {
      name: "pattern",
      type: "word",
      words: ["flat", "butterfly", "loop", "rembrandt", "split", "rim"],
      help: "The pattern of shadow on the face.",
      example: "loop",
      default: "no wish",
    },
    {
      name: "side",
      type: "word",
      words: ["short", "broad"],
      help: "Light on the side of the face turned away from the camera (short) or towards it (broad).",
      example: "short",
      default: "no wish",
    },
    {
      name: "lit_to_shadow",
      type: "contrast",
      range: [-20, 20],
      help: "Lit side of the face against its shaded side.",
      example: "3:1",
      default: "no wish",
    },
    {
      name: "background",
      type: "level",
      help: "The background against a reading.",
      example: "1 stop under face.disc(towards: key)",
      default: "no wish",
    },
    {
      name: "edges",
      type: "word",
      words: ["hard", "soft"],
      help: "Hard or soft shadow edges.",
      example: "soft",
      default: "no wish",
    },
  ],
  parts: [],
} as const satisfies BlockRow;
