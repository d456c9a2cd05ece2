import { MAX_VARIANT_TEXT, MAX_VARIANTS } from "../../core/limits.js";
import type { Sink } from "../../diagnostics/diagnostic.js";
import type { Recipe, VariantModel } from "../../model/types.js";
import type { Expect, File, Hold, Item, Variant } from "../../syntax/ast.js";
import { changeFile } from "../change/change.js";
import { type Context, here, type Reporter, replace, report } from "../context.js";
import type { Kits } from "../kits/kits.js";
import { kitLook } from "../kits/look.js";
import { checkSetUp } from "../recipe.js";
import { type Link, linkVariants } from "./chain.js";
import { variantSink } from "./findings.js";
import { changesOf, withoutRepeats } from "./repeats.js";

/** The set-up that variants start from, checked. */
export interface Base {
  readonly file: File;
  readonly kits: Kits;
  /** What its names mean. */
  readonly ctx: Context;
  /** What has been reported about it, by code and place. */
  readonly said: ReadonlySet<string>;
  readonly recipe: Recipe;
}

/** One set-up that others may come from: what stands in it, what it expects, and what was reported about it. */
interface SetUp {
  readonly file: File;
  readonly expects: readonly Expect[];
  readonly said: ReadonlySet<string>;
}

/** Checks every variant of a recipe as a set-up of its own. Each finding is told once, at the lines of a variant. */
export function checkVariants(
  base: Base,
  sink: Sink,
): { readonly variants: readonly VariantModel[]; readonly sound: boolean } {
  let sound = true;
  const to: Reporter = {
    file: base.ctx.file,
    sink: (diagnostic) => {
      if (diagnostic.severity === "error") sound = false;
      sink(diagnostic);
    },
  };
  const first = base.file.items.find((item) => item.kind === "variant");
  if (first?.kind !== "variant") return { variants: [], sound };
  if (base.recipe.kind !== "recipe") {
    report(to, "variant.placed", first.title.span, { kind: base.recipe.kind });
    return { variants: [], sound };
  }
  const links = linkVariants(base.file, to);
  const most = Math.min(MAX_VARIANTS, Math.floor(MAX_VARIANT_TEXT / Math.max(1, base.file.span.end)));
  const beyond = links[most];
  if (beyond !== undefined) report(to, "limit.variants", beyond.variant.title.span, { limit: most });
  const setUps = new Map<Link | null, SetUp>([[null, startOf(base)]]);
  const variants: VariantModel[] = [];
  for (const link of links.slice(0, most)) {
    for (const step of wayTo(link)) {
      if (setUps.has(step)) continue;
      const from = setUps.get(step.from) as SetUp;
      const { setUp, recipe } = checkOne(to, base, step.variant, from);
      setUps.set(step, setUp);
      if (recipe !== null) variants.push(recipe);
    }
  }
  const order = links.map((link) => link.variant.title.value);
  variants.sort((a, b) => order.indexOf(a.title) - order.indexOf(b.title));
  return { variants, sound };
}

/** A checked recipe's file as one of its variants has it, found sound before; null where it has no such variant. */
export function fileOfVariant(file: File, title: string, name: string, kits: Kits): File | null {
  const to: Reporter = { file: name, sink: () => undefined };
  const link = linkVariants(file, to).find(({ variant }) => variant.title.value === title);
  if (link === undefined) return null;
  const look = kitLook(file, name, kits);
  return wayTo(link).reduce((before, { variant }) => {
    const changes = changesOf(withoutRepeats(to, before, variant));
    return withHolds(changeFile(before, changes, to, look), variant);
  }, file);
}

/** A variant and all that it comes from, the recipe's own variant first. */
function wayTo(link: Link): readonly Link[] {
  const way: Link[] = [];
  for (let at: Link | null = link; at !== null; at = at.from) way.push(at);
  return way.reverse();
}

const elsewhere: ReadonlySet<Item["kind"]> = new Set(["table", "variant", "solve", "measured", "expect"]);

function startOf({ file, said }: Base): SetUp {
  return {
    file: { ...file, items: file.items.filter((item) => !elsewhere.has(item.kind)) },
    expects: file.items.filter((item) => item.kind === "expect"),
    said,
  };
}

function checkOne(
  all: Reporter,
  base: Base,
  variant: Variant,
  from: SetUp,
): { readonly setUp: SetUp; readonly recipe: VariantModel | null } {
  let clean = true;
  const to: Reporter = {
    file: all.file,
    sink: (diagnostic) => {
      if (diagnostic.severity === "error") clean = false;
      all.sink(diagnostic);
    },
  };
  let keeps = false;
  for (const line of variant.lines) {
    if (line.kind !== "keep") continue;
    if (line.what.text === "expectations") keeps = true;
    else {
      report(
        to,
        "variant.keep",
        line.what.span,
        { word: line.what.text },
        { fixes: [replace(to, "write `expectations`", line.what.span, "expectations")] },
      );
      keeps = true;
    }
  }
  const own = variant.lines.filter((line) => line.kind === "expect");
  const changes = changesOf(withoutRepeats(to, from.file, variant));
  const kept = keeps ? from.expects : [];
  const said = new Set(from.said);
  const changed = withHolds(
    changeFile(from.file, changes, to, kitLook(base.file, to.file, base.kits)),
    variant,
  );
  const setUp: SetUp = { file: changed, expects: [...kept, ...own], said };
  const sink = variantSink(
    variant,
    kept.map((row) => row.span),
    to.file,
    to.sink,
  );
  const whole = { ...changed, items: [...changed.items, ...setUp.expects] };
  const { recipe } = checkSetUp(whole, to.file, sink, base.kits, true, said);
  if (clean && own.length === 0 && !keeps) {
    report(to, "variant.unchecked", variant.title.span, { title: variant.title.value });
  }
  if (recipe === null) return { setUp, recipe };
  return {
    setUp,
    recipe: {
      title: variant.title.value,
      from: variant.from?.value ?? null,
      keeps,
      recipe: { ...recipe, uses: [], definitions: [], later: [] },
      origin: here(to, variant.span),
    },
  };
}

const dialsOf = (hold: Hold): string =>
  hold.by.map((path) => path.parts.map((part) => part.text).join(".")).join(" ");

/** The file with what the variant holds; one that turns the same dials takes the place of another. */
function withHolds(file: File, variant: Variant): File {
  const own = variant.lines.filter((line) => line.kind === "hold");
  if (own.length === 0) return file;
  const replaced = new Set(own.map(dialsOf));
  const kept = file.items.filter((item) => item.kind !== "hold" || !replaced.has(dialsOf(item)));
  return { ...file, items: [...kept, ...own] };
}
