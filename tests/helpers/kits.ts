import { readdirSync, readFileSync } from "node:fs";
import type { ReadKit } from "../../src/check/kits/read.js";
import { placeIn } from "../../src/core/span.js";
import { finding } from "../../src/diagnostics/create.js";

const top = new URL("../../", import.meta.url);

/** The kits and measured beams of the corpus and of the examples by the last part of their path. */
const texts: ReadonlyMap<string, { readonly name: string; readonly text: string }> = new Map(
  ["grammar/corpus/kits/", "examples/"].flatMap((folder) =>
    readdirSync(new URL(folder, top))
      .filter((name) => name.endsWith(".light") || name.endsWith(".ies"))
      .sort()
      .map((name): [string, { name: string; text: string }] => [
        name,
        {
          name: `${folder.replace(/^grammar\/corpus\//, "")}${name}`,
          text: readFileSync(new URL(folder + name, top), "utf8"),
        },
      ]),
  ),
);

/** Reads a kit of the corpus or of the examples, whoever asks for it. */
export const ourKits: ReadKit = (path, from) => {
  const source = texts.get(path.split("/").pop() ?? "");
  if (source !== undefined) return { source };
  return { problem: finding("file.not-found", placeIn(from, { start: 0, end: 0 }), { path }) };
};

/** What the tests of the corpus and of the examples compile with. */
export const withOurKits = { read: ourKits } as const;

/** The text of a kit by the name that its findings use, or null. */
export function kitText(name: string): string | null {
  return [...texts.values()].find((source) => source.name === name)?.text ?? null;
}
