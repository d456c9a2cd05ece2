import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import type { FileReader } from "../../src/node/reader.js";
import { readStream, STANDARD_INPUT } from "../../src/node/standard-input.js";
import { readTextFile, textOfBytes } from "../../src/node/text-file.js";

const folder = mkdtempSync(join(tmpdir(), "halfshade-read-"));
afterAll(() => rmSync(folder, { recursive: true }));
const write = (name: string, bytes: Uint8Array | string): string => {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
};
const codeOf = (path: string, reader?: FileReader, limit?: number) =>
  readTextFile(path, reader, limit).problem?.code;

/** A reader whose every step can be made to fail. */
const failing = (step: "look" | "read", code: string): FileReader => {
  const fail = (): never => {
    throw Object.assign(new Error(code), { code });
  };
  return {
    look: step === "look" ? fail : () => ({ kind: "file", size: 3 }),
    read: step === "read" ? fail : () => ({ bytes: Buffer.from("abc"), steady: true }),
  };
};

describe("a text file", () => {
  test("is read byte for byte: mark, line ends and letters", () => {
    const text = '\ufeffhalfshade 1\r\nrecipe "Ünï 光 😀"\r\rend\n';
    const read = readTextFile(write("a.light", text));
    expect(read.text).toBe(text);
    expect(Buffer.from(read.bytes ?? [])).toEqual(Buffer.from(text));
    expect(readTextFile(write("empty.light", "")).text).toBe("");
  });

  test("is read through a link", () => {
    const path = join(folder, "link.light");
    symlinkSync(write("target.light", "x"), path);
    expect(readTextFile(path).text).toBe("x");
  });

  test.each([
    ["file.not-found", (): string => join(folder, "none.light")],
    ["file.not-found", (): string => join(write("plain.light", ""), "under-a-file")],
    ["file.folder", (): string => folder],
    ["file.device", (): string => "/dev/zero"],
    ["file.path", (): string => "a\0b"],
    ["file.path", (): string => "x".repeat(5000)],
    ["file.binary", (): string => write("picture.light", Buffer.from([0x89, 0x50, 0, 0]))],
    ["file.encoding", (): string => write("latin.light", Buffer.from([0x61, 0xe4, 0x62]))],
    ["file.encoding", (): string => write("utf16.light", Buffer.from("\ufeffabc", "utf16le"))],
    ["file.encoding", (): string => write("surrogate.light", Buffer.from([0xed, 0xa0, 0x80]))],
    ["file.encoding", (): string => write("overlong.light", Buffer.from([0xc0, 0xaf]))],
    ["file.too-large", (): string => write("large.light", "a".repeat(262_145))],
  ] as const)("%s", (code, path) => {
    expect(codeOf(path())).toBe(code);
  });

  test("a pipe that nobody writes to is refused at once and not waited for", () => {
    const path = join(folder, "pipe");
    execFileSync("mkfifo", [path]);
    expect(codeOf(path)).toBe("file.device");
  });

  test("a link in a ring cannot be read", () => {
    symlinkSync(join(folder, "ring-b"), join(folder, "ring-a"));
    symlinkSync(join(folder, "ring-a"), join(folder, "ring-b"));
    expect(codeOf(join(folder, "ring-a"))).toBe("file.unreadable");
  });

  test.each([
    ["EACCES", "file.unreadable"],
    ["EPERM", "file.unreadable"],
    ["EIO", "file.unreadable"],
    ["ENOENT", "file.not-found"],
    ["EISDIR", "file.folder"],
  ])("%s at any step is %s", (error, code) => {
    expect(codeOf("a", failing("look", error))).toBe(code);
    expect(codeOf("a", failing("read", error))).toBe(code);
  });

  test("an error that is not the system's is ours and is thrown", () => {
    const broken: FileReader = {
      look: () => {
        throw new Error("a slip");
      },
      read: () => ({ bytes: new Uint8Array(), steady: true }),
    };
    expect(() => readTextFile("a", broken)).toThrow("a slip");
  });

  test("the cap: one byte less, the cap, one byte more", () => {
    for (const [size, code] of [
      [9, undefined],
      [10, undefined],
      [11, "file.too-large"],
    ] as const) {
      expect(codeOf(write(`cap-${size}`, "a".repeat(size)), undefined, 10)).toBe(code);
    }
  });

  test("a file that grows behind the first look is still capped, and one that changes is refused", () => {
    const growing: FileReader = {
      look: () => ({ kind: "file", size: 3 }),
      read: (_path, limit) => ({ bytes: Buffer.alloc(limit, "a"), steady: true }),
    };
    expect(codeOf("a", growing, 10)).toBe("file.too-large");
    const changing: FileReader = { ...growing, read: () => ({ bytes: Buffer.from("abc"), steady: false }) };
    expect(codeOf("a", changing, 10)).toBe("file.changed");
  });

  test("findings name the file as it was given", () => {
    const { problem } = readTextFile("no/such.light");
    expect(problem?.place).toEqual({ file: "no/such.light", start: 0, end: 0 });
    expect(problem?.args).toEqual({ path: "no/such.light" });
  });

  test("a link and a folder stay what they are", () => {
    mkdirSync(join(folder, "inner"));
    symlinkSync(join(folder, "inner"), join(folder, "to-folder"));
    expect(codeOf(join(folder, "to-folder"))).toBe("file.folder");
  });
});

describe("standard input", () => {
  async function* parts(...texts: readonly (string | Uint8Array)[]): AsyncGenerator<Uint8Array> {
    for (const part of texts) {
      await new Promise((done) => setTimeout(done, 1));
      yield Buffer.from(part);
    }
  }

  test("is read to its end, however it is cut", async () => {
    const bytes = Buffer.from("光é\n");
    expect(
      (await readStream(parts(bytes.subarray(0, 1), bytes.subarray(1, 4), bytes.subarray(4)))).text,
    ).toBe("光é\n");
    expect((await readStream(parts())).text).toBe("");
  });

  test("is not read beyond the cap", async () => {
    let given = 0;
    async function* endless(): AsyncGenerator<Uint8Array> {
      for (;;) {
        given++;
        yield Buffer.alloc(1000, "a");
      }
    }
    const read = await readStream(endless(), 5000);
    expect(read.problem?.code).toBe("file.too-large");
    expect(read.problem?.place.file).toBe(STANDARD_INPUT);
    expect(given).toBeLessThan(8);
  });

  test("is checked like a file", () => {
    expect(textOfBytes("x", Buffer.from([0])).problem?.code).toBe("file.binary");
    expect(textOfBytes("x", Buffer.from([0xff])).problem?.code).toBe("file.encoding");
  });
});
