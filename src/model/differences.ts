import { blockRow } from "../vocabulary/index.js";
import { writeName } from "./make/points.js";
import { printProperties } from "./print-block.js";
import type { BlockModel, Recipe, Setting } from "./types.js";

/** One thing that two recipes say differently, each as it is written; null where one does not say it. */
export interface Difference {
  /** The property by its path, or a whole block: `key.distance`, `fill`. */
  readonly path: string;
  readonly before: string | null;
  readonly after: string | null;
}

/** What a second recipe says differently about the set-up, property by property. Expectations are left out. */
export function differences(before: Recipe, after: Recipe): readonly Difference[] {
  return [
    ...inRows("", letsOf(before), letsOf(after)),
    ...inBlocks("", one(before.room), one(after.room)),
    ...inBlocks("", one(before.set), one(after.set)),
    ...inBlocks("", before.subjects, after.subjects),
    ...inBlocks("", before.points, after.points),
    ...inBlocks("", before.lights, after.lights),
    ...inBlocks("", one(before.camera), one(after.camera)),
    ...inBlocks("", one(before.meter), one(after.meter)),
    ...inBlocks("", one(before.intent), one(after.intent)),
    ...inSettings("tolerances", before.tolerances, after.tolerances),
    ...inSettings("thresholds", before.thresholds, after.thresholds),
  ];
}

const letsOf = ({ lets }: Recipe): readonly Row[] =>
  lets.map(({ name, written }) => [writeName(name), written.slice(`let ${writeName(name)} = `.length)]);

const one = (block: BlockModel | null): readonly BlockModel[] => (block === null ? [] : [block]);

const headOf = (block: BlockModel): string => `${block.block} ${block.name ?? ""}`;

function inBlocks(
  owner: string,
  before: readonly BlockModel[],
  after: readonly BlockModel[],
): readonly Difference[] {
  const now = new Map(after.map((block) => [headOf(block), block]));
  const old = new Set(before.map(headOf));
  return [
    ...before.flatMap((block) => {
      const same = now.get(headOf(block));
      const path = pathTo(owner, block);
      return same === undefined
        ? [{ path, before: inOneLine(block), after: null }]
        : [...inProperties(path, block, same), ...inBlocks(path, partsOf(block), partsOf(same))];
    }),
    ...after
      .filter((block) => !old.has(headOf(block)))
      .map((block) => ({ path: pathTo(owner, block), before: null, after: inOneLine(block) })),
  ];
}

const partsOf = (block: BlockModel): readonly BlockModel[] => block.parts as readonly BlockModel[];

function pathTo(owner: string, block: BlockModel): string {
  const start = owner === "" || owner === "set" ? "" : `${owner}.`;
  if (block.name === null) return start + block.block;
  return `${start}${blockRow(block.block)?.names === undefined ? "" : `${block.block}.`}${writeName(block.name)}`;
}

/** A whole block in a line: its kind and its properties. */
function inOneLine(block: BlockModel): string {
  const inner = printProperties(block).map(([name, value]) => `${name}: ${value}`);
  return inner.length === 0 ? block.block : `${block.block}: ${inner.join(", ")}`;
}

function inProperties(path: string, before: BlockModel, after: BlockModel): readonly Difference[] {
  return inRows(path, printProperties(before), printProperties(after));
}

const inSettings = (
  kind: string,
  before: readonly Setting[],
  after: readonly Setting[],
): readonly Difference[] => {
  const pairs = (rows: readonly Setting[]) => rows.map((row) => [row.name, row.written] as const);
  return inRows(kind, pairs(before), pairs(after));
};

type Row = readonly [name: string, value: string];

function inRows(path: string, before: readonly Row[], after: readonly Row[]): readonly Difference[] {
  const old = new Map(before);
  const now = new Map(after);
  const names = [...old.keys(), ...[...now.keys()].filter((name) => !old.has(name))];
  return names
    .filter((name) => old.get(name) !== now.get(name))
    .map((name) => ({
      path: path === "" ? name : `${path}.${name}`,
      before: old.get(name) ?? null,
      after: now.get(name) ?? null,
    }));
}
