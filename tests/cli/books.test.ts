import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { halfshade } from "./fake-machine.js";
import { failing, kit, sound, untidy, warned, wrongUnit } from "./recipes.js";

const top = mkdtempSync(join(tmpdir(), "halfshade-books-"));
afterAll(() => rmSync(top, { recursive: true }));
const file = (path: string): string => join(top, path);
const good = ["book/a.light", "book/day/b.light"];

beforeAll(() => {
  for (const folder of ["book/day", "mixed", "kits", "none", "shared"])
    mkdirSync(file(folder), { recursive: true });
  for (const path of good) writeFileSync(file(path), sound);
  writeFileSync(file("book/shed.light"), kit);
  writeFileSync(file("mixed/1-failing.light"), failing);
  writeFileSync(file("mixed/2-wrong.light"), wrongUnit);
  writeFileSync(file("mixed/3-warned.light"), warned);
  writeFileSync(file("mixed/4-untidy.light"), untidy);
  writeFileSync(file("kits/shed.light"), kit);
  const uses = (name: string): string =>
    `halfshade 1\nkit "${name}"\nuse bench from "./shed.light"\ndefine light ${name} like bench {}\n`;
  for (const name of ["x", "y"]) writeFileSync(file(`shared/${name}.light`), uses(name));
  writeFileSync(file("shared/shed.light"), kit.replace("20 cm", "20"));
});

describe("check of a folder", () => {
  test("is a check of every file in it, in order, with one summary", async () => {
    const { exit, out, err } = await halfshade(["check", file("book")]);
    expect([exit, err]).toEqual([0, ""]);
    expect(out.split("\n").map((line) => line.replace(`${top}/`, ""))).toEqual([
      "book/a.light: no errors, 2 of 2 expectations passed, 0 warnings.",
      "book/day/b.light: no errors, 2 of 2 expectations passed, 0 warnings.",
      "book/shed.light: no errors.",
      "3 files (2 recipes, 1 kit): no errors, 4 of 4 expectations passed, 0 warnings.",
      "",
    ]);
  });

  test("one file has no second summary, and a pattern is the same as its files", async () => {
    expect((await halfshade(["check", file("book/a.light")])).out.split("\n")).toHaveLength(2);
    const named = await halfshade(["check", ...good.map(file)]);
    expect(await halfshade(["check", file("book/**/?.light")])).toEqual(named);
  });

  test("without any recipe, or without a match, is wrong use", async () => {
    for (const [operand, words] of [
      [file("none"), "whose name ends in .light"],
      [file("book/x*.light"), "No file is called like"],
    ] as const) {
      const { exit, out, err } = await halfshade(["check", operand]);
      expect([exit, out]).toEqual([2, ""]);
      expect(err).toContain(words);
    }
  });

  test("the worst file decides the exit, and the sum counts all", async () => {
    const { exit, out } = await halfshade(["check", file("mixed")]);
    expect(exit).toBe(1);
    expect(out).toMatch(/4 files \(4 recipes\): 1 error, [45] of 6 expectations passed, \d+ warnings?\.\n$/);
    expect((await halfshade(["check", file("mixed"), file("nowhere.light")])).exit).toBe(2);
  });

  test("a mistake of a kit is said once in the text, and counted in every file that uses it", async () => {
    const { out, exit } = await halfshade(["check", file("shared"), "--root", file("shared")]);
    expect(exit).toBe(1);
    expect(out.match(/\(unit\.missing\)/g)).toHaveLength(1);
    expect(out.match(/: 1 error\.\n/g)).toHaveLength(3);
    const data = JSON.parse(
      (await halfshade(["check", file("shared"), "--root", file("shared"), "--format", "json"])).out,
    );
    expect(data.files.map((one: { errors: number }) => one.errors)).toEqual([1, 1, 1]);
    expect(data.total).toMatchObject({ errors: 3, expectations: 0 });
  });

  test("--jobs takes a number from 1 on", async () => {
    for (const wrong of ["0", "x", "65"])
      expect((await halfshade(["check", file("book"), "--jobs", wrong])).exit).toBe(2);
    expect((await halfshade(["check", file("book"), "--jobs", "2"])).exit).toBe(0);
  });
});

describe("forms for continuous integration", () => {
  const lines = (path: string): readonly string[] => readFileSync(file(path), "utf8").split("\n");

  test("annotations: a line for every finding, failed expectation and warning", async () => {
    const { out, exit } = await halfshade(["check", file("mixed"), "--format", "annotations"]);
    expect(exit).toBe(1);
    const said = out.trimEnd().split("\n");
    for (const line of said) expect(line).toMatch(/^::(error|warning|notice) file=[^:]+::\S/);
    const at = lines("mixed/1-failing.light").findIndex((line) => line.includes("40 deg within")) + 1;
    expect(said[0]).toContain(`file=${top}/mixed/1-failing.light,line=${at},`);
    expect(said[0]).toContain("title=expectation.failed::Failed: key.angular_size is 40 deg");
    const wrong = lines("mixed/2-wrong.light").findIndex((line) => line.includes("2 mt")) + 1;
    expect(said[1]).toContain(`2-wrong.light,line=${wrong},`);
    expect(said[1]).toContain("title=unit.unknown::");
    for (const line of said.slice(2)) expect(line).toMatch(/^::\w+ file=[^,]*3-warned\.light,/);
    const lamp = lines("mixed/3-warned.light").findIndex((line) => line.startsWith("light ")) + 1;
    expect(lamp).toBeGreaterThan(0);
    const ceiling = said.find((line) => line.includes("title=lamp-through-ceiling::"));
    expect(ceiling).toContain(`3-warned.light,line=${lamp},endLine=${lamp},col=1,`);
    for (const line of said) expect(line).toMatch(/,line=\d+,/);
    expect(said.length).toBeGreaterThan(2);
  });

  test("a warning that a variant brings stands at the variant, with what it is about beside it", async () => {
    const text = `${sound}\nvariant "High" {\n  key.height: 2.9 m\n  keep expectations\n}\n`;
    mkdirSync(file("varied"));
    writeFileSync(file("varied/v.light"), text);
    const line = (start: string): number => text.split("\n").findIndex((one) => one.startsWith(start)) + 1;
    const { out } = await halfshade(["check", file("varied"), "--format", "sarif"]);
    const results = JSON.parse(out).runs[0].results;
    const ceiling = results.find((one: { ruleId: string }) => one.ruleId === "lamp-through-ceiling");
    expect(ceiling.locations[0].physicalLocation.region.startLine).toBe(line("variant "));
    expect(ceiling.relatedLocations[0].physicalLocation.region.startLine).toBe(line("light key"));
  });

  test("sarif says the same remarks, and explains every code", async () => {
    const { out, exit } = await halfshade(["check", file("mixed"), "--format", "sarif"]);
    expect(exit).toBe(1);
    const [run] = JSON.parse(out).runs;
    const annotated = (await halfshade(["check", file("mixed"), "--format", "annotations"])).out;
    expect(run.results).toHaveLength(annotated.trimEnd().split("\n").length);
    expect(run.results.map((one: { ruleId: string }) => one.ruleId).slice(0, 2)).toEqual([
      "expectation.failed",
      "unit.unknown",
    ]);
    for (const rule of run.tool.driver.rules) expect(rule.help?.text, rule.id).toBeTruthy();
    expect(run.results[1].fixes[0].artifactChanges[0].replacements[0].insertedContent.text).toBeTruthy();
  });

  test("a file that cannot be read is in them too", async () => {
    for (const form of ["annotations", "sarif"]) {
      const { out, exit, err } = await halfshade(["check", file("nowhere.light"), "--format", form]);
      expect(exit).toBe(2);
      expect(out).toContain("file.not-found");
      expect(err).toContain("file.not-found");
    }
  });

  test("a kit's mistake stands there once, at its place in the kit", async () => {
    const args = ["check", file("shared"), "--root", file("shared"), "--format", "annotations"];
    const { out } = await halfshade(args);
    expect(out.split("\n")).toHaveLength(2);
    expect(out).toContain("shared/shed.light,line=5,");
  });
});

describe("report of a folder", () => {
  test("gives one report after the other and passes kits over", async () => {
    const one = (await halfshade([file("book/a.light")])).out;
    expect(await halfshade(["report", file("book")])).toEqual({ exit: 0, out: `${one}\n${one}`, err: "" });
    const data = JSON.parse((await halfshade(["report", file("book"), "--format", "json"])).out);
    expect(data.format).toBe(1);
    expect(data.reports.map(({ name }: { name: string }) => name)).toEqual(good.map(file));
    const alone = JSON.parse((await halfshade([file("book/a.light"), "--format", "json"])).out);
    expect(data.reports[0].report).toEqual(alone);
  });

  test("goes on behind a recipe with errors, and tells by its exit", async () => {
    const { exit, out, err } = await halfshade(["report", file("mixed"), "--format", "json"]);
    expect(exit).toBe(1);
    expect(err).toContain("(unit.unknown)");
    expect(JSON.parse(out).reports).toHaveLength(3);
  });

  test("kits alone are nothing to report, and several do not go into one table", async () => {
    expect(await halfshade(["report", file("kits")])).toMatchObject({ exit: 2, out: "" });
    expect((await halfshade(["report", file("kits/shed.light")])).err).toContain("is a kit");
    expect((await halfshade(["report", file("book"), "--format", "csv"])).exit).toBe(2);
  });

  test("never writes over a recipe of the folder", async () => {
    const into = file("book/a.light");
    const { exit } = await halfshade(["report", file("book"), "-o", into, "--force", "--format", "text"]);
    expect(exit).toBe(2);
    expect(readFileSync(into, "utf8")).toBe(sound);
  });
});

test("format of a folder does every file in it", async () => {
  const { exit, out } = await halfshade(["format", "--check", file("mixed"), file("book")]);
  expect(exit).toBe(1);
  expect(out).toBe(`${file("mixed/4-untidy.light")}: not in its usual form.\n`);
});

describe("--set", () => {
  test("works with another value, says so in the title, and leaves the file alone", async () => {
    const args = ["report", file("book/a.light"), "--format", "json"];
    const plain = JSON.parse((await halfshade(args)).out);
    const { exit, out } = await halfshade([...args, "--set", "key.power=1/8", "--set=camera.aperture=f/4"]);
    const set = JSON.parse(out);
    expect(exit).toBe(0);
    expect(set.title).toBe(`${plain.title}, with key.power=1/8, camera.aperture=f/4`);
    // An eighth in place of a quarter is one stop less, and f/4 in place of f/5.6 lets one stop more in.
    expect(set.lights[0].power.below_full - plain.lights[0].power.below_full).toBeCloseTo(1, 9);
    expect(set.expectations.map((one: { outcome: string }) => one.outcome)).toEqual(["passed", "passed"]);
    expect(readFileSync(file("book/a.light"), "utf8")).toBe(sound);
  });

  test("is checked like the recipe, and mistakes point at the option", async () => {
    const { exit, err } = await halfshade(["scene", file("book/a.light"), "--set", "key.distance=3 mt"]);
    expect(exit).toBe(1);
    expect(err).toContain("--set:1:");
    expect(err).toContain("key.distance=3 mt\n");
    expect(err).toContain("(unit.unknown)");
  });

  test("holds in every recipe of a book, and passes kits over", async () => {
    const { exit, out } = await halfshade(["check", file("book"), "--set", "key.power=1/64"]);
    expect(exit).toBe(1);
    expect(out).toContain("3 files (2 recipes, 1 kit): no errors, 2 of 4 expectations passed");
    const wrong = await halfshade(["check", file("book"), "--set", "rim.power=1/64"]);
    expect(wrong.out.match(/\(path\.unknown\)/g)).toHaveLength(2);
    expect((await halfshade(["check", file("book"), "--set"])).exit).toBe(2);
  });
});
