import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { catalogue } from "../../src/diagnostics/catalogue/index.js";
import type { CatalogueRow } from "../../src/diagnostics/catalogue/row.js";
import { asSentence } from "../../src/diagnostics/print-sentence.js";

const REJECT = new URL("../../grammar/corpus/reject/", import.meta.url).pathname;

/** Longest rejected text that is shown; longer ones are about size and say nothing to a reader. */
const MOST_LINES = 30;
const MOST_LETTERS = 1500;

/** What the areas of the codes are about, in the order of the page. */
export const AREAS: ReadonlyMap<string, string> = new Map([
  ["file", "The file itself"],
  ["limit", "Limits"],
  ["header", "The first line"],
  ["version", "The version"],
  ["title", "The title"],
  ["kit", "Kits"],
  ["use", "What is used from a kit"],
  ["character", "Characters"],
  ["comment", "Comments"],
  ["text", "Texts"],
  ["name", "Names"],
  ["number", "Numbers"],
  ["f-number", "F-numbers"],
  ["iso", "Sensitivities"],
  ["operator", "Operators"],
  ["operand", "What operators work on"],
  ["slash", "The slash"],
  ["line", "Lines"],
  ["colon", "The colon"],
  ["comma", "The comma"],
  ["brace", "Braces"],
  ["bracket", "Brackets"],
  ["setting", "Settings"],
  ["silence", "Silenced warnings"],
  ["statement", "Statements"],
  ["head", "Heads of blocks"],
  ["block", "Blocks"],
  ["property", "Properties"],
  ["let", "`let`"],
  ["define", "`define`"],
  ["like", "`like`"],
  ["unit", "Units"],
  ["value", "Values"],
  ["bearing", "Bearings"],
  ["placement", "Placing a lamp or the camera"],
  ["calibration", "How the output is known"],
  ["beam", "Beams from measured files"],
  ["photo", "Settings from photographs"],
  ["session", "Sessions"],
  ["measured", "What was measured"],
  ["output", "What a lamp gives"],
  ["power", "Power"],
  ["gel", "Gels"],
  ["surface", "Surfaces"],
  ["capsule", "Capsules"],
  ["contrast", "Contrasts"],
  ["camera", "The camera"],
  ["claim", "Expectations"],
  ["result", "Results"],
  ["reading", "Readings"],
  ["path", "Paths to values"],
  ["variant", "Variants"],
  ["table", "Lesson tables"],
  ["sweep", "What a table varies"],
  ["hold", "Readings that are held"],
  ["point", "Points"],
  ["direction", "Directions"],
  ["scene", "The scene in metres"],
  ["light", "Lamps in metres"],
  ["room", "The room in metres"],
  ["opening", "Windows and doors"],
  ["flat", "Flats"],
  ["paper", "Paper"],
]);

/** A rejected text that shows a code: the one whose findings are this code alone, the shortest of them first. */
function example(code: string, texts: readonly Rejected[]): string | null {
  const fitting = texts
    .filter(({ codes, text }) => codes.length > 0 && codes.every((one) => one === code) && shows(text))
    .sort((a, b) => a.text.length - b.text.length || (a.name < b.name ? -1 : 1));
  return fitting[0]?.text ?? null;
}

const shows = (text: string): boolean =>
  text.split("\n").length <= MOST_LINES &&
  text.length <= MOST_LETTERS &&
  !/[^\P{C}\n\t]/u.test(text) &&
  !/^(?:```|<!--)/m.test(text);

interface Rejected {
  readonly name: string;
  readonly text: string;
  readonly codes: readonly string[];
}

function codesIn(json: unknown): readonly string[] {
  const list = Array.isArray(json)
    ? json
    : typeof json === "object" && json !== null && "diagnostics" in json && Array.isArray(json.diagnostics)
      ? json.diagnostics
      : [];
  return (list as readonly unknown[]).flatMap((item) =>
    typeof item === "object" && item !== null && "code" in item && typeof item.code === "string"
      ? [item.code]
      : [],
  );
}

function rejectedTexts(): readonly Rejected[] {
  if (!existsSync(REJECT)) return [];
  return readdirSync(REJECT)
    .filter((file) => file.endsWith(".light"))
    .sort()
    .flatMap((file) => {
      const name = file.slice(0, -".light".length);
      const findings = join(REJECT, `${name}.diagnostics.json`);
      if (!existsSync(findings)) return [];
      return [
        {
          name,
          text: readFileSync(join(REJECT, file), "utf8"),
          codes: codesIn(JSON.parse(readFileSync(findings, "utf8"))),
        },
      ];
    });
}

/** A catalogue's sentence without its holes: what stands there comes from the text. */
const withoutHoles = (words: string): string => asSentence(words.replace(/\{[a-zA-Z]+\}/g, "..."));

function section(code: string, row: CatalogueRow, texts: readonly Rejected[]): readonly string[] {
  const shown = example(code, texts);
  const help = row.help === "" ? [] : ["", `What to do: ${withoutHoles(row.help)}`];
  const text =
    shown === null ? [] : ["", `<!-- error: ${code} -->`, "```halfshade", shown.replace(/\n$/, ""), "```"];
  return [
    `### ${code}`,
    "",
    `${row.severity === "error" ? "Error" : "Note"}. ${withoutHoles(row.message)}`,
    ...help,
    "",
    row.page,
    ...text,
    "",
  ];
}

/** The page of every finding about a text, by area, from the catalogue. */
export function errorsPage(): string {
  const rows = Object.entries<CatalogueRow>(catalogue);
  const texts = rejectedTexts();
  const areas = [...new Set([...AREAS.keys(), ...rows.map(([code]) => code.split(".")[0] ?? "")])];
  const body = areas.flatMap((area) => {
    const own = rows.filter(([code]) => code.startsWith(`${area}.`));
    if (own.length === 0) return [];
    return [
      `## ${AREAS.get(area) ?? `${area.charAt(0).toUpperCase()}${area.slice(1)}`}`,
      "",
      ...own.flatMap(([code, row]) => section(code, row, texts)),
    ];
  });
  const head = [
    "# Findings about a text",
    "",
    "Every finding that the program can make about a recipe's text, by its code. The same pages come from",
    "`halfshade explain CODE`. Dots stand for what comes from your text. An error means that the text has no meaning here;",
    "a note means that it has one, and that there is something to know. Warnings about a set-up are on the",
    "[page of warnings](guide/warnings.md).",
    "",
    "This page is made from the catalogue in `src/diagnostics/catalogue`; `npm run docs:write` makes it again.",
    "",
  ];
  return `${[...head, ...body].join("\n").trimEnd()}\n`;
}
