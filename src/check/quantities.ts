import type { Amount, FNumber, Iso, Quantity } from "../syntax/ast.js";
import { type BaseUnit, dimensionWords } from "../units/dimension.js";
import { quantity } from "../units/make.js";
import { exactFNumber, exactIso } from "../units/nominal.js";
import type { Quantity as Measured } from "../units/quantity.js";
import { slipOf } from "../units/slips.js";
import { canonicalUnit, findUnit, toBase, unitSpellings } from "../units/spellings.js";
import { type Context, replace, report } from "./context.js";
import { nearNames } from "./suggest.js";
import { exampleOf, refuseKind } from "./values/want.js";

/** A written number with its unit as a quantity; null after a finding. A number without unit has the unit `1`. */
export function readAmount(ctx: Context, amount: Amount, base?: BaseUnit): Measured | null {
  if (amount.unit === null) return quantity("1", amount.value, amount.written);
  const row = findUnit(amount.unit.text);
  if (row === null) {
    const unit = amount.unit;
    const near = nearUnits(unit.text, base);
    report(
      ctx,
      "unit.unknown",
      unit.span,
      { unit: unit.text },
      {
        ...(near.length > 0 ? { help: `Perhaps ${near.map((name) => `\`${name}\``).join(" or ")}?` } : {}),
        fixes: near.map((name) => replace(ctx, `write \`${amount.written} ${name}\``, unit.span, name)),
      },
    );
    return null;
  }
  return quantity(row.base, toBase(row, amount.value), `${amount.written} ${row.name}`);
}

/** Units that may have been meant by a misspelt one, as the formatter writes them; those of the wanted dimension first. */
function nearUnits(word: string, base: BaseUnit | undefined): readonly string[] {
  const slip = slipOf(word);
  if (slip !== null && (base === undefined || findUnit(slip)?.base === base)) return [slip];
  const same = base === undefined ? [] : nearNames(word, unitSpellings(base));
  const near = same.length > 0 ? same : nearNames(word, unitSpellings());
  return [...new Set(near.map((name) => canonicalUnit(name) ?? name))];
}

/** The units that may stand side by side: the larger first. */
const pairs: readonly (readonly [string, string])[] = [
  ["ft", "in"],
  ["min", "s"],
];

/** One quantity; `60 x 90 cm` is not one and is refused here. Null after a finding. */
export function readQuantity(
  ctx: Context,
  node: Quantity,
  wanted: { readonly words: string; readonly example: string; readonly unit?: BaseUnit },
): Measured | null {
  const [first, second] = node.amounts;
  if (first === undefined) return null;
  if (node.joined === "single") return readAmount(ctx, first, wanted.unit);
  const written = node.amounts.map(
    (amount) => `${amount.written}${amount.unit ? ` ${amount.unit.text}` : ""}`,
  );
  if (node.joined === "by") {
    report(ctx, "unit.by", node.span, {
      written: written.join(" x "),
      count: node.amounts.length,
      wanted: wanted.words,
      example: wanted.example,
    });
    return null;
  }
  const upper = first.unit === null ? null : findUnit(first.unit.text);
  const lower = second?.unit == null ? null : findUnit(second.unit.text);
  const isPair = pairs.some(([big, small]) => big === upper?.name && small === lower?.name);
  if (node.amounts.length !== 2 || second === undefined || upper === null || lower === null || !isPair) {
    const bases = node.amounts.map((amount) =>
      amount.unit === null ? null : findUnit(amount.unit.text)?.base,
    );
    const sum = written.join(" + ");
    const adds = bases.every((base) => base != null && base === bases[0]);
    const fixes = adds ? [replace(ctx, `write \`${sum}\``, node.span, sum)] : [];
    report(ctx, "unit.beside", node.span, { written: written.join(" ") }, { fixes });
    return null;
  }
  const value = toBase(upper, first.value) + toBase(lower, second.value);
  return quantity(upper.base, value, `${first.written} ${upper.name} ${second.written} ${lower.name}`);
}

/** Numbers joined by "by" as quantities of one dimension; a unit at the end serves all. Null after a finding. */
export function readBy(
  ctx: Context,
  node: Quantity,
  want: {
    readonly count: number;
    readonly base: BaseUnit;
    readonly name: string;
    readonly words: string;
    readonly example: string;
  },
): readonly Measured[] | null {
  if (node.joined !== "by") {
    refuseKind(ctx, want, node, want.words);
    return null;
  }
  if (node.amounts.length !== want.count) {
    const written = node.amounts.map((amount) => amount.written).join(" x ");
    report(ctx, "unit.by", node.span, {
      written,
      count: node.amounts.length,
      wanted: want.words,
      example: exampleOf(want),
    });
    return null;
  }
  const last = node.amounts[node.amounts.length - 1]?.unit ?? null;
  const read: Measured[] = [];
  for (const amount of node.amounts) {
    const one = readAmount(
      ctx,
      amount.unit === null && last !== null ? { ...amount, unit: last } : amount,
      want.base,
    );
    if (one === null) return null;
    if (one.unit !== want.base) {
      if (one.unit === "1") {
        const fix = `${node.amounts.map((a) => a.written).join(" x ")} cm`;
        report(
          ctx,
          "unit.missing",
          node.span,
          { name: want.name, written: one.written, words: dimensionWords(want.base) },
          { fixes: [replace(ctx, `write \`${fix}\``, node.span, fix)] },
        );
      } else {
        report(ctx, "unit.wrong", amount.span, {
          name: want.name,
          wanted: want.words,
          found: dimensionWords(one.unit),
          example: exampleOf(want),
        });
      }
      return null;
    }
    read.push(one);
  }
  return read;
}

/** An f-number; nominal ones stand for their exact series value. */
export function readFNumber(node: FNumber): Measured {
  return quantity("f", exactFNumber(node.value), `f/${node.written.slice(2)}`);
}

/** An ISO sensitivity; nominal ones stand for their exact series value. */
export function readIso(node: Iso): Measured {
  return quantity("ISO", exactIso(node.value), `ISO ${node.written}`);
}
