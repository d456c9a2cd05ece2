import { existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Machine } from "../../src/cli/machine.js";
import { run } from "../../src/cli/run.js";
import { ROOT } from "./pages.js";
import { wordsOf } from "./run-calc.js";

/** What a machine without a terminal would see. */
interface Seen {
  /** Data alone, for a pipe or a file. */
  data: string;
  /** Data and words as they came. */
  all: string;
}

async function* bytesOf(text: string): AsyncGenerator<Uint8Array> {
  if (text !== "") yield Buffer.from(text, "utf8");
}

function machine(seen: Seen, input: string): Machine {
  return {
    out: (text) => {
      seen.data += text;
      seen.all += text;
    },
    err: (text) => {
      seen.all += text;
    },
    input: () => bytesOf(input),
    env: () => undefined,
    cores: () => 1,
    workerFile: () => null,
    columns: () => null,
    outIsTerminal: false,
    errIsTerminal: false,
  };
}

const REDIRECT = /^(.*?)(?:\s+<\s+(\S+))?(?:\s+>\s+(\S+))?$/;

/**
 * Runs the lines of a `console` example that begin with `$ ` in a folder, and gives the example back as it should
 * read. It knows `halfshade` with `<`, `>` and `|`, `cat FILE` and `echo $?`.
 */
async function transcript(text: string): Promise<string> {
  let written = "";
  let exit = 0;
  for (const line of text.split("\n")) {
    if (!line.startsWith("$ ")) continue;
    let output = "";
    if (line === "$ echo $?") output = `${exit}\n`;
    else if (line.startsWith("$ cat ")) output = readFileSync(line.slice("$ cat ".length), "utf8");
    else {
      let piped = "";
      let words = "";
      const commands = line.slice(2).split(/\s+\|\s+/);
      for (const [index, command] of commands.entries()) {
        const [, call = "", from, to] = REDIRECT.exec(command) ?? [];
        const [program, ...args] = wordsOf(call);
        if (program !== "halfshade") throw new Error(`"${line}": only halfshade, cat and echo $? can be run`);
        const seen: Seen = { data: "", all: "" };
        exit = await run(args, machine(seen, from === undefined ? piped : readFileSync(from, "utf8")));
        if (to !== undefined) writeFileSync(to, seen.data);
        const last = index === commands.length - 1 && to === undefined;
        words += last ? seen.all : "";
        piped = seen.data;
      }
      output = words;
    }
    written += `${line}\n${output}${output === "" || output.endsWith("\n") ? "" : "\n"}`;
  }
  return written;
}

/** Runs examples one after the other in a folder of their own that holds the page's files and the project's examples. */
export async function runExamples(
  examples: readonly string[],
  files: ReadonlyMap<string, string>,
): Promise<readonly string[]> {
  const folder = mkdtempSync(join(tmpdir(), "halfshade-docs-"));
  const before = process.cwd();
  try {
    process.chdir(folder);
    if (existsSync(join(ROOT, "examples"))) symlinkSync(join(ROOT, "examples"), "examples");
    for (const [name, text] of files) writeFileSync(name, text);
    const results: string[] = [];
    for (const example of examples) results.push(await transcript(example));
    return results;
  } finally {
    process.chdir(before);
    rmSync(folder, { recursive: true, force: true });
  }
}
