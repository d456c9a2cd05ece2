import {
  existsSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { commands } from "../../src/cli/arguments/table.js";
import { version } from "../../src/cli/version.js";
import { catalogue } from "../../src/diagnostics/catalogue/index.js";
import { rules } from "../../src/report/rules/index.js";
import { reportSchema } from "../../src/report/schema/report.js";
import { blocks } from "../../src/vocabulary/index.js";
import { halfshade } from "./fake-machine.js";
import { failing, kit, sound, undecidable, untidy, warned, wrongUnit } from "./recipes.js";

const folder = mkdtempSync(join(tmpdir(), "halfshade-cli-"));
afterAll(() => rmSync(folder, { recursive: true }));
const file = (name: string): string => join(folder, name);
const write = (name: string, text: string): string => {
  writeFileSync(file(name), text);
  return file(name);
};
let good = "";
let bad = "";
beforeAll(() => {
  good = write("good.light", sound);
  bad = write("bad.light", wrongUnit);
});

describe("halfshade report", () => {
  test("is what a file alone means, and goes to standard output with exit 0", async () => {
    const one = await halfshade([good]);
    expect(one).toMatchObject({ exit: 0 });
    expect(one.out).toContain("One lamp through a doorway\n====");
    expect(await halfshade(["report", good])).toEqual(one);
  });

  test("json is a report by its schema, the same bytes every time, with no trace of the folder", async () => {
    const { out, exit } = await halfshade([good, "--format", "json"]);
    expect(exit).toBe(0);
    const report = reportSchema.parse(JSON.parse(out));
    expect(report.expectations.map((item) => item.line)).toEqual([56, 57]);
    expect((await halfshade(["-", "--format=json"], { input: sound })).out).toBe(out);
    expect(out).not.toContain(folder);
  });

  test("text, markdown and csv show what json holds", async () => {
    const report = reportSchema.parse(JSON.parse((await halfshade([good, "--format", "json"])).out));
    for (const form of ["text", "markdown", "csv"]) {
      const { out, exit } = await halfshade([good, "--format", form]);
      expect(exit).toBe(0);
      const flat = out.replace(/\\/g, "").replace(/\s+/g, " ");
      for (const light of report.lights) expect(flat).toContain(light.name);
      for (const station of report.stations) expect(flat).toContain(station.name);
      for (const item of report.results) expect(flat).toContain(item.text);
      for (const item of report.assumed) expect(flat).toContain(item.value);
    }
  });

  test.each([
    ["a failed expectation", failing, 1],
    ["an undecidable expectation", undecidable, 1],
    ["warnings without a limit", warned, 0],
  ])("%s", async (_name, text, exit) => {
    expect((await halfshade(["-"], { input: text })).exit).toBe(exit);
  });

  test("an error gives no report, a finding on standard error and exit 1", async () => {
    const { out, err, exit } = await halfshade([bad]);
    expect(out).toBe("");
    expect(err).toMatch(/bad\.light:\d+:\d+ {2}error|bad\.light:\d+:\d+\n/);
    expect(err).toContain("(unit.unknown)");
    expect(exit).toBe(1);
  });

  test("a kit has no report", async () => {
    const { err, exit } = await halfshade(["-"], { input: kit });
    expect(err).toContain("standard-input is a kit");
    expect(exit).toBe(2);
  });

  test("-o writes a new file by its ending, keeps one that is there unless told, and never the recipe", async () => {
    const to = file("out.json");
    expect(await halfshade([good, "-o", to])).toEqual({ exit: 0, out: "", err: "" });
    expect(readFileSync(to, "utf8")).toBe((await halfshade([good, "--format", "json"])).out);
    writeFileSync(to, "mine");
    const again = await halfshade([good, "-o", to]);
    expect(again.exit).toBe(2);
    expect(again.err).toContain("(file.exists)");
    expect(again.err).toContain("--force");
    expect(readFileSync(to, "utf8")).toBe("mine");
    expect((await halfshade([good, "-o", to, "--force"])).exit).toBe(0);
    expect(readFileSync(to, "utf8")).not.toBe("mine");
    symlinkSync(good, file("same.txt"));
    for (const name of [good, file("same.txt")]) {
      expect((await halfshade([good, "-o", name, "--force"])).exit).toBe(2);
      expect(readFileSync(good, "utf8")).toBe(sound);
    }
  });
});

describe("halfshade check", () => {
  test("a sound recipe: one line, exit 0", async () => {
    expect(await halfshade(["check", good])).toEqual({
      exit: 0,
      out: `${good}: no errors, 2 of 2 expectations passed, 0 warnings.\n`,
      err: "",
    });
    expect((await halfshade(["check", "--no-light", good])).out).toBe(`${good}: no errors.\n`);
  });

  test("finds what is wrong in every file, and the worst decides the exit", async () => {
    const { out, err, exit } = await halfshade(["check", good, bad, file("none.light")]);
    expect(out).toContain("(unit.unknown)");
    expect(out).toContain(`${good}: no errors`);
    expect(out).toContain(`${bad}: 1 error`);
    expect(err).toContain("(file.not-found)");
    expect(exit).toBe(2);
    expect((await halfshade(["check", good, bad])).exit).toBe(1);
  });

  test("says expectations that do not hold, with the line, and those that cannot be decided", async () => {
    const failed = await halfshade(["check", "-"], { input: failing });
    expect(failed.out.replace(/\s+/g, " ")).toMatch(/failed key\.angular_size.* said in line 56/);
    expect(failed.exit).toBe(1);
    const open = await halfshade(["check", "-"], { input: undecidable });
    expect(open.out).toContain("not decidable");
    expect(open.exit).toBe(1);
    expect((await halfshade(["check", "--no-light", "-"], { input: failing })).exit).toBe(0);
  });

  test("warnings count only against --max-warnings", async () => {
    const free = await halfshade(["check", "-"], { input: warned });
    const count = Number(/(\d+) warnings?\./.exec(free.out)?.[1]);
    expect(count).toBeGreaterThan(0);
    expect(free.exit).toBe(0);
    expect((await halfshade(["check", "-", "--max-warnings", String(count)], { input: warned })).exit).toBe(
      0,
    );
    expect(
      (await halfshade(["check", "-", "--max-warnings", String(count - 1)], { input: warned })).exit,
    ).toBe(1);
    expect((await halfshade(["-", "--max-warnings=0"], { input: warned })).exit).toBe(1);
    for (const wrong of ["-1", "x", "1.5", ""]) {
      expect((await halfshade(["check", "-", `--max-warnings=${wrong}`], { input: warned })).exit).toBe(2);
    }
  });

  test("json says the same as the text", async () => {
    const { out, exit } = await halfshade(["check", "--format", "json", bad, good]);
    const data = JSON.parse(out);
    expect(exit).toBe(1);
    expect(data.format).toBe(1);
    expect(data.files.map((item: { name: string; errors: number }) => [item.name, item.errors])).toEqual([
      [bad, 1],
      [good, 0],
    ]);
    const [finding] = data.files[0].diagnostics;
    const text = (await halfshade(["check", bad])).out;
    expect(text).toContain(`${finding.file}:${finding.line}:${finding.column}`);
    expect(text.replace(/\s+/g, " ")).toContain(finding.message);
    expect(data.files[1].expectations).toHaveLength(2);
  });
});

describe("halfshade format", () => {
  test("prints the usual form, which keeps meaning and comments", async () => {
    const { out, exit } = await halfshade(["format", "-"], { input: untidy });
    expect(out).toBe(sound.replace("  height: 1.68 m", "  height: 1.68 m  # her shoes off"));
    expect(exit).toBe(0);
    expect((await halfshade(["format", "-"], { input: out })).out).toBe(out);
  });

  test("--check prints no text and tells by its exit", async () => {
    expect(await halfshade(["format", "--check", good])).toEqual({ exit: 0, out: "", err: "" });
    const name = write("untidy.light", untidy);
    const { out, exit } = await halfshade(["format", "--check", good, name]);
    expect(out).toBe(`${name}: not in its usual form.\n`);
    expect(exit).toBe(1);
    expect(readFileSync(name, "utf8")).toBe(untidy);
  });

  test("--write changes what is not in its form, and leaves the rest alone", async () => {
    const name = write("write.light", untidy);
    utimesSync(good, 1000, 1000);
    const { out, exit } = await halfshade(["format", "--write", name, good]);
    expect(out).toBe(`${name}: written.\n`);
    expect(exit).toBe(0);
    expect((await halfshade(["format", "--check", name])).exit).toBe(0);
    expect(statSync(good).mtimeMs).toBe(1_000_000);
  });

  test("a file with mistakes is left as it is, and the others are done", async () => {
    const broken = write("broken.light", untidy.replace("room {", "room {{"));
    const other = write("other.light", untidy);
    const { err, exit } = await halfshade(["format", "--write", broken, other]);
    expect(exit).toBe(1);
    expect(err).toContain(`${broken}: left as it is.`);
    expect(readFileSync(broken, "utf8")).toBe(untidy.replace("room {", "room {{"));
    expect((await halfshade(["format", "--check", other])).exit).toBe(0);
  });

  test("refuses what cannot be meant", async () => {
    expect((await halfshade(["format", "--write", "--check", good])).exit).toBe(2);
    expect((await halfshade(["format", "--write", "-"], { input: sound })).exit).toBe(2);
  });
});

describe("halfshade scene", () => {
  test("gives out the set-up in metres", async () => {
    const { out, exit } = await halfshade(["scene", good, "--format", "json"]);
    const scene = JSON.parse(out);
    expect(exit).toBe(0);
    expect(scene.format).toBe(1);
    expect(scene.sources).toHaveLength(1);
    expect(scene.polygons.map((item: { name: string }) => item.name)).toContain("floor");
    expect((await halfshade(["scene", good])).out).toBe(out);
    expect((await halfshade(["scene", bad])).exit).toBe(1);
  });
});

describe("halfshade calc", () => {
  test("works out a quantity: a lamp of 10 cm radius at 1 m is 2 asin(0.1) wide", async () => {
    const { out, exit } = await halfshade([
      "calc",
      "angular_diameter_sphere",
      "radius_m=0.1",
      "distance=100cm",
    ]);
    expect(exit).toBe(0);
    expect(Number.parseFloat(out)).toBeCloseTo((2 * Math.asin(0.1) * 180) / Math.PI, 7);
    const json = await halfshade([
      "calc",
      "angular_diameter_sphere",
      "radius_m=0.1",
      "distance_m=1",
      "--format",
      "json",
    ]);
    expect(JSON.parse(json.out)).toMatchObject({
      quantity: "angular_diameter_sphere",
      unit: "deg",
      reason: null,
    });
  });

  test("lists, describes, and answers misuse with exit 2", async () => {
    expect((await halfshade(["calc"])).out).toContain("angular_diameter_sphere");
    expect((await halfshade(["calc", "angular_diameter_sphere"])).out).toContain("radius_m (m)");
    for (const args of [
      ["angular_diameter_spher", "x=1"],
      ["angular_diameter_sphere", "radius_m=-1", "distance_m=1"],
    ]) {
      const { out, err, exit } = await halfshade(["calc", ...args]);
      expect([out, exit]).toEqual(["", 2]);
      // A sentence; one that begins with a name of the formula leaves the name as it is.
      expect(err).toMatch(/^(?:[A-Z]|radius_m ).*[.?)]\n$/);
    }
  });

  test("says why a file of an input cannot be read", async () => {
    const { err, exit } = await halfshade(["calc", "ies_total_lumens", `file=${file("none.ies")}`]);
    expect(exit).toBe(2);
    expect(err).toContain("file.not-found");
  });
});

describe("halfshade words", () => {
  test("lists every kind of block, and every property of one", async () => {
    const all = (await halfshade(["words"])).out;
    for (const [kind, row] of Object.entries(blocks)) {
      expect(all).toContain(`${kind}\n`);
      const { out } = await halfshade(["words", kind]);
      for (const property of row.properties) expect(out).toContain(`  ${property.name}: `);
    }
  });

  test.each(["results", "units", "surfaces"])("lists %s", async (list) => {
    const { out, exit } = await halfshade(["words", list]);
    expect(exit).toBe(0);
    const rows = JSON.parse((await halfshade(["words", list, "--format", "json"])).out)[list];
    for (const { name } of rows) expect(out).toContain(name);
  });

  test("a misspelt kind is answered with the near one", async () => {
    const { err, exit } = await halfshade(["words", "lihgt"]);
    expect([err, exit]).toEqual([
      'There is no kind of block "lihgt". Perhaps "light"? `halfshade words` lists them.\n',
      2,
    ]);
  });
});

describe("halfshade explain", () => {
  const codes = [...Object.keys(catalogue), ...rules.map((rule) => rule.code)];

  test("lists every code of findings and warnings", async () => {
    const { out } = await halfshade(["explain"]);
    for (const code of codes) expect(out).toContain(`${code}  `);
  });

  test("has a page for each", async () => {
    for (const code of codes) {
      const { out, exit } = await halfshade(["explain", code]);
      expect(exit).toBe(0);
      expect(out.startsWith(`${code}  `)).toBe(true);
      expect(out.split("\n").length).toBeGreaterThan(4);
    }
  });

  test("a misspelt code is answered with near ones", async () => {
    const { err, exit } = await halfshade(["explain", "unit.unknwon"]);
    expect(err).toContain('Perhaps "unit.unknown"');
    expect(exit).toBe(2);
    expect((await halfshade(["explain", "ceiling"])).err).toContain("lamp-near-ceiling");
  });
});

describe("halfshade new", () => {
  test("writes a recipe that passes its own check and is in its usual form", async () => {
    const name = file("mine.light");
    const { out, exit } = await halfshade(["new", name]);
    expect([out, exit]).toEqual([`${name}: written. \`halfshade ${name}\` works it out.\n`, 0]);
    expect((await halfshade(["check", name, "--max-warnings", "0"])).exit).toBe(0);
    expect((await halfshade(["format", "--check", name])).exit).toBe(0);
    expect((await halfshade(["new", "-"])).out).toBe(readFileSync(name, "utf8"));
  });

  test("never writes over a file", async () => {
    const name = write("taken.light", "mine");
    const { err, exit } = await halfshade(["new", name]);
    expect(err).toContain("(file.exists)");
    expect(exit).toBe(2);
    expect(readFileSync(name, "utf8")).toBe("mine");
  });
});

describe("halfshade show", () => {
  test("tokens have their place, kind and spelling", async () => {
    const { out } = await halfshade(["show", "tokens", "-"], { input: "halfshade 1\n# note\n" });
    expect(out).toMatch(/^1:1 +\w+ +halfshade\n1:11 +Numeral +1\n/);
    expect(out).toMatch(/2:1 +Comment +# note\n/);
    expect(
      JSON.parse((await halfshade(["show", "tokens", good, "--format", "json"])).out).tokens[0].line,
    ).toBe(1);
  });

  test("the tree and the model are JSON, of a broken text too", async () => {
    expect(JSON.parse((await halfshade(["show", "tree", good])).out).kind).toBe("file");
    expect(JSON.parse((await halfshade(["show", "model", good])).out).title).toBe(
      "One lamp through a doorway",
    );
    const broken = await halfshade(["show", "tree", "-"], { input: `${sound}light {` });
    expect(JSON.parse(broken.out).kind).toBe("file");
    expect(broken.exit).toBe(1);
  });
});

describe("the command as a whole", () => {
  test("says its version", async () => {
    expect(await halfshade(["--version"])).toEqual({ exit: 0, out: `${version}\n`, err: "" });
    const own = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
    expect(version).toBe(own.version);
  });

  test("helps: in general, and with every command and option", async () => {
    const general = await halfshade(["--help"]);
    expect(general.exit).toBe(0);
    expect((await halfshade(["help"])).out).toBe(general.out);
    for (const command of commands) {
      expect(general.out).toContain(`  ${command.name} `);
      const { out, exit } = await halfshade(["help", command.name]);
      expect(exit).toBe(0);
      for (const option of command.options) expect(out).toContain(`--${option.name}`);
      if (command.name !== "help") expect((await halfshade([command.name, "--help"])).out).toBe(out);
    }
    for (const text of [general.out, (await halfshade(["help", "report"])).out]) {
      for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
    }
  });

  test.each([
    [[], "halfshade COMMAND"],
    [["chek", "a.light"], 'Perhaps "check"?'],
    [["check"], "needs FILE..."],
    [["check", "--no-ligth", "a.light"], 'Perhaps "--no-light"?'],
    [["report", "--write", "a.light"], "`halfshade format`"],
    [["scene", "a.light", "b.light"], 'no more: "b.light"'],
    [["a.light", "--format", "jsn"], 'Perhaps "json"?'],
    [["a.light", "--format"], "--format needs a value"],
    [["check", "--no-light=yes", "a.light"], "takes no value"],
    [["a.light", "--width", "39"], "from 40 to 1000"],
    [["show", "tokns", "a.light"], 'Perhaps "tokens"?'],
    [["help", "chekc"], 'Perhaps "check"?'],
    [["calc", "\u001b[2J", "a=1"], "\\u{1b}[2J"],
  ])("misuse %j is said with exit 2 and nothing on standard output", async (args, words) => {
    const { out, err, exit } = await halfshade(args);
    expect(out).toBe("");
    expect(err).toContain(words);
    expect(err).not.toMatch(/\u001b/);
    expect(exit).toBe(2);
  });

  test("a file whose name starts with a dash is named behind --", async () => {
    expect((await halfshade(["check", "--", "-none.light"])).err).toContain("There is no file `-none.light`");
  });

  test("colours only a terminal, unless told otherwise, and not where NO_COLOR is set", async () => {
    const esc = "\u001b[";
    const colour = async (args: readonly string[], given: Parameters<typeof halfshade>[1]) =>
      (await halfshade(["check", bad, ...args], given)).out.includes(esc);
    expect(await colour([], {})).toBe(false);
    expect(await colour([], { terminal: true })).toBe(true);
    expect(await colour([], { terminal: true, env: { NO_COLOR: "1" } })).toBe(false);
    expect(await colour([], { terminal: true, env: { NO_COLOR: "" } })).toBe(true);
    expect(await colour([], { terminal: true, env: { TERM: "dumb" } })).toBe(false);
    expect(await colour(["--color", "never"], { terminal: true })).toBe(false);
    expect(await colour(["--color", "always"], { env: { NO_COLOR: "1" } })).toBe(true);
    const to = file("plain.txt");
    await halfshade([good, "-o", to], { terminal: true });
    expect(readFileSync(to, "utf8")).not.toContain(esc);
  });

  test("keeps to the width of the terminal, at most 100, and to --width", async () => {
    const longest = async (args: readonly string[], columns?: number) => {
      const { out } = await halfshade(
        [good, "--color", "never", ...args],
        columns === undefined ? {} : { terminal: true, columns },
      );
      return Math.max(...out.split("\n").map((line) => line.length));
    };
    expect(await longest([])).toBeLessThanOrEqual(80);
    expect(await longest([], 60)).toBeLessThanOrEqual(60);
    expect(await longest([], 20)).toBeLessThanOrEqual(40);
    expect(await longest([], 300)).toBeLessThanOrEqual(100);
    expect(await longest(["--width", "120"])).toBeGreaterThan(100);
  });

  test("a fault of its own is one sentence with exit 2, and a trace only for those who ask", async () => {
    const broken = {
      get input(): string {
        throw new TypeError("a slip");
      },
    };
    const quiet = await halfshade(["check", "-"], broken);
    expect(quiet.exit).toBe(2);
    expect(quiet.err).toBe(
      "This is a mistake of halfshade itself, not of your file; please report it: a slip\n",
    );
    const env = { HALFSHADE_DEBUG: "1" };
    const loud = await halfshade(
      ["check", "-"],
      Object.defineProperty({ env }, "input", {
        get: () => {
          throw new TypeError("a slip");
        },
      }),
    );
    expect(loud.err).toContain("    at ");
  });

  test("an output that the system does not take is said as such, with exit 2", async () => {
    const full = {
      get input(): string {
        throw Object.assign(new Error("ENOSPC: no space left on device, write"), {
          code: "ENOSPC",
          syscall: "write",
        });
      },
    };
    const found = await halfshade(["check", "-"], full);
    expect([found.exit, found.err]).toEqual([2, "The output could not be written: the disk is full.\n"]);
  });

  test("a page of a code has no holes of a template in it", async () => {
    const found = await halfshade(["explain", "unit.wrong"]);
    expect(found.out).toContain("`...` wants ..., not ....".replace("....", "..."));
    expect((await halfshade(["explain"])).out).not.toMatch(/\{[a-zA-Z]+\}/);
  });

  test("leaves nothing behind in the folder", () => {
    expect(existsSync(file(".halfshade"))).toBe(false);
  });
});
