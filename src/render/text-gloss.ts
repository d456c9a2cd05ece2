import type { Report } from "../report/schema/report.js";
import { degrees, perCent } from "./number.js";

/** What is mirrored, a sentence for each light and glossy piece, and what gloss does not do. */
export function glossSentences({ gloss }: Report): readonly string[] {
  if (gloss.length === 0) return [];
  const rows = gloss.map(({ surface, light, seen, frame, width, share, reason }) => {
    if (!seen || frame === null) return `${light} is not mirrored in ${surface}: ${reason ?? ""}.`;
    const [x, y] = frame;
    const part = share > 0.99 ? "" : "a part of ";
    return `The lens sees ${part}${light} mirrored in ${surface}, ${perCent(x)} from the left and ${perCent(y)} from the bottom of the picture, ${degrees(width)} wide.`;
  });
  return [
    ...rows,
    "Gloss is not in the stops: readings and shadows take these pieces as matt. Mirrored people, walls and pieces are not looked for.",
  ];
}
