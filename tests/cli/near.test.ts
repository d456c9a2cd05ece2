import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { statements } from "../../src/cli/commands/words.js";
import { parseFile } from "../../src/syntax/parse.js";
import { halfshade } from "./fake-machine.js";
import { kit, sound } from "./recipes.js";

const folder = mkdtempSync(join(tmpdir(), "halfshade-near-"));
afterAll(() => rmSync(folder, { recursive: true }));
const write = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};
const plan = write("doorway.light", sound);
const day = write(
  "the-day.light",
  'halfshade 1\nsession "The day" of "./doorway.light"\nmeasured { face.disc(towards: key) is f/5.6 }\n',
);
write("shelf.light", kit);

describe("what was meant", () => {
  test("a file whose name is nearly another's in its folder", async () => {
    const slip = await halfshade([join(folder, "doorway.ligth")]);
    expect(slip.exit).toBe(2);
    expect(slip.err).toContain('Perhaps "doorway.light"?');
    expect((await halfshade([join(folder, "nothing-like-it.light")])).err).not.toContain("Perhaps");
    expect((await halfshade([join(folder, "no-folder", "doorway.light")])).err).not.toContain("Perhaps");
  });

  test("a name in an answer of calc stays as it is written", async () => {
    const { err } = await halfshade(["calc", "hyperfocal_distance", "focal_lenght=50"]);
    expect(err).toMatch(/^hyperfocal_distance has no input "focal_lenght"/);
    expect((await halfshade(["calc", "hyperfocal"])).err).toMatch(/^There is no quantity "hyperfocal"/);
  });

  test("a statement among the words", async () => {
    for (const word of ["expect", "lesson", "table", "variant"]) {
      const { out, exit } = await halfshade(["words", word]);
      expect(exit, word).toBe(0);
      expect(out, word).toMatch(
        /is a statement and no kind of block; docs\/guide\/\w+\.md\s+is\s+about\s+it/,
      );
    }
    expect((await halfshade(["words", "variannt"])).err).toContain('Perhaps "variant"?');
  });

  test("every statement is shown by a text that is read whole", () => {
    for (const [word, [example]] of statements) {
      const text = ["sweep", "show"].includes(word) ? `table "T" {\n${example}\n}` : example;
      const found: string[] = [];
      const { complete } = parseFile({ name: "a", text: `halfshade 1\n${text}\n` }, ({ code }) =>
        found.push(code),
      );
      expect([complete, found], word).toEqual([true, []]);
    }
  });
});

describe("a session among several files", () => {
  test("is reported in its turn", async () => {
    const both = await halfshade([plan, day]);
    const [one, other] = [await halfshade([plan]), await halfshade([day])];
    expect(other.out).toContain("The day");
    expect(both.out).toBe(`${one.out}\n${other.out}`);
  });

  test("and in a folder, where a kit is passed over", async () => {
    const { out, exit } = await halfshade([folder, "--format", "json"]);
    expect(exit).toBe(0);
    const all = JSON.parse(out) as {
      readonly reports: readonly { readonly name: string }[];
      readonly sessions: readonly { readonly name: string; readonly session: { readonly title: string } }[];
    };
    expect(all.reports.map(({ name }) => name)).toEqual([plan]);
    expect(all.sessions.map(({ name, session }) => [name, session.title])).toEqual([[day, "The day"]]);
  });
});
