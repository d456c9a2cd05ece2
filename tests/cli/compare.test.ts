import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { projectRoot } from "../arch/source-tree.js";
import { halfshade } from "./fake-machine.js";

const folder = mkdtempSync(join(tmpdir(), "halfshade-compare-"));
afterAll(() => rmSync(folder, { recursive: true }));

const base = `halfshade 1
recipe "Wheelwright by the door"
subject { height: 1.75 m }
light key { role: key, shape: sphere(10 cm), calibration: metered(f/16, at: 2 m, ISO 100), power: 1/2, distance: 2 m, bearing: left(40 deg), elevation: 20 deg }
camera { held: level, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 3 m, height: 1.5 m }
expect key.angular_size < 3 deg
`;
const variants = `variant "Near" { key.distance: 1 m, expect key.angular_size > 5 deg }
variant "Nearer" from "Near" { key.distance: 80 cm, keep expectations, expect key.angular_size < 1 deg }
`;
const write = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};
const file = write("door.light", base + variants);
const plain = write("plain.light", base);

describe("halfshade compare", () => {
  test("says what is changed and what that does, for all variants or for those that are named", async () => {
    const all = await halfshade(["compare", file]);
    expect(all).toMatchObject({ exit: 0, err: "" });
    expect(all.out).toContain('"Near" against the recipe');
    expect(all.out).toContain('"Nearer" against the recipe');
    expect(all.out).toMatch(/key\.distance +2 m +1 m/);
    expect(all.out).toMatch(/key: angular size +2\.9 deg +5\.7 deg +\+100 %/);
    const one = await halfshade(["compare", file, "Near"]);
    expect(all.out.startsWith(one.out)).toBe(true);
    expect(one.out).not.toContain("Nearer");
  });

  test("the forms hold the same comparisons", async () => {
    const json = JSON.parse((await halfshade(["compare", file, "Near", "--format", "json"])).out);
    expect(json.format).toBe(1);
    expect(json.comparisons[0].changes).toEqual([{ path: "key.distance", before: "2 m", after: "1 m" }]);
    const markdown = await halfshade(["compare", file, "Near", "--format", "markdown"]);
    expect(markdown.out).toContain("| key.distance | 2 m | 1 m |");
    const csv = await halfshade(["compare", file, "Near", "--format=csv"]);
    expect(csv.out).toContain('"set-up","the recipe","""Near""","key.distance","2 m","1 m",,""');
  });

  test("expectations that do not hold stand in the column of the set-up in which they do not", async () => {
    const nearer = (await halfshade(["compare", file, "Nearer"])).out;
    const part = nearer.slice(nearer.indexOf("Expectations that do not hold"));
    // A ball of 10 cm at 80 cm: 2 asin(0.05 / 0.8) = 7.17 deg; what it keeps, more than 5 deg, holds.
    expect(part).not.toContain("> 5 deg");
    expect(part).toMatch(/expect key\.angular_size < 1 deg +- +7\.2 deg/);
    expect((await halfshade(["compare", file, "Near"])).out).not.toContain("do not hold");
    const { comparisons } = JSON.parse((await halfshade(["compare", file, "Nearer", "--format=json"])).out);
    expect(
      comparisons[0].failed.map((row: { in: string; outcome: string }) => [row.in, row.outcome]),
    ).toEqual([['"Nearer"', "failed"]]);
    expect((await halfshade(["compare", file, "Nearer", "--format=csv"])).out).toContain(
      '"failed","the recipe"',
    );
    expect((await halfshade(["compare", file, "Nearer", "--format=markdown"])).out).toContain(
      "| Does not hold |",
    );
  });

  test("a title that is not there, a recipe without variants", async () => {
    const wrong = await halfshade(["compare", file, "Naer"]);
    expect(wrong).toMatchObject({ exit: 2, out: "" });
    expect(wrong.err).toContain('"Near"');
    expect(await halfshade(["compare", plain])).toMatchObject({ exit: 2 });
    expect((await halfshade(["compare", plain, "Near"])).err).toContain("It has none.");
  });
});

test("halfshade diff holds two files against each other, and a file against itself is the same", async () => {
  const other = write("other.light", base.replace("distance: 2 m", "distance: 1 m"));
  const { out, exit } = await halfshade(["diff", plain, other]);
  expect(exit).toBe(0);
  expect(out).toMatch(/key\.distance/);
  expect(out).toMatch(/\+100 %/);
  const same = await halfshade(["diff", plain, plain]);
  expect(same.out).toContain("Nothing is written differently.\n\nThe light is the same.");
  const broken = write("broken.light", base.replace("recipe", "recpie"));
  expect((await halfshade(["diff", plain, broken])).exit).toBe(1);
});

test("report --variant is the report of the variant; check asks every set-up for itself", async () => {
  const report = JSON.parse((await halfshade([file, "--variant", "Near", "--format", "json"])).out);
  expect(report.variant).toEqual({ title: "Near", from: null, held: [] });
  expect(report.expectations.map((row: { outcome: string }) => row.outcome)).toEqual(["passed"]);
  expect((await halfshade([file, "--variant", "Near"])).out).toContain("Wheelwright by the door: Near\n====");
  expect((await halfshade([file, "--variant", "Far"])).exit).toBe(2);
  const checked = await halfshade(["check", file]);
  expect(checked.exit).toBe(1);
  expect(checked.out).toContain('Variant "Nearer":');
  expect(checked.out).not.toContain('Variant "Near":\n\n  failed');
  expect(checked.out).toContain("3 of 4 expectations passed");
  const json = JSON.parse((await halfshade(["check", file, "--format", "json"])).out);
  const [only] = json.files;
  const outcomes = (rows: readonly { outcome: string }[]): string => rows.map((row) => row.outcome).join(" ");
  expect(only.variants.map((row: { title: string }) => row.title)).toEqual(["Near", "Nearer"]);
  expect(
    only.variants.map((row: { expectations: { outcome: string }[] }) => outcomes(row.expectations)),
  ).toEqual(["passed", "passed failed"]);
});

describe("what only a variant has counts in a check", () => {
  // A lamp 7 m off is behind the walls, and no power is enough for f/64.
  const text = `${base.replace("power: 1/2", "power: 1/2, full_power: 400 Ws, lowest_power: 1/64")}
room { size: 8 x 9 x 3.2 m, walls { reflectance: 40 % }, ceiling { reflectance: 60 % }, floor { reflectance: 20 % } }
hold face.disc(towards: key) is f/64 by key.power
variant "Seen" { key.distance: 7 m, keep expectations }
`;
  const one = write("seen.light", text);
  const none = write("unseen.light", base.replace("2 m, bearing", "3.3 m, bearing"));

  test("a warning, and a hold that is not held: in the summary, the totals and the exit code", async () => {
    const { out, exit } = await halfshade(["check", one]);
    expect(exit).toBe(0);
    expect(out).toContain("Not held: hold face.disc(towards: key) is f/64 by key.power");
    const [, count, held] = /passed, (\d+) warnings \((.*)\)\./.exec(out) ?? [];
    expect(held).toBe("1 of them a hold that is not held");
    const { total, files } = JSON.parse((await halfshade(["check", one, "--format", "json"])).out);
    expect(total).toMatchObject({ warnings: Number(count), not_held: 1 });
    const said = [...out.matchAll(/^ {2}(Stop|Check):/gm)].length;
    expect(Number(count)).toBe(said + 1);
    const isLoud = (row: { severity: string }): boolean => row.severity !== "note";
    expect(said).toBeGreaterThan(files[0].warnings.filter(isLoud).length);
    const most = Number(count);
    expect((await halfshade(["check", one, "--max-warnings", String(most)])).exit).toBe(0);
    expect((await halfshade(["check", one, "--max-warnings", String(most - 1)])).exit).toBe(1);
    const whole = JSON.parse((await halfshade(["check", one, none, "--format", "json"])).out).total;
    expect(whole.not_held).toBe(1);
  });

  test("and stands among the annotations and in the log, at the variant", async () => {
    const lines = (await halfshade(["check", one, "--format", "annotations"])).out.split("\n");
    const own = lines.filter((line) => line.includes("title=hold.missed"));
    expect(own.length).toBe(1);
    expect(own[0]).toMatch(/^::warning file=.*seen\.light,line=10,/);
    expect(own[0]).toContain('Variant "Seen": Not held');
    const { runs } = JSON.parse((await halfshade(["check", one, "--format", "sarif"])).out);
    const found = runs[0].results.filter((row: { ruleId: string }) => row.ruleId === "hold.missed");
    expect(found.length).toBe(1);
    expect(found[0].locations[0].physicalLocation.region.startLine).toBe(10);
  });
});

describe("in a repository", () => {
  const program = join(projectRoot, "dist/cli.cjs");
  const page = readFileSync(join(projectRoot, "docs/guide/variants.md"), "utf8");
  const repo = mkdtempSync(join(tmpdir(), "halfshade-git-"));
  afterAll(() => rmSync(repo, { recursive: true }));
  const bin = join(repo, "bin");
  const env = {
    PATH: `${bin}:${process.env.PATH ?? ""}`,
    HOME: repo,
    GIT_CONFIG_NOSYSTEM: "1",
  };
  const sh = (line: string) => spawnSync("sh", ["-c", line], { cwd: repo, env, encoding: "utf8" });

  test("the lines of the page make git compare reports, and recipes", () => {
    const lines = [...page.matchAll(/^git config .*$/gm)].map(([line]) => line);
    expect(lines.length).toBe(3);
    const attributes = /^\*\.light .*$/m.exec(page)?.[0] ?? "";
    const started = sh(
      `mkdir bin && printf '#!/bin/sh\\nexec ${process.execPath} ${program} "$@"\\n' > bin/halfshade && chmod +x bin/halfshade &&
       git init -q . && git config user.email a@b.example && git config user.name a`,
    );
    expect(started.stderr).toBe("");
    for (const line of lines) expect(sh(line)).toMatchObject({ status: 0, stderr: "" });
    writeFileSync(join(repo, ".gitattributes"), `${attributes}\n`);
    writeFileSync(join(repo, "door.light"), base);
    expect(sh("git add .gitattributes door.light && git commit -qm one").status).toBe(0);
    // A failed expectation makes the exit code 1, and git has to show the report all the same.
    writeFileSync(join(repo, "door.light"), base.replace("distance: 2 m", "distance: 1 m"));
    const diff = sh("git --no-pager diff");
    expect(diff.stderr).toBe("");
    expect(diff.stdout).toMatch(/^-.*2\.9 deg/m);
    expect(diff.stdout).toMatch(/^\+.*5\.7 deg/m);
    const tool = sh("git difftool -t halfshade");
    expect(tool.stdout).toMatch(/key\.distance/);
    expect(tool.stdout).toContain("+100 %");
  });
});
