import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { halfshade } from "./fake-machine.js";

const top = mkdtempSync(join(tmpdir(), "halfshade-cli-kits-"));
afterAll(() => rmSync(top, { recursive: true }));

const kit = 'halfshade 1\nkit "Shed"\n\ndefine light lamp {\n  shape: disc(20 cm)\n  output: 900 lm s\n}\n';
const recipe = `halfshade 1
recipe "A boat builder"

use lamp from "../kits/shed.light"

subject { height: 1.7 m }
light key like lamp { distance: 2 m, bearing: left(30 deg), height: 2 m }
camera {
  held: upright
  focal_length: 85 mm
  aperture: f/8
  shutter: 1/125 s
  sensitivity: ISO 100
  distance: 3.2 m
  height: 1.5 m
}
`;
const file = (path: string): string => join(top, path);

beforeAll(() => {
  for (const folder of ["book", "kits", "bad/kits", "bad/book"]) mkdirSync(file(folder), { recursive: true });
  writeFileSync(file("kits/shed.light"), kit);
  writeFileSync(file("book/a.light"), recipe);
  writeFileSync(file("bad/kits/shed.light"), kit.replace("20 cm", "20"));
  writeFileSync(file("bad/book/a.light"), recipe);
});

describe("a recipe with a kit", () => {
  test("is worked out where the root reaches the kit", async () => {
    const ran = await halfshade(["report", file("book/a.light"), "--root", top]);
    expect(ran).toMatchObject({ exit: 0, err: "" });
    expect(ran.out).toContain("A boat builder");
    for (const rest of [["check"], ["scene"], ["show", "model"]]) {
      expect((await halfshade([...rest, file("book/a.light"), "--root", top])).exit).toBe(0);
    }
  });

  test("reaches nothing outside its own folder without a root", async () => {
    const { exit, err, out } = await halfshade(["report", file("book/a.light")]);
    expect([exit, out]).toEqual([1, ""]);
    expect(err).toContain("(file.outside)");
    expect(err).toContain("--root");
  });

  test("belongs to the nearest folder with package.json or .git", async () => {
    const inner = mkdtempSync(join(top, "project-"));
    for (const folder of ["book", "kits"]) mkdirSync(join(inner, folder));
    writeFileSync(join(inner, "package.json"), "{}");
    writeFileSync(join(inner, "kits/shed.light"), kit);
    writeFileSync(join(inner, "book/a.light"), recipe);
    expect((await halfshade(["check", join(inner, "book/a.light")])).exit).toBe(0);
  });

  test("shows a mistake of the kit in the kit, with the line", async () => {
    const { exit, out } = await halfshade(["check", file("bad/book/a.light"), "--root", file("bad")]);
    expect(exit).toBe(1);
    expect(out).toContain("shape: disc(20)");
    expect(out).toContain(`${file("bad/kits/shed.light")}:5:`);
    expect(out.replace(/\s+/g, " ")).toContain(`see ${file("bad/book/a.light")}:4:`);
  });

  test("reads nothing through a pipe", async () => {
    const input = readFileSync(file("book/a.light"), "utf8");
    const { exit, err } = await halfshade(["report", "-", "--root", top], { input });
    expect(exit).toBe(1);
    expect(err).toContain("(use.alone)");
  });

  test("a root that is no folder is wrong use", async () => {
    for (const root of [file("nowhere"), file("book/a.light")]) {
      const { exit, err } = await halfshade(["check", file("book/a.light"), "--root", root]);
      expect([exit, err]).toEqual([2, `--root takes a folder, and "${root}" is none.\n`]);
    }
  });
});
