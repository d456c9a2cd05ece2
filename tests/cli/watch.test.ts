import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import type { Machine } from "../../src/cli/machine.js";
import { run } from "../../src/cli/run.js";
import { fileWatcher, type Watcher } from "../../src/node/file-watcher.js";

const folder = mkdtempSync(join(tmpdir(), "halfshade-watch-"));
afterAll(() => rmSync(folder, { recursive: true }));

const kit = (size: string) => `halfshade 1\nkit "Lamps"\ndefine light bowl { shape: disc(${size}) }\n`;
const recipe = (title: string) => `halfshade 1
recipe "${title}"
use bowl from "./kits/lamps.light"
subject { height: 1.7 m }
light key like bowl {
  calibration: metered(f/11, at: 2 m, ISO 100), distance: 2 m, bearing: left(30 deg), height: 2 m
}
`;

/** Runs a command on a machine where nothing happens but the steps given, one for each wait. */
async function watched(args: readonly string[], steps: readonly (() => void)[]) {
  const waits: (readonly string[])[] = [];
  let err = "";
  const seen: string[] = [];
  const watcher: Watcher = {
    stamp: () => "",
    async change(stamps) {
      waits.push([...stamps.keys()]);
      seen.push(err);
      err = "";
      const step = steps[waits.length - 1];
      step?.();
      return step === undefined ? "ended" : "changed";
    },
  };
  let out = "";
  const io: Machine = {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    async *input() {},
    env: () => undefined,
    cores: () => 1,
    workerFile: () => null,
    columns: () => null,
    watcher: () => watcher,
    outIsTerminal: false,
    errIsTerminal: false,
  };
  const exit = await run(args, io);
  return { exit, out, err, waits, seen };
}

test("works anew when the recipe or its kit changes, says what is wrong, goes on, and ends with 0", async () => {
  const file = join(folder, "plan.light");
  const lamps = join(folder, "kits/lamps.light");
  const svg = join(folder, "plan.svg");
  mkdirSync(join(folder, "kits"));
  writeFileSync(file, recipe("The cooper"));
  writeFileSync(lamps, kit("40 cm"));
  const written: string[] = [];
  const then = (path: string, text: string) => () => {
    written.push(readFileSync(svg, "utf8"));
    writeFileSync(path, text);
  };
  const { exit, waits, seen } = await watched(
    ["draw", file, "-o", svg, "--root", folder, "--watch"],
    [
      then(file, recipe("The wheelwright")),
      then(lamps, kit("90 cm")),
      then(file, "halfshade 1\nrecipe"),
      then(file, recipe("The turner")),
    ],
  );
  written.push(readFileSync(svg, "utf8"));
  expect(exit).toBe(0);
  // The first four waits knew of both files; the text with a mistake names no kit.
  expect(waits).toEqual([[file, lamps], [file, lamps], [file, lamps], [file], [file, lamps]]);
  expect(seen[0]).toContain(`${svg} is written. Waiting for ${file} and 1 more to change; Ctrl-C ends.\n`);
  expect(seen[3]).toMatch(/error[\s\S]*Waiting for/);
  expect(seen[3]).not.toContain("is written");
  const titles = written.map((text) => /Plan: ([^<]*)/.exec(text)?.[1]);
  expect(titles).toEqual([
    "The cooper",
    "The wheelwright",
    "The wheelwright",
    "The wheelwright",
    "The turner",
  ]);
  expect(written[2]).not.toBe(written[1]);
  expect(written[3]).toBe(written[2]);
});

test("a report is printed again", async () => {
  const file = join(folder, "report.light");
  const plain = (title: string) =>
    recipe(title)
      .replace(/use.*\n/, "")
      .replace("like bowl {", "{ shape: disc(40 cm)");
  writeFileSync(file, plain("One"));
  const { exit, out } = await watched(["report", file, "--watch"], [() => writeFileSync(file, plain("Two"))]);
  expect(exit).toBe(0);
  expect(out.match(/^(One|Two)$/gm)).toEqual(["One", "Two"]);
});

test("a file that is not there yet is waited for", async () => {
  const { exit, seen } = await watched(["report", join(folder, "later.light"), "--watch"], []);
  expect(exit).toBe(0);
  expect(seen[0]).toMatch(/no file[\s\S]*Waiting for/);
});

test("is refused without a file, over a file that is there, and for standard input", async () => {
  const file = join(folder, "one.light");
  writeFileSync(file, recipe("One"));
  const there = join(folder, "there.svg");
  writeFileSync(there, "mine");
  for (const [args, words] of [
    [["draw", file, "--watch"], /name it with --output/],
    [["draw", file, "-o", there, "--watch"], /is there already.*--force/],
    [["report", "-", "--watch"], /takes files/],
    [["draw", file, "plna", "-o", join(folder, "x.svg"), "--watch"], /no figure "plna"/],
  ] as const) {
    const { exit, err, waits } = await watched(args, []);
    expect({ exit, waits }).toEqual({ exit: 2, waits: [] });
    expect(err).toMatch(words);
  }
  expect(readFileSync(there, "utf8")).toBe("mine");
});

test("the watcher of the machine sees a change, one that came before it was asked, and Ctrl-C", async () => {
  const before = process.listeners("SIGINT");
  const watcher = fileWatcher();
  const file = join(folder, "seen.light");
  writeFileSync(file, "a");
  const stamps = new Map([[file, watcher.stamp(file)]]);
  const waiting = watcher.change(stamps);
  writeFileSync(file, "ab");
  expect(await waiting).toBe("changed");
  expect(await watcher.change(stamps)).toBe("changed");
  const still = watcher.change(new Map([[file, watcher.stamp(file)]]));
  const [ours] = process.listeners("SIGINT").filter((listener) => !before.includes(listener));
  (ours as () => void)();
  expect(await still).toBe("ended");
  expect(await watcher.change(stamps)).toBe("ended");
  if (ours !== undefined) process.removeListener("SIGINT", ours);
});
