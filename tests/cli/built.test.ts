import { spawn, spawnSync } from "node:child_process";
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { projectRoot } from "../arch/source-tree.js";
import { halfshade } from "./fake-machine.js";
import { failing, kit, sound, wrongUnit } from "./recipes.js";

/** These tests are about the built command, which `npm test` makes before them. */
const program = join(projectRoot, "dist/cli.cjs");
const folder = mkdtempSync(join(tmpdir(), "halfshade-built-"));
afterAll(() => rmSync(folder, { recursive: true }));

const run = (args: readonly string[], input = "", flags: readonly string[] = []) =>
  spawnSync(process.execPath, [...flags, program, ...args], {
    input,
    encoding: "utf8",
    cwd: folder,
    maxBuffer: 1 << 26,
  });

/** Which chunks a run loads, told by the reads of the process. */
function chunksOf(args: readonly string[], input: string): readonly string[] {
  const spy = join(folder, "spy.cjs");
  writeFileSync(
    spy,
    `const fs = require("node:fs"); const read = fs.readFileSync; const seen = [];
     fs.readFileSync = (path, ...rest) => { if (/cli-\\w+\\.cjs$/.test(String(path))) seen.push(/cli-(\\w+)\\.cjs$/.exec(path)[1]); return read(path, ...rest); };
     process.on("exit", () => fs.writeSync(2, "CHUNKS " + seen.join(" ")));`,
  );
  const { stderr } = run(args, input, ["--require", spy]);
  return (/CHUNKS (.*)$/.exec(stderr)?.[1] ?? "").split(" ").filter((name) => name !== "");
}

describe.skipIf(!existsSync(program))("the built command", () => {
  test("gives the same as the sources do", async () => {
    for (const args of [
      ["--version"],
      ["report", "-"],
      ["check", "--format", "json", "-"],
      ["scene", "-"],
      ["words", "light"],
      ["explain", "unit.unknown"],
      ["calc", "angular_diameter_sphere", "radius_m=0.1", "distance_m=1"],
    ]) {
      for (const input of [sound, wrongUnit, failing]) {
        const { status, stdout, stderr } = run(args, input);
        expect({ exit: status, out: stdout, err: stderr }).toEqual(await halfshade(args, { input }));
      }
    }
  });

  test("loads nothing for --version, and nothing of light for check --no-light", () => {
    expect(chunksOf(["--version"], "")).toEqual([]);
    expect(chunksOf(["check", "--no-light", "-"], sound)).toEqual(["run", "language"]);
    expect(chunksOf(["help"], "")).toEqual(["run"]);
    expect(chunksOf(["calc"], "")).toEqual(["run", "quantities"]);
    expect(chunksOf(["report", "-"], sound)).toEqual(["run", "language", "light"]);
  });

  test("threads give the same bytes in the same order, also for files that cannot be read and for a pipe", () => {
    const book = join(folder, "book");
    mkdirSync(book);
    const texts = [sound, failing, wrongUnit, kit];
    for (let index = 0; index < 24; index++) {
      writeFileSync(join(book, `${index % 7}-${index}.light`), texts[index % texts.length] ?? "");
    }
    const names = ["book", "nowhere.light", "-", "book/0-0.light"];
    for (const form of ["text", "json", "sarif", "annotations"]) {
      const [one, three] = ["1", "3"].map((jobs) => {
        const { status, stdout, stderr } = run(["check", ...names, "--format", form, "--jobs", jobs], sound);
        return { status, stdout, stderr };
      });
      expect(three).toEqual(one);
      expect(one?.status).toBe(2);
      expect(one?.stdout).toContain("book/6-6.light");
    }
  });

  test("a thread that breaks down ends the command with one sentence", () => {
    const copy = join(folder, "broken");
    cpSync(join(projectRoot, "dist"), copy, { recursive: true });
    writeFileSync(join(copy, "cli-worker.cjs"), 'throw new Error("no room");');
    const args = [join(copy, "cli.cjs"), "check", "book", "--jobs", "2"];
    const { status, stderr } = spawnSync(process.execPath, args, { cwd: folder, encoding: "utf8" });
    expect(status).toBe(2);
    expect(stderr).toBe(
      "This is a mistake of halfshade itself, not of your file; please report it: no room\n",
    );
  });

  test("starts with the line that lets a shell run it", () => {
    expect(readFileSync(program, "utf8").startsWith("#!/usr/bin/env node\n")).toBe(true);
  });

  test("a reader that goes away early ends it quietly", async () => {
    const child = spawn("sh", ["-c", `"${process.execPath}" "${program}" calc | head -n 1`], { cwd: folder });
    let out = "";
    let err = "";
    child.stdout.on("data", (part) => {
      out += part;
    });
    child.stderr.on("data", (part) => {
      err += part;
    });
    await new Promise((done) => child.once("close", done));
    expect(out.split("\n")).toHaveLength(2);
    expect(err).toBe("");
    const gone = spawnSync("sh", ["-c", `"${process.execPath}" "${program}" explain | true; echo done`], {
      encoding: "utf8",
    });
    expect([gone.stdout, gone.stderr]).toEqual(["done\n", ""]);
  });

  test("two megabytes go through a slow pipe whole", async () => {
    const files = Array.from({ length: 720 }, (_, index) => {
      const name = join(folder, `many-${index}.light`);
      writeFileSync(name, sound);
      return name;
    });
    const child = spawn(process.execPath, [program, "check", "--no-light", "--format", "json", ...files]);
    const whole: Buffer[] = [];
    for await (const part of child.stdout) {
      whole.push(part);
      await new Promise((done) => setTimeout(done, 1));
    }
    const tokens = spawnSync(process.execPath, [program, "show", "tree", "-"], {
      input: `${sound}${'expect key.reserve > 1 stop because "so it is"\n'.repeat(1200)}`,
      encoding: "utf8",
      maxBuffer: 1 << 26,
    });
    expect(JSON.parse(Buffer.concat(whole).toString()).files).toHaveLength(720);
    expect(tokens.stdout.length).toBeGreaterThan(1_000_000);
    expect(() => JSON.parse(tokens.stdout)).not.toThrow();
  });

  test("waits for a writer that is late", async () => {
    const child = spawn(process.execPath, [program, "check", "--no-light", "-"]);
    let out = "";
    child.stdout.on("data", (part) => {
      out += part;
    });
    await new Promise((done) => setTimeout(done, 300));
    child.stdin.write(sound.slice(0, 100));
    await new Promise((done) => setTimeout(done, 100));
    child.stdin.end(sound.slice(100));
    const code = await new Promise((done) => child.once("close", done));
    expect([out, code]).toEqual(["standard-input: no errors.\n", 0]);
  });

  test("runs without compiled code, with a damaged one, and under flags that refuse it", () => {
    const copy = join(folder, "copy");
    spawnSync("cp", ["-r", join(projectRoot, "dist"), copy]);
    const again = (flags: readonly string[] = []) =>
      spawnSync(process.execPath, [...flags, join(copy, "cli.cjs"), "check", "-"], {
        input: sound,
        encoding: "utf8",
      });
    const expected = again().stdout;
    const caches = readdirSync(copy).filter((name) => name.endsWith(".cache"));
    expect(caches.length).toBe(4);
    expect(again(["--no-opt"]).stdout).toBe(expected);
    for (const name of caches) truncateSync(join(copy, name), 100);
    expect(again().stdout).toBe(expected);
    for (const name of caches) rmSync(join(copy, name));
    expect(again().stdout).toBe(expected);
    copyFileSync(program, join(folder, "one.cjs"));
  });

  test("runs where text may not become code and prototypes may not be changed", () => {
    const flags = ["--disallow-code-generation-from-strings", "--disable-proto=throw"];
    expect(run(["report", "-"], sound, flags)).toMatchObject({
      status: 0,
      stdout: run(["report", "-"], sound).stdout,
    });
  });
});
