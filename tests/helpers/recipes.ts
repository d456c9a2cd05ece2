import fc from "fast-check";
import type {
  Amount,
  Argument,
  Block,
  Claim,
  Column,
  Entry,
  Expect,
  Expression,
  File,
  Hold,
  Item,
  Name,
  Path,
  Property,
  Quantity,
  Show,
  Sweep,
  TextLiteral,
  Unit,
  Value,
} from "../../src/syntax/ast.js";
import { keywords } from "../../src/text/kinds.js";

/** Trees as the parser would build them, with every construct of the language; their places are empty. */

const span = { start: 0, end: 0 };
/** Words that would be read as what they usually are where a name of this kind stands. */
const joining = [
  "from under over is within between and because by to like with surely as of step count near".split(" "),
  ["f", "F", "x", "X", "ISO"],
].flat();

const plain = fc
  .stringMatching(/^[a-zA-Zéßλя][a-z0-9_é]{0,7}$/)
  .map((text) => text.normalize("NFC"))
  .filter((text) => !keywords.has(text) && !joining.includes(text) && !/^(?:f|iso)\d+$/i.test(text));
const softWord = fc.constantFrom(...[...keywords.keys()].filter((word) => !joining.includes(word)));
const quotedText = fc.stringMatching(/^[ -_a-~é字]{1,8}$/).filter((text) => text.trim() !== "");

const nameOf = (text: string, quoted: boolean): Name => ({ kind: "name", span, text, quoted });
const quotedName = quotedText.map((text) => nameOf(text, true));
const name: fc.Arbitrary<Name> = fc.oneof(
  { weight: 8, arbitrary: plain.map((text) => nameOf(text, false)) },
  { weight: 1, arbitrary: softWord.map((text) => nameOf(text, false)) },
  { weight: 1, arbitrary: quotedName },
  {
    weight: 1,
    arbitrary: fc.constantFrom("__proto__", "constructor", "toString").map((text) => nameOf(text, true)),
  },
);
/** A name that starts a line or a value and is no word of a statement. */
const kind: fc.Arbitrary<Name> = plain.map((text) => nameOf(text, false));

const pathOf = (parts: readonly Name[]): Path => ({ kind: "path", span, parts });
const path = fc.array(name, { minLength: 1, maxLength: 3 }).map(pathOf);
const plainPath = fc
  .tuple(kind, fc.array(name, { maxLength: 2 }))
  .map(([first, rest]) => pathOf([first, ...rest]));

const textOf =
  (block: boolean) =>
  (value: string): TextLiteral => ({ kind: "text", span, value, block });
const anyText = fc.string({ unit: "binary", maxLength: 12 }).filter((text) => !/[\ud800-\udfff]/u.test(text));
const lines = fc.string({
  unit: fc.constantFrom("a", " ", "\n", '"', "\\", "\t", "é", "\r", "\u202e"),
  maxLength: 14,
});
const text = fc.oneof(anyText, lines).map(textOf(false));
const blockText = fc.oneof(anyText, lines).map(textOf(true));

// ------------------------------------------------------------ numbers

interface Written {
  readonly value: number;
  readonly written: string;
}

const whole = fc.nat({ max: 5000 }).map((value): Written => ({ value, written: String(value) }));
const decimal = fc
  .tuple(fc.nat({ max: 999 }), fc.stringMatching(/^[0-9]{1,4}$/))
  .map(([front, back]): Written => ({ value: Number(`${front}.${back}`), written: `${front}.${back}` }));
const fraction = fc
  .tuple(fc.nat({ max: 99 }), fc.integer({ min: 1, max: 8000 }))
  .map(([above, below]): Written => ({ value: above / below, written: `${above}/${below}` }));
const mixed = fc
  .tuple(whole, fraction)
  .map(([a, b]): Written => ({ value: a.value + b.value, written: `${a.written} ${b.written}` }));
const number = fc.oneof(whole, decimal, fraction, mixed);

const unitWord = fc.constantFrom("m", "cm", "ft", "in", "s", "lm", "EV", "stop", "deg", "Ws", "µm", "metres");
const unit: fc.Arbitrary<Unit> = fc
  .oneof(
    { weight: 6, arbitrary: unitWord },
    { weight: 1, arbitrary: fc.tuple(unitWord, unitWord).map(([a, b]) => `${a} ${b}`) },
    { weight: 1, arbitrary: fc.constantFrom("%", "°", "lm/W") },
  )
  .map((written) => ({ span, text: written }));
const amountWith = (units: fc.Arbitrary<Unit | null>): fc.Arbitrary<Amount> =>
  fc.tuple(number, units).map(([written, own]) => ({ span, ...written, unit: own }));
const amount = amountWith(fc.option(unit, { nil: null }));
const withUnit = amountWith(unit);

const quantity: fc.Arbitrary<Quantity> = fc.oneof(
  {
    weight: 5,
    arbitrary: amount.map((one): Quantity => ({ kind: "quantity", span, joined: "single", amounts: [one] })),
  },
  {
    weight: 1,
    arbitrary: fc
      .array(amount, { minLength: 2, maxLength: 3 })
      .map((amounts): Quantity => ({ kind: "quantity", span, joined: "by", amounts })),
  },
  {
    weight: 1,
    arbitrary: fc
      .array(withUnit, { minLength: 2, maxLength: 2 })
      .map((amounts): Quantity => ({ kind: "quantity", span, joined: "beside", amounts })),
  },
);
const plainNumber = fc.oneof(whole, decimal);

// ------------------------------------------------------------ expressions and values

const { expression, value } = fc.letrec<{
  primary: Expression;
  operand: Expression;
  product: Expression;
  expression: Expression;
  value: Value;
  argument: Argument;
}>((tie) => ({
  primary: fc.oneof(
    { maxDepth: 4, depthIdentifier: "recipe" },
    quantity,
    plainNumber.map(
      (w): Expression => ({ kind: "f-number", span, value: w.value, written: `f/${w.written}` }),
    ),
    plainNumber.map((w): Expression => ({ kind: "iso", span, ...w })),
    fc
      .tuple(plainNumber, plainNumber)
      .map(([a, b]): Expression => ({ kind: "ratio", span, left: a.value, right: b.value })),
    plainPath.map((own): Expression => ({ kind: "reference", span, path: own, args: null })),
    fc
      .tuple(plainPath, fc.array(tie("argument"), { maxLength: 3 }))
      .map(([own, args]): Expression => ({ kind: "reference", span, path: own, args })),
    fc
      .array(tie("expression"), { minLength: 1, maxLength: 3 })
      .map((members): Expression => ({ kind: "group", span, members })),
  ),
  operand: fc.oneof(
    { weight: 6, arbitrary: tie("primary") },
    {
      weight: 1,
      arbitrary: tie("primary").map((operand): Expression => ({ kind: "negation", span, operand })),
    },
    {
      weight: 1,
      arbitrary: fc
        .tuple(tie("primary"), tie("primary"))
        .map(([own, tolerance]): Expression => ({ kind: "toleranced", span, value: own, tolerance })),
    },
  ),
  product: fc.oneof(
    { weight: 4, arbitrary: tie("operand") },
    {
      weight: 1,
      arbitrary: fc
        .tuple(
          tie("operand"),
          fc.array(fc.tuple(fc.constantFrom("*" as const, "/" as const), tie("operand")), {
            minLength: 1,
            maxLength: 2,
          }),
        )
        .map(
          ([first, rest]): Expression => ({
            kind: "product",
            span,
            factors: [{ sign: "*", value: first }, ...rest.map(([sign, own]) => ({ sign, value: own }))],
          }),
        ),
    },
  ),
  expression: fc.oneof(
    { weight: 4, arbitrary: tie("product") },
    {
      weight: 1,
      arbitrary: fc
        .tuple(
          tie("product"),
          fc.array(fc.tuple(fc.constantFrom("+" as const, "-" as const), tie("product")), {
            minLength: 1,
            maxLength: 3,
          }),
        )
        .map(
          ([first, rest]): Expression => ({
            kind: "sum",
            span,
            terms: [{ sign: "+", value: first }, ...rest.map(([sign, own]) => ({ sign, value: own }))],
          }),
        ),
    },
  ),
  value: fc.oneof(
    { maxDepth: 4, depthIdentifier: "recipe" },
    tie("expression"),
    text,
    blockText,
    fc.constant<Value>({ kind: "unknown", span }),
    fc.array(tie("value"), { maxLength: 3 }).map((items): Value => ({ kind: "list", span, items })),
    fc
      .tuple(
        tie("expression"),
        fc.constantFrom("from" as const, "under" as const, "over" as const, "is" as const),
        tie("expression"),
      )
      .map(([left, word, right]): Value => ({ kind: "relation", span, word, left, right })),
  ),
  argument: fc
    .tuple(fc.option(name, { nil: null }), tie("value"))
    .map(([own, inner]): Argument => ({ span, name: own, value: inner })),
}));

// ------------------------------------------------------------ blocks and statements

const property: fc.Arbitrary<Property> = fc
  .tuple(path, fc.option(name, { nil: null, freq: 6 }), value)
  .map(([own, companion, inner]) => ({ kind: "property", span, path: own, companion, value: inner }));

const { block } = fc.letrec<{ block: Block; entry: Entry }>((tie) => ({
  block: fc
    .tuple(
      fc.array(kind, { minLength: 1, maxLength: 2 }),
      fc.option(fc.tuple(path, fc.array(path, { maxLength: 2 })), { nil: null }),
      fc.array(tie("entry"), { maxLength: 3 }),
    )
    .map(
      ([words, like, entries]): Block => ({
        kind: "block",
        span,
        words,
        like: like?.[0] ?? null,
        companions: like?.[1] ?? [],
        entries,
        damaged: false,
      }),
    ),
  entry: fc.oneof({ maxDepth: 3 }, property, tie("block")),
}));
const entry: fc.Arbitrary<Entry> = fc.oneof(property, block);

const claim: fc.Arbitrary<Claim> = fc.oneof(
  expression.map((own): Claim => ({ kind: "bare", span, value: own })),
  fc
    .tuple(
      expression,
      expression,
      fc.option(fc.tuple(fc.constantFrom("under" as const, "over" as const), expression), { nil: null }),
      expression,
    )
    .map(
      ([own, target, side, within]): Claim => ({
        kind: "is",
        span,
        value: own,
        target,
        side: side === null ? null : { word: side[0], of: side[1] },
        within,
      }),
    ),
  fc
    .tuple(expression, expression, expression)
    .map(([own, low, high]): Claim => ({ kind: "between", span, value: own, low, high })),
  fc
    .tuple(expression, fc.constantFrom("<" as const, "<=" as const, ">" as const, ">=" as const), expression)
    .map(([own, sign, target]): Claim => ({ kind: "compare", span, value: own, sign, target })),
);
const expect: fc.Arbitrary<Expect> = fc
  .tuple(fc.boolean(), fc.array(claim, { minLength: 1, maxLength: 2 }), fc.option(text, { nil: null }))
  .map(([surely, claims, because]) => ({ kind: "expect", span, surely, claims, because }));
const hold: fc.Arbitrary<Hold> = fc
  .tuple(expression, fc.option(expression, { nil: null }), fc.array(path, { minLength: 1, maxLength: 2 }))
  .map(([reading, target, by]) => ({ kind: "hold", span, reading, target, by }));
const sweep: fc.Arbitrary<Sweep> = fc
  .tuple(
    path,
    fc.oneof(
      value.map((values): Sweep["range"] => ({ kind: "over", values })),
      fc
        .tuple(expression, expression, expression)
        .map(([from, to, step]): Sweep["range"] => ({ kind: "steps", from, to, step, count: null })),
      fc.tuple(expression, expression, whole).map(([from, to, count]): Sweep["range"] => ({
        kind: "steps",
        from,
        to,
        step: null,
        count: { span, ...count, unit: null },
      })),
    ),
  )
  .map(([own, range]) => ({ kind: "sweep", span, path: own, range }));
const column: fc.Arbitrary<Column> = fc
  .tuple(expression, fc.option(unit, { nil: null }), fc.option(text, { nil: null }))
  .map(([own, as, title]) => ({ span, value: own, as, title }));
const show: fc.Arbitrary<Show> = fc
  .array(column, { minLength: 1, maxLength: 3 })
  .map((columns) => ({ kind: "show", span, columns }));

const some = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T[]> => fc.array(arbitrary, { maxLength: 3 });

const item: fc.Arbitrary<Item> = fc.oneof(
  { weight: 4, arbitrary: block },
  fc
    .tuple(fc.array(name, { minLength: 1, maxLength: 3 }), text)
    .map(([names, from]): Item => ({ kind: "use", span, names, from })),
  fc.tuple(name, expression).map(([own, inner]): Item => ({ kind: "let", span, name: own, value: inner })),
  block.map((own): Item => ({ kind: "define", span, block: own })),
  expect,
  hold,
  fc
    .tuple(text, some(fc.oneof(sweep, show, hold, property)))
    .map(([title, own]): Item => ({ kind: "table", span, title, lines: own })),
  fc
    .tuple(
      text,
      fc.option(text, { nil: null }),
      some(
        fc.oneof(
          path.map((own) => ({ kind: "remove" as const, span, path: own })),
          name.map((what) => ({ kind: "keep" as const, span, what })),
          expect,
          hold,
          entry,
        ),
      ),
    )
    .map(([title, from, own]): Item => ({ kind: "variant", span, title, from, lines: own })),
  fc
    .tuple(
      fc.option(text, { nil: null }),
      some(
        fc.oneof(
          fc
            .tuple(path, expression, expression, fc.option(expression, { nil: null }))
            .map(([own, low, high, near]) => ({ kind: "find" as const, span, path: own, low, high, near })),
          claim.map((own) => ({ kind: "meet" as const, span, claim: own })),
          fc
            .tuple(kind, expression)
            .map(([direction, own]) => ({ kind: "prefer" as const, span, direction, value: own })),
        ),
      ),
    )
    .map(([title, own]): Item => ({ kind: "solve", span, title, lines: own })),
  some(
    fc.oneof(
      fc
        .tuple(plainPath, fc.array(fc.tuple(name, expression), { maxLength: 2 }), expression)
        .map(([own, args, inner]) => ({
          kind: "reading" as const,
          span,
          reading: {
            kind: "reference" as const,
            span,
            path: own,
            args: args.map(([word, arg]) => ({ span, name: word, value: arg })),
          },
          value: inner,
        })),
      entry,
    ),
  ).map((own): Item => ({ kind: "measured", span, lines: own })),
);

/** A whole file of any shape. */
export const anyFile: fc.Arbitrary<File> = fc
  .tuple(
    fc.constantFrom("recipe", "kit", "session"),
    text,
    fc.option(text, { nil: null }),
    fc.array(item, { maxLength: 5 }),
  )
  .map(([word, title, of, items]) => ({
    kind: "file",
    span,
    header: {
      kind: "header",
      span,
      word: nameOf("halfshade", false),
      version: { span, value: 1, written: "1", unit: null },
    },
    title: { kind: "title", span, word: nameOf(word, false), text: title, of },
    items,
  }));
