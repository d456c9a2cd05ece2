import type { Code } from "../diagnostics/catalogue/index.js";
import type { Diagnostic, Sink } from "../diagnostics/diagnostic.js";
import { printNode } from "../format/print-node.js";
import type { TableModel } from "../model/tables/types.js";
import type {
  BlockModel,
  Expectation,
  HoldModel,
  KeptText,
  LaterStatement,
  Recipe,
  Setting,
  Silence,
} from "../model/types.js";
import type { Block, Define, File, Table } from "../syntax/ast.js";
import type { Quantity } from "../units/quantity.js";
import { type BlockKind, blockRow, definableKinds, topKinds } from "../vocabulary/index.js";
import type { BlockRow } from "../vocabulary/property.js";
import { type CheckedBlock, checkBlock, kindOf, toModel } from "./block.js";
import { noteBehind } from "./blocks/behind.js";
import { checkAllClashes, checkClashes } from "./blocks/clashes.js";
import { checkLight } from "./blocks/light.js";
import { checkNeeds } from "./blocks/needs.js";
import { fillFromPhoto } from "./blocks/photo.js";
import { type Context, here, replace, report } from "./context.js";
import { declareAll } from "./declare.js";
import { checkExpectation } from "./expectations.js";
import { checkHold } from "./hold.js";
import type { Kits } from "./kits/kits.js";
import { keepForLater } from "./later.js";
import { finishLets, useLet } from "./lets.js";
import { expand } from "./like.js";
import { readProperties } from "./properties.js";
import { checkSilence } from "./silence.js";
import { type TableLimits, usualLimits } from "./tables/limits.js";
import { checkTable } from "./tables/table.js";
import { checkTitle } from "./title.js";

/** What came of checking a file: the model of everything that could be understood, and whether that is all. */
export interface Checked {
  /** Null only where there is nothing to make a model of. */
  readonly recipe: Recipe | null;
  /** True where no error was found, so that the model means what the file says. */
  readonly sound: boolean;
  /** What the names of the file mean; another file that uses it reads its definitions by them. */
  readonly ctx: Context;
}

/** Notes that something is missing or never used. They wait until all the rest is understood. */
const absenceCodes: ReadonlySet<string> = new Set<Code>([
  "camera.missing",
  "let.unused",
  "define.unused",
  "use.unused",
  "result.not-here",
]);

/**
 * Checks names, dimensions and blocks of one set-up and makes the model of it, its variants aside. Findings go to the
 * sink; the model holds whatever could be understood, so that an editor can go on with it.
 * @param kits - The way to the kits that the file names.
 * @param whole - False where the parser reported an error: what seems to be missing may stand in what it left out.
 * @param said - What has been reported already and is not said again, by code and place; it is added to.
 */
export function checkSetUp(
  file: File,
  name: string,
  sink: Sink,
  kits: Kits,
  whole: boolean,
  said: Set<string> = new Set(),
  limits: TableLimits = usualLimits,
): Checked {
  let sound = true;
  const absences: Diagnostic[] = [];
  const ctx: Context = {
    file: name,
    sink: (diagnostic) => {
      if (diagnostic.severity === "error") sound = false;
      // A definition is read wherever it is used; its mistakes are said once.
      const { file: where, start, end } = diagnostic.place;
      const key = `${diagnostic.code} ${start} ${end} ${where}`;
      if (said.has(key)) return;
      said.add(key);
      if (absenceCodes.has(diagnostic.code)) absences.push(diagnostic);
      else sink(diagnostic);
    },
    lets: new Map(),
    letValue: (word) => useLet(ctx, word),
    definitions: new Map(),
    declared: new Map(),
    made: [],
    subjects: [],
    circles: new Set(),
    missing: new Set(),
    limits,
    files: kits.files,
  };
  declareAll(ctx, file, kits);
  const title = checkTitle(ctx, file, whole);
  const top = checkTopBlocks(ctx, file, title?.kind ?? "recipe");
  const expectations: Expectation[] = [];
  const holds: HoldModel[] = [];
  const tables: TableModel[] = [];
  const later: LaterStatement[] = [];
  for (const item of file.items) {
    if (item.kind === "expect") {
      const checked = checkExpectation(ctx, item);
      if (checked !== null) expectations.push(checked);
    } else if (item.kind === "hold") {
      const checked = checkHold(ctx, item);
      if (checked !== null) holds.push(checked);
    } else if (item.kind === "table") {
      if (title !== null) tables.push(...tableOf(ctx, file, item, title.kind, whole, tables));
    } else {
      const kept = keepForLater(ctx, item, title?.kind ?? "recipe");
      if (kept !== null) later.push(kept);
    }
  }
  const definitions = checkDefinitions(ctx, file);
  finishLets(ctx);
  noteUnused(ctx, title?.kind ?? "recipe");
  if (title?.kind === "recipe" && top.one("camera") === null) report(ctx, "camera.missing", title.span, {});
  if (sound && whole) for (const absence of absences) sink(absence);
  if (title === null) return { recipe: null, sound, ctx };
  const recipe: Recipe = {
    format: 1,
    kind: title.kind,
    title: title.text,
    of: title.of,
    ...(title.variant === null ? {} : { ofVariant: title.variant }),
    uses: keptUses(file),
    lets: keptLets(file),
    definitions,
    about: top.one("about"),
    room: top.one("room"),
    set: top.one("set"),
    subjects: top.of("subject"),
    points: top.of("point"),
    lights: top.of("light"),
    camera: top.one("camera"),
    meter: top.one("meter"),
    intent: top.one("intent"),
    tolerances: settings(top.checked("tolerances")),
    thresholds: settings(top.checked("thresholds")),
    silence: top.silence,
    expectations,
    holds,
    variants: [],
    tables,
    later,
  };
  return { recipe, sound, ctx };
}

function keptUses(file: File): readonly KeptText[] {
  return file.items.flatMap((item) =>
    item.kind === "use" ? [{ name: item.from.value, written: printNode(item) }] : [],
  );
}

/** One table of a recipe, where it may stand and its title is new. */
function tableOf(
  ctx: Context,
  file: File,
  item: Table,
  kind: Recipe["kind"],
  whole: boolean,
  before: readonly TableModel[],
): readonly TableModel[] {
  if (kind !== "recipe") {
    report(ctx, "table.placed", item.title.span, { kind });
    return [];
  }
  const first = before.find((table) => table.title === item.title.value);
  if (first !== undefined) {
    const related = first.origin === undefined ? [] : [{ place: first.origin, text: "the first is here" }];
    report(ctx, "table.twice", item.title.span, { title: item.title.value }, { related });
    return [];
  }
  const checked = checkTable(ctx, file, item, whole);
  return checked === null ? [] : [checked];
}

function keptLets(file: File): readonly KeptText[] {
  return file.items.flatMap((item) =>
    item.kind === "let" ? [{ name: item.name.text, written: printNode(item) }] : [],
  );
}

/** The blocks that stand by themselves, checked, by kind. */
interface TopBlocks {
  checked(kind: BlockKind): CheckedBlock | null;
  of<K extends BlockKind>(kind: K): readonly BlockModel<K>[];
  one<K extends BlockKind>(kind: K): BlockModel<K> | null;
  readonly silence: readonly Silence[];
}

function checkTopBlocks(ctx: Context, file: File, fileKind: Recipe["kind"]): TopBlocks {
  const all = ctx.made;
  const silence: Silence[] = [];
  const single = new Map<string, Block>();
  for (const item of file.items) {
    if (item.kind !== "block") continue;
    const row = kindOf(ctx, item, topKinds, "by itself");
    if (row === null) continue;
    const head = item.words[0]?.span ?? item.span;
    if (fileKind === "kit" && row.kind !== "about") {
      const start = { start: item.span.start, end: item.span.start };
      const fixes = row.named === "needed" ? [replace(ctx, "put `define` in front", start, "define ")] : [];
      report(ctx, "kit.placed", head, { what: row.kind }, { fixes });
      continue;
    }
    if (fileKind === "session" && row.kind !== "about") {
      report(ctx, "session.placed", head, { what: row.kind });
      continue;
    }
    const before = single.get(row.kind);
    if (row.named === "none" && before !== undefined) {
      report(
        ctx,
        "block.twice",
        head,
        { kind: row.kind },
        {
          related: [{ place: here(ctx, before.words[0]?.span ?? before.span), text: "the first is here" }],
        },
      );
      continue;
    }
    single.set(row.kind, item);
    if (row.kind === "silence") {
      silence.push(...checkSilence(ctx, item, row));
      continue;
    }
    const checked = checkBlock(ctx, item, row);
    if (row.kind === "camera") fillFromPhoto(checked);
    const clear = checkAllClashes(ctx, checked);
    const complete = checkNeeds(checked) && clear;
    if (row.kind === "light" || row.kind === "camera") noteBehind(ctx, checked);
    if (row.kind === "light" && !(checkLight(ctx, checked) && complete)) continue;
    all.push(checked);
  }
  if (ctx.subjects.length > 1 && ctx.subjects.includes("")) {
    const unnamed = file.items.find(
      (item) => item.kind === "block" && item.words[0]?.text === "subject" && item.words.length === 1,
    );
    if (unnamed !== undefined)
      report(ctx, "block.name-missing", unnamed.span, { kind: "subject", example: "ana" });
  }
  return {
    checked: (kind) => all.find((checked) => checked.kind === kind) ?? null,
    of: (kind) => modelsOf(all, kind),
    one: (kind) => modelsOf(all, kind)[0] ?? null,
    silence,
  };
}

/** The models of the blocks of a kind, in their order. */
function modelsOf<K extends BlockKind>(all: readonly CheckedBlock[], kind: K): readonly BlockModel<K>[] {
  const models: BlockModel<K>[] = [];
  for (const checked of all) if (checked.kind === kind) models.push(toModel<K>(checked));
  return models;
}

function settings(checked: CheckedBlock | null): readonly Setting[] {
  if (checked === null) return [];
  return [...checked.read.values].map(([name, value]) => {
    const quantity = value as Quantity;
    return { name, value: quantity.value, unit: quantity.unit, written: quantity.written };
  });
}

/** Checks every definition by itself, so that its mistakes are found where they are, used or not. */
function checkDefinitions(ctx: Context, file: File): readonly KeptText[] {
  const kept: KeptText[] = [];
  for (const item of file.items) {
    if (item.kind !== "define") continue;
    const word = item.block.words[0];
    if (word !== undefined && blockRow(word.text) === null) {
      kindOf(ctx, item.block, definableKinds, "in a definition");
      continue;
    }
    const row = word === undefined ? null : blockRow(word.text);
    if (row === null || word === undefined) continue;
    const name = item.block.words[1]?.text;
    const entry = name === undefined ? undefined : ctx.definitions.get(name);
    if (name === undefined || entry === undefined || entry.statement !== item) continue;
    kept.push({ name, written: printNode(item) });
    checkDefinition(ctx, row, item);
  }
  return kept;
}

/** Reads what a definition says; a head's calibrations with modifiers one by one, since only one counts at a time. */
function checkDefinition(ctx: Context, row: BlockRow, statement: Define): void {
  const { block } = statement;
  const { entries } = expand(ctx, block, row.kind, [statement]);
  const paired = entries.filter(({ entry }) => entry.kind === "property" && entry.companion !== null);
  const read = readProperties(
    row,
    entries.filter((owned) => !paired.includes(owned)),
  );
  checkClashes(ctx, row.kind, read);
  for (const owned of paired) readProperties(row, [owned]);
}

function noteUnused(ctx: Context, fileKind: Recipe["kind"]): void {
  for (const { used, home, place, name } of ctx.definitions.values()) {
    if (used) continue;
    if (home !== null) report(ctx, "use.unused", place, { name });
    else if (fileKind !== "kit") report(ctx, "define.unused", place, { name });
  }
}
