import { expect, test } from "vitest";
import type { Code } from "../../src/diagnostics/catalogue/index.js";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { belowFull, disc, output } from "../../src/model/make/lamps.js";
import { tape } from "../../src/model/make/points.js";
import { size, volume } from "../../src/model/make/sizes.js";
import { edgeOf, markFrom } from "../../src/model/make/surroundings.js";
import type { Recipe } from "../../src/model/types.js";
import type { FileReader } from "../../src/node/reader.js";
import { readTextFile } from "../../src/node/text-file.js";
import { refusal } from "../../src/node/write-refusal.js";
import { buildScene } from "../../src/scene/build.js";
import { cm, lmSeconds, m, stops } from "../../src/units/make.js";
import { block, recipe } from "../helpers/models.js";
import { fromFiles, fromModels, fromWriter } from "./unreachable.js";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const sound: FileReader = {
  look: () => ({ kind: "file", size: 20 }),
  read: () => ({ bytes: bytes("halfshade 1\n"), steady: true }),
};
const failing = (code: string): FileReader => ({
  ...sound,
  look: () => {
    throw Object.assign(new Error(code), { code });
  },
});

/** A disk on which each code comes up. */
const disks: ReadonlyMap<Code, FileReader> = new Map<Code, FileReader>([
  ["file.not-found", failing("ENOENT")],
  ["file.unreadable", failing("EACCES")],
  ["file.path", failing("ENAMETOOLONG")],
  ["file.folder", { ...sound, look: () => ({ kind: "folder", size: 0 }) }],
  ["file.device", { ...sound, look: () => ({ kind: "other", size: 0 }) }],
  ["file.too-large", { ...sound, look: () => ({ kind: "file", size: 1_000_000 }) }],
  ["file.binary", { ...sound, read: () => ({ bytes: bytes("a\0b"), steady: true }) }],
  ["file.encoding", { ...sound, read: () => ({ bytes: Uint8Array.of(0xc3, 0x28), steady: true }) }],
  ["file.changed", { ...sound, read: () => ({ bytes: bytes("halfshade 1\n"), steady: false }) }],
]);

test("every finding about a file that is read comes from a disk of its own", () => {
  expect([...disks.keys()].sort()).toEqual([...fromFiles].sort());
  for (const [code, disk] of disks) expect(readTextFile("quay.light", disk).problem?.code).toBe(code);
  expect(readTextFile("quay.light", sound).text).toBe("halfshade 1\n");
});

test("every finding about a file that is written has its reason", () => {
  const reasons = ["exists", "hard-links", "overtaken", "ENOENT", "ENOSPC"];
  const codes = reasons.map((why) => refusal("quay.light", why).code);
  expect(codes.sort()).toEqual([...fromWriter].sort());
});

const lamp = { shape: disc(cm(20)), output: output(lmSeconds(900)), distance: tape(m(2)), height: m(2) };

/** Models that no text gives, since the checker refuses the text earlier. */
const models: ReadonlyMap<Code, Partial<Recipe>> = new Map<Code, Partial<Recipe>>([
  ["light.over-full", { lights: [block("light", "key", { ...lamp, power: belowFull(stops(-1)) })] }],
  ["scene.incomplete", { lights: [block("light", "key", { ...lamp, shape: undefined } as never)] }],
  [
    "flat.hinge",
    {
      set: block("set", null, {
        parts: [block("flat", "wing", { size: size(m(1), m(2)), hinge: edgeOf("left", "no_such_flat") })],
      }),
    },
  ],
  [
    "room.mark-twice",
    {
      room: block("room", null, {
        size: volume(m(5), m(6), m(3)),
        mark: markFrom({ left: m(1), right: m(1) }),
      }),
    },
  ],
]);

test("every finding that only a model made by code can cause is caused by one", () => {
  expect([...models.keys()].sort()).toEqual([...fromModels].sort());
  for (const [code, parts] of models) {
    const found: Diagnostic[] = [];
    buildScene(recipe(parts), (diagnostic) => found.push(diagnostic));
    expect(found.map((diagnostic) => diagnostic.code)).toContain(code);
  }
});
