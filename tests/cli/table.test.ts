import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { run } from "../../src/cli/run.js";
import { halfshade } from "./fake-machine.js";

const folder = mkdtempSync(join(tmpdir(), "halfshade-table-"));
afterAll(() => rmSync(folder, { recursive: true }));
const file = join(folder, "lesson.light");

const text = `halfshade 1
recipe "A ladder in the hoist shaft"
subject { height: 1.715 m }
light key {
  role: key, shape: sphere(8 cm), calibration: metered(f/11, at: 2 m, ISO 100)
  distance: 2 m, bearing: left(30 deg), elevation: 0 deg
}
camera {
  held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 3 m, height: 1.5 m
}
table "Ladder" {
  sweep key.distance over [2 m, 2.8284 m, 4 m]
  show f_number(face.disc(towards: key)) "Meter"
  worksheet: ["Meter"]
}
table "Long" {
  sweep key.distance from 1 m to 5 m count 10000
  show key.angular_size as deg "Size"
}
`;
beforeAll(() => writeFileSync(file, text));

test("with other values, which also its title says", async () => {
  const args = ["table", file, "Ladder", "--format", "json"];
  const plain = JSON.parse((await halfshade(args)).out);
  const { exit, out } = await halfshade([
    ...args,
    "--set",
    "key.power=1/4",
    "--set",
    "camera.sensitivity=ISO400",
  ]);
  const set = JSON.parse(out);
  expect(exit).toBe(0);
  expect(set.recipe).toBe("A ladder in the hoist shaft, with key.power=1/4, camera.sensitivity=ISO400");
  // A quarter of the light on four times the sensitivity: the meter's answer is the same.
  const meter = (table: typeof set): number[] =>
    table.tables[0].rows.map((row: { value: number }[]) => row[1]?.value);
  for (const [i, value] of meter(set).entries()) expect(value).toBeCloseTo(meter(plain)[i] ?? 0, 9);
  const quarter = JSON.parse((await halfshade([...args, "--set", "key.power=1/4"])).out);
  // Two stops less by the power alone: half the f-number.
  for (const [i, value] of meter(quarter).entries()) expect(value).toBeCloseTo((meter(plain)[i] ?? 0) / 2, 9);
});

test("one table by its title", async () => {
  const { exit, out, err } = await halfshade(["table", file, "Ladder"]);
  expect({ exit, err }).toEqual({ exit: 0, err: "" });
  // f/11 at 2 m is f/8 at 2.83 m and f/5.6 at 4 m: each 1.4 times as far takes one stop (inverse square, by hand).
  expect(
    out
      .split("\n")
      .slice(3, 6)
      .map((line) => line.trim()),
  ).toEqual(["2 m   f/11", "2.8284 m    f/8", "4 m  f/5.6"]);
});

test("a title that is not there, a column that is not there, csv of several, a recipe without tables", async () => {
  const wrong = await halfshade(["table", file, "Lader"]);
  expect(wrong).toMatchObject({ exit: 2, out: "" });
  expect(wrong.err).toContain("Ladder");
  const column = await halfshade(["table", file, "Ladder", "--blank", "Meeter"]);
  expect(column).toMatchObject({ exit: 2, out: "" });
  expect(column.err).toContain("Meter");
  expect(await halfshade(["table", file, "--format", "csv"])).toMatchObject({ exit: 2, out: "" });
  const none = join(folder, "none.light");
  writeFileSync(none, text.slice(0, text.indexOf("table")));
  expect(await halfshade(["table", none])).toMatchObject({ exit: 2, out: "" });
  expect((await halfshade(["table", file, "Long", "--worksheet"])).err).toContain("--blank");
});

test("a mistake in the recipe is said, and nothing is given out", async () => {
  const broken = join(folder, "broken.light");
  writeFileSync(broken, text.replace("count 10000", "count 10001"));
  const { exit, out, err } = await halfshade(["table", broken]);
  expect({ exit, out }).toEqual({ exit: 1, out: "" });
  expect(err).toContain("limit.rows");
});

test("worksheets and their answers", async () => {
  const sheet = await halfshade(["table", file, "Ladder", "--worksheet"]);
  expect(sheet.out).not.toContain("f/8");
  const answers = await halfshade(["table", file, "Ladder", "--answers", "--format", "csv"]);
  expect(answers.out.split("\r\n")[0]).toBe('"row","key.distance (m)","Meter (f)"');
  expect(answers.out).toContain("2,2.8284,8");
});

test("the ending of --output chooses the form, and the file is written whole", async () => {
  const target = join(folder, "sheet.html");
  expect(await halfshade(["table", file, "Ladder", "-o", target])).toMatchObject({ exit: 0, out: "" });
  expect(readFileSync(target, "utf8")).toMatch(/^<table>\n<caption>Ladder<\/caption>[\s\S]*<\/table>\n$/);
});

test("ten thousand rows come piece by piece, and stop where nobody reads on", async () => {
  const pieces: string[] = [];
  const exit = await run(["table", file, "Long", "--format", "csv"], {
    out: (piece) => {
      pieces.push(piece);
    },
    err: () => undefined,
    isRead: () => pieces.length < 3,
    async *input() {},
    env: () => undefined,
    cores: () => 2,
    workerFile: () => null,
    columns: () => null,
    outIsTerminal: false,
    errIsTerminal: false,
  });
  expect(exit).toBe(0);
  expect(pieces.length).toBe(3);
  expect(pieces.every((piece) => piece.length < 10_000)).toBe(true);
});

test("a bar tells of long tables where words go to a terminal and data does not", async () => {
  const bar = async (terminal: { readonly out: boolean; readonly err: boolean }): Promise<string> => {
    let words = "";
    await run(["table", file, "Long", "--format", "csv"], {
      out: () => undefined,
      err: (piece) => {
        words += piece;
      },
      async *input() {},
      env: () => undefined,
      cores: () => 2,
      workerFile: () => null,
      columns: () => null,
      outIsTerminal: terminal.out,
      errIsTerminal: terminal.err,
    });
    return words;
  };
  expect(await bar({ out: false, err: true })).toMatch(/\r\[=+ *\] \d+ of 10000 rows/);
  expect(await bar({ out: false, err: false })).toBe("");
  expect(await bar({ out: true, err: true })).toBe("");
}, 30_000);

test("as a chart: SVG, PNG into a file, one table at a time, and no worksheet", async () => {
  const { exit, out, err } = await halfshade(["table", file, "Ladder", "--format", "svg"]);
  expect({ exit, err }).toEqual({ exit: 0, err: "" });
  expect(out).toMatch(/^<svg .*<title>Ladder<\/title>/);
  expect(out.match(/>(2 m|2\.8284 m|4 m)</g)).toEqual([">2 m<", ">2.8284 m<", ">4 m<"]);
  const png = join(folder, "ladder.png");
  expect((await halfshade(["table", file, "Ladder", "-o", png, "--pixels", "300"])).exit).toBe(0);
  const bytes = readFileSync(png);
  expect(bytes.toString("latin1", 1, 4)).toBe("PNG");
  // Width in the header of the file (PNG, second edition, 11.2.2).
  expect(bytes.readUInt32BE(16)).toBe(300);
  const several = await halfshade(["table", file, "--format", "svg"]);
  expect(several).toMatchObject({ exit: 2, out: "" });
  expect(several.err).toContain('A chart is of one table; name one of "Ladder", "Long"');
  const sheet = await halfshade(["table", file, "Ladder", "--format", "svg", "--worksheet"]);
  expect(sheet).toMatchObject({ exit: 2, out: "" });
  expect((await halfshade(["table", file, "Ladder", "--format", "png"])).err).toMatch(/goes into a file/);
});
