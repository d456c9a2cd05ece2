import { examples } from "../docs/examples.js";
import { table } from "./regions.js";

/** The anchor of a heading, as the usual hosts of Markdown make it. */
const anchorOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s_-]/gu, "")
    .trim()
    .replace(/\s/g, "-");

const words = { halfshade: "recipe", console: "command", calc: "formula", ts: "program" } as const;

/** A list of all examples by their numbers, with the place of each. */
export function examplesPage(): string {
  const all = examples();
  const rows = all.map(({ number, page, fence, heading, title }) => {
    const link = `${page.startsWith("docs/") ? page.slice("docs/".length) : `../${page}`}#${anchorOf(heading)}`;
    return [
      String(number),
      words[fence.language as keyof typeof words],
      `\`${title.replaceAll("`", "")}\``,
      `[${heading}](${link})`,
    ];
  });
  return `# Examples by number

${all.length} examples stand in these pages, and a test runs every one of them: recipes are compiled and their expectations must hold (or
fail, where that is what they show), commands and formulas must print what is shown, programs are checked for their types
and run. The numbers follow the pages.

${table(["no.", "what", "example", "where"], rows)}
`;
}
