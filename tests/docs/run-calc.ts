import { calc } from "../../src/quantities/calc.js";

const PROMPT = "$ halfshade calc ";

/** The words of a command line: blanks part them, quotes keep them together. */
export function wordsOf(line: string): readonly string[] {
  const words: string[] = [];
  for (const [, single, double, bare] of line.matchAll(
    /'([^']*)'|"([^"]*)"|((?:[^\s'"]|\[[^\]]*\]|'[^']*')+)/g,
  )) {
    words.push(single ?? double ?? (bare ?? "").replaceAll("'", ""));
  }
  return words;
}

/** A `calc` example as it should read: every command with what the program answers below it. */
export function calcExample(text: string, files: ReadonlyMap<string, string>): string {
  const commands = text.split("\n").filter((line) => line.startsWith("$ "));
  return commands.map((line) => `${line}\n${answerOf(line, files)}\n`).join("");
}

function answerOf(line: string, files: ReadonlyMap<string, string>): string {
  if (!line.startsWith(PROMPT)) throw new Error(`"${line}" is not a calc command`);
  const [name = "", ...args] = wordsOf(line.slice(PROMPT.length));
  const answer = calc(name, args, (path) => {
    const file = files.get(path);
    return file === undefined ? { problem: `"${path}" is not on this page` } : { text: file };
  });
  if (!answer.ok) throw new Error(`${line}: ${answer.problem}`);
  return answer.text;
}
