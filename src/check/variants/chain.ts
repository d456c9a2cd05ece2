import { quote } from "../../core/quote.js";
import type { File, Variant } from "../../syntax/ast.js";
import { here, type Reporter, replace, report } from "../context.js";
import { nearNames, suggestion } from "../suggest.js";

/** A variant with what it comes from; null for the recipe itself. */
export interface Link {
  readonly variant: Variant;
  readonly from: Link | null;
}

/** The variants of a file that lead back to the recipe, in file order. What does not is reported. */
export function linkVariants(file: File, to: Reporter): readonly Link[] {
  const byTitle = new Map<string, Variant>();
  const own: Variant[] = [];
  for (const item of file.items) {
    if (item.kind !== "variant") continue;
    const before = byTitle.get(item.title.value);
    if (before === undefined) {
      byTitle.set(item.title.value, item);
      own.push(item);
      continue;
    }
    const related = [{ place: here(to, before.title.span), text: "the first is here" }];
    report(to, "variant.twice", item.title.span, { title: item.title.value }, { related });
  }
  const links = new Map<Variant, Link | null>();
  const linked = own.map((variant) => linkOf(variant, byTitle, links, to));
  return linked.filter((link) => link !== null);
}

/** Follows a chain to the recipe. The walk is a loop: a chain may be as long as there are variants. */
function linkOf(
  variant: Variant,
  byTitle: ReadonlyMap<string, Variant>,
  links: Map<Variant, Link | null>,
  to: Reporter,
): Link | null {
  const way: Variant[] = [];
  let at: Variant | null = variant;
  let from: Link | null = null;
  let broken = false;
  while (at !== null) {
    const known = links.get(at);
    if (known !== undefined) {
      from = known;
      broken = known === null;
      break;
    }
    if (way.includes(at)) {
      report(to, "variant.circle", at.from?.span ?? at.title.span, { title: at.title.value });
      broken = true;
      break;
    }
    way.push(at);
    const base: Variant | null = at.from === null ? null : (byTitle.get(at.from.value) ?? null);
    if (at.from !== null && base === null) {
      unknownBase(at, [...byTitle.keys()], to);
      broken = true;
    }
    at = base;
  }
  for (const step of way.reverse()) {
    from = broken ? null : { variant: step, from };
    links.set(step, from);
  }
  return links.get(variant) ?? null;
}

function unknownBase(variant: Variant, titles: readonly string[], to: Reporter): void {
  if (variant.from === null) return;
  const span = variant.from.span;
  const others = titles.filter((title) => title !== variant.title.value);
  const near = nearNames(variant.from.value, others);
  report(
    to,
    "variant.unknown",
    span,
    {
      title: variant.from.value,
      known: suggestion(
        near.map(quote),
        others.map(quote),
        "A variant of the recipe itself needs no `from`.",
      ),
    },
    { fixes: near.map((title) => replace(to, `write ${quote(title)}`, span, quote(title))) },
  );
}
