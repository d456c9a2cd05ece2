import { spawn } from "node:child_process";
import {
  chmodSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { writeSafely } from "../../src/node/safe-write.js";
import { diskWriter, type FileWriter } from "../../src/node/writer.js";

const root = mkdtempSync(join(tmpdir(), "halfshade-write-"));
afterAll(() => rmSync(root, { recursive: true }));
let folder = root;
let path = "";
let count = 0;
const old = Buffer.from("old text\n");
const fresh = Buffer.from("new text, longer than the old\n");
const edit = { kind: "edit", before: old } as const;

beforeEach(() => {
  folder = join(root, String(count++));
  mkdirSync(folder);
  path = join(folder, "plan.light");
  writeFileSync(path, old);
});

const codeOf = (result: ReturnType<typeof writeSafely>) => result.problem?.code ?? result.outcome;

describe("writing", () => {
  test("puts the new text in place and leaves nothing else", () => {
    expect(writeSafely(path, fresh, edit).outcome).toBe("written");
    expect(readFileSync(path)).toEqual(fresh);
    expect(readdirSync(folder)).toEqual(["plan.light"]);
  });

  test("does not touch a file that holds these bytes already", () => {
    utimesSync(path, 1000, 1000);
    expect(writeSafely(path, old, edit).outcome).toBe("same");
    expect(statSync(path).mtimeMs).toBe(1_000_000);
  });

  test("keeps the mode", () => {
    chmodSync(path, 0o640);
    writeSafely(path, fresh, edit);
    expect(statSync(path).mode & 0o7777).toBe(0o640);
  });

  test("gives a new file the usual rights", () => {
    const name = join(folder, "new.light");
    expect(writeSafely(name, fresh, { kind: "create" }).outcome).toBe("written");
    expect(statSync(name).mode & 0o777).toBe(0o666 & ~process.umask());
  });

  test("writes behind a link, and the link stays", () => {
    const link = join(root, `link-${count}.light`);
    symlinkSync(path, link);
    expect(writeSafely(link, fresh, edit).outcome).toBe("written");
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(readFileSync(path)).toEqual(fresh);
  });

  test("refuses a file with a second name", () => {
    linkSync(path, join(folder, "second.light"));
    expect(codeOf(writeSafely(path, fresh, edit))).toBe("file.hard-links");
    expect(readFileSync(path)).toEqual(old);
  });

  test("refuses a text that is not the one that was read, and one that is gone", () => {
    const other = { kind: "edit", before: Buffer.from("something else") } as const;
    expect(codeOf(writeSafely(path, fresh, other))).toBe("file.overtaken");
    rmSync(path);
    expect(codeOf(writeSafely(path, fresh, edit))).toBe("file.overtaken");
    expect(existsSync(path)).toBe(false);
  });

  test("refuses a change that comes while it writes", () => {
    const slow: FileWriter = {
      ...diskWriter,
      sync: (handle) => {
        writeFileSync(path, "somebody else's\n");
        diskWriter.sync(handle);
      },
    };
    expect(codeOf(writeSafely(path, fresh, edit, slow))).toBe("file.overtaken");
    expect(readFileSync(path, "utf8")).toBe("somebody else's\n");
    expect(readdirSync(folder)).toEqual(["plan.light"]);
  });

  test("a new file never takes the place of one that is there, nor of one that comes meanwhile", () => {
    expect(codeOf(writeSafely(path, fresh, { kind: "create" }))).toBe("file.exists");
    const name = join(folder, "late.light");
    const late: FileWriter = {
      ...diskWriter,
      sync: () => writeFileSync(name, "first\n"),
    };
    expect(codeOf(writeSafely(name, fresh, { kind: "create" }, late))).toBe("file.exists");
    expect(readFileSync(name, "utf8")).toBe("first\n");
    expect(readdirSync(folder).sort()).toEqual(["late.light", "plan.light"]);
  });

  test("replaces where it is told to", () => {
    expect(writeSafely(path, fresh, { kind: "replace" }).outcome).toBe("written");
    expect(readFileSync(path)).toEqual(fresh);
  });

  test("names what is in the way", () => {
    expect(codeOf(writeSafely(folder, fresh, { kind: "replace" }))).toBe("file.folder");
    expect(codeOf(writeSafely("/dev/null", fresh, { kind: "replace" }))).toBe("file.device");
    expect(codeOf(writeSafely(join(folder, "no", "where.light"), fresh, { kind: "create" }))).toBe(
      "file.no-folder",
    );
  });

  test("takes short writes", () => {
    const short: FileWriter = {
      ...diskWriter,
      write: (handle, bytes, from) => diskWriter.write(handle, bytes.subarray(0, from + 1), from),
    };
    expect(writeSafely(path, fresh, edit, short).outcome).toBe("written");
    expect(readFileSync(path)).toEqual(fresh);
  });
});

describe("when a step fails", () => {
  const steps = ["find", "read", "create", "write", "chmod", "sync", "rename"] as const;

  test.each(
    steps.flatMap((step) => ["ENOSPC", "EIO", "EROFS", "EACCES"].map((code) => [step, code] as const)),
  )("%s with %s: the old text is whole and nothing is left behind", (step, code) => {
    const failing: FileWriter = {
      ...diskWriter,
      [step]: () => {
        throw Object.assign(new Error(code), { code });
      },
    };
    const result = writeSafely(path, fresh, edit, failing);
    expect(codeOf(result)).toBe("file.not-written");
    expect(String(result.problem?.args.reason)).not.toBe("");
    expect(readFileSync(path)).toEqual(old);
    expect(readdirSync(folder)).toEqual(["plan.light"]);
  });

  test("a file that cannot be removed afterwards hides no error", () => {
    const failing: FileWriter = {
      ...diskWriter,
      sync: () => {
        throw Object.assign(new Error("EIO"), { code: "EIO" });
      },
      remove: () => {
        throw Object.assign(new Error("EACCES"), { code: "EACCES" });
      },
    };
    expect(writeSafely(path, fresh, edit, failing).problem?.args.reason).toBe("the disk reports a fault");
  });

  test("an error that is not the system's is ours and is thrown", () => {
    const broken: FileWriter = {
      ...diskWriter,
      sync: () => {
        throw new Error("a slip");
      },
    };
    expect(() => writeSafely(path, fresh, edit, broken)).toThrow("a slip");
    expect(readFileSync(path)).toEqual(old);
  });
});

describe("killed at any moment", () => {
  /** Kills of one run; the long run sets more. */
  const kills = Number(process.env.HALFSHADE_KILLS ?? "12");

  test("the file holds one of the two texts, whole", async () => {
    const texts = ["a", "b"].map((letter) => `${letter.repeat(200_000)}\n`);
    writeFileSync(path, texts[0] ?? "");
    const script = join(folder, "writer.ts");
    const from = new URL("../../src/node/safe-write.ts", import.meta.url).href;
    writeFileSync(
      script,
      `import { writeSafely } from ${JSON.stringify(from)};
       const texts = ["a", "b"].map((letter) => Buffer.from(letter.repeat(200000) + "\\n"));
       process.stdout.write("ready\\n");
       for (let i = 0; ; i++) writeSafely(${JSON.stringify(path)}, texts[i % 2], { kind: "replace" });`,
    );
    for (let i = 0; i < kills; i++) {
      const child = spawn(process.execPath, ["--import", "tsx", script], {
        stdio: ["ignore", "pipe", "ignore"],
      });
      const ended = new Promise((done) => child.once("exit", done));
      await new Promise((done) => child.stdout.once("data", done));
      await new Promise((done) => setTimeout(done, 3 + ((i * 7) % 23)));
      child.kill("SIGKILL");
      await ended;
      expect(texts).toContain(readFileSync(path, "utf8"));
    }
  });
});
