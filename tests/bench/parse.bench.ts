import { bench, describe } from "vitest";
import type { Parsed } from "../../src/syntax/parse.js";
import { cpuNow, interleavedMinima } from "./interleaved.js";
import { builtParser, generatedParser, longRecipe } from "./parse-scene.js";

/**
 * Text to syntax tree with places, on one recipe of 100 kB: ours (recovery on) against a parser for valid texts only,
 * made by a parser generator from a grammar that builds the same tree. JSON.parse of the same tree stands beside.
 * Ours is the built one (`npm run build`), as the test runner's own rewriting of modules would slow it threefold.
 */
const text = longRecipe(100_000);
const source = { name: "a", text };
const nothing = (): void => {};
const parseFile = builtParser();
const other = generatedParser();
const json = JSON.stringify(parseFile(source, nothing).file);
const wrong = { name: "a", text: text.replaceAll(/: 2\.6 m/g, " 2.6 m") };

const ours = (): Parsed => parseFile(source, nothing);

const times = interleavedMinima(
  [
    { name: "ours", count: 1, run: () => void ours() },
    { name: "ours, one colon in 50 missing", count: 1, run: () => parseFile(wrong, nothing) },
    { name: "generated", count: 1, run: () => other(text) },
    { name: "JSON.parse of the same tree", count: 1, run: () => JSON.parse(json) },
  ],
  31,
);
const own = times.get("ours") ?? 1;
for (const [name, micros] of times) {
  process.stdout.write(
    `${name}: ${(micros / 1000).toFixed(2)} ms CPU, ${(micros / own).toFixed(2)} of ours\n`,
  );
}

describe("100 kB of recipe to a tree with places", () => {
  bench("ours", () => void ours(), { now: cpuNow });
  bench(
    "generated",
    () => {
      other(text);
    },
    { now: cpuNow },
  );
});
