import {
  AndWord,
  AsWord,
  BetweenWord,
  Colon,
  Comma,
  CompoundUnit,
  CountWord,
  DefineWord,
  Degree,
  Equals,
  ExpectWord,
  FindWord,
  FromWord,
  HoldWord,
  IsWord,
  KeepWord,
  LetWord,
  MeasuredWord,
  MeetWord,
  Name as NameToken,
  NearWord,
  NewLine,
  Numeral,
  OverWord,
  Percent,
  PreferWord,
  RemoveWord,
  ShowWord,
  SolveWord,
  StepWord,
  SweepWord,
  TableWord,
  Text,
  ToWord,
  UseWord,
  VariantWord,
} from "../text/kinds.js";
import type { Token } from "../text/token.js";
import type {
  Amount,
  Column,
  Define,
  Entry,
  Expect,
  Expression,
  Find,
  Hold,
  Keep,
  Let,
  Measured,
  Meet,
  Name,
  Prefer,
  Property,
  Reading,
  Remove,
  Show,
  Solve,
  Sweep,
  Table,
  TextLiteral,
  Unit,
  Use,
  Variant,
} from "./ast.js";
import { plainAmount, shown, spanOf, textOf } from "./build.js";
import { ClaimParser } from "./claims.js";
import { classify } from "./classify.js";
import { nearest } from "./near.js";
import { isWord } from "./token-classes.js";

type TableLine = Sweep | Show | Hold | Property;
type VariantLine = Remove | Keep | Expect | Hold | Entry;
type SolveLine = Find | Meet | Prefer;
type MeasuredLine = Reading | Entry;

const tableWords = [SweepWord, ShowWord, HoldWord];
const variantWords = [RemoveWord, KeepWord, ExpectWord, HoldWord];
const solveWords = [FindWord, MeetWord, PreferWord];

/** The statements of a file that have a shape of their own. */
export abstract class StatementParser extends ClaimParser {
  // ------------------------------------------------------------ use, let, define

  protected use = this.RULE(
    "use",
    (): Use | null => {
      const example = 'use head_a, octa from "./kit.light"';
      const start = this.next();
      const names: Name[] = [];
      this.CONSUME(UseWord);
      const first = this.needName(0, "use", "the names of what is used", example);
      if (first !== null) names.push(first);
      this.MANY(() => {
        this.CONSUME(Comma);
        const name = this.needName(1, "use", "another name behind the comma", example);
        if (name !== null) names.push(name);
      });
      const from = this.need(0, FromWord, "use", "`from` and the path of a kit", example)
        ? this.needText(0, "use", "the path of a kit in quotation marks", example)
        : null;
      return from === null ? null : { kind: "use", span: this.since(start), names, from };
    },
    { resyncEnabled: false },
  );

  protected let = this.RULE(
    "let",
    (): Let | null => {
      const start = this.next();
      this.CONSUME(LetWord);
      const name = this.needName(0, "let", "a name", "let throw = 5 m");
      if (name === null) return null;
      if (this.RECORDING_PHASE || this.at(Equals)) this.CONSUME(Equals);
      else this.wrongLet();
      const value = this.SUBRULE(this.expression);
      return { kind: "let", span: this.since(start), name, value };
    },
    { resyncEnabled: false },
  );

  private wrongLet(): void {
    const gap = this.gap();
    const isSign = this.at(Colon) || this.at(IsWord);
    const span = isSign ? { start: gap.start, end: this.nextSpan().end } : gap;
    const fixes = [this.fix(span, " =", true, "write an equals sign")];
    this.fault("let.sign", isSign ? this.nextSpan() : gap, {}, { fixes });
    if (isSign) this.take();
  }

  protected define = this.RULE(
    "define",
    (): Define | null => {
      const start = this.next();
      this.CONSUME(DefineWord);
      if (!this.RECORDING_PHASE && !isWord(this.peek(1))) {
        this.part("define", "the kind and the name of a thing", "define light head_a { kind: flash }");
        return null;
      }
      const block = this.SUBRULE(this.block);
      return { kind: "define", span: this.since(start), block };
    },
    { resyncEnabled: false },
  );

  // ------------------------------------------------------------ tables

  protected sweep = this.RULE(
    "sweep",
    (): Sweep | null => {
      const example = "sweep key.distance from 1 m to 4 m step 0.5 m";
      const start = this.next();
      this.CONSUME(SweepWord);
      const path = this.needPath(0, "sweep", example);
      if (path === null) return null;
      const over = this.OPTION1(() => {
        this.CONSUME(OverWord);
        return this.SUBRULE(this.value, { ARGS: ["over"] });
      });
      if (!this.RECORDING_PHASE && over !== undefined) {
        return {
          kind: "sweep",
          span: this.since(start),
          path,
          range: { kind: "over", values: over },
        };
      }
      if (!this.need(0, FromWord, "sweep", "`over` and a list, or `from` and `to`", example)) return null;
      const from = this.SUBRULE1(this.expression);
      if (!this.need(0, ToWord, "sweep", "`to` and the last value", example)) return null;
      const to = this.SUBRULE2(this.expression);
      let step: Expression | null = null;
      let count: Amount | null = null;
      this.OPTION2(() => {
        this.OR([
          {
            ALT: () => {
              this.CONSUME(StepWord);
              step = this.SUBRULE3(this.expression);
            },
          },
          {
            ALT: () => {
              this.CONSUME(CountWord);
              count = this.countOf(example);
            },
          },
        ]);
      });
      if (!this.RECORDING_PHASE && step === null && count === null) {
        this.part("sweep", "`step` and a value, or `count` and a number", example);
      }
      return {
        kind: "sweep",
        span: this.since(start),
        path,
        range: { kind: "steps", from, to, step, count },
      };
    },
    { resyncEnabled: false },
  );

  private countOf(example: string): Amount | null {
    if (this.RECORDING_PHASE || this.at(Numeral)) return plainAmount(this.CONSUME(Numeral) as Token);
    this.part("count", "a number", example);
    return null;
  }

  protected show = this.RULE(
    "show",
    (): Show => {
      const start = this.next();
      const columns: Column[] = [];
      this.CONSUME(ShowWord);
      this.OPTION1({
        GATE: () => this.lineGoesOn(),
        DEF: () => this.CONSUME1(NewLine),
      });
      columns.push(this.SUBRULE1(this.column));
      this.MANY(() => {
        this.CONSUME(Comma);
        this.OPTION2({
          GATE: () => this.lineGoesOn(),
          DEF: () => this.CONSUME2(NewLine),
        });
        columns.push(this.SUBRULE2(this.column));
      });
      return { kind: "show", span: this.since(start), columns };
    },
    { resyncEnabled: false },
  );

  /** Whether the next line can go on with a column. */
  private lineGoesOn(): boolean {
    return this.startsOperand(2) && !tableWords.includes(this.peek(2).tokenType);
  }

  protected column = this.RULE(
    "column",
    (): Column => {
      const start = this.next();
      const value = this.SUBRULE(this.expression);
      const as =
        this.OPTION1((): Unit | null => {
          this.CONSUME(AsWord);
          if (this.RECORDING_PHASE || this.startsUnitHere()) return this.SUBRULE(this.unit);
          this.part("as", "a unit", "show key.angular_size as deg");
          return null;
        }) ?? null;
      const title = this.OPTION2(() => textOf(this.CONSUME(Text) as Token, false)) ?? null;
      return { span: this.since(start), value, as, title };
    },
    { resyncEnabled: false },
  );

  protected table = this.RULE(
    "table",
    (): Table => {
      const start = this.next();
      const lines: TableLine[] = [];
      this.CONSUME(TableWord);
      const title = this.titleOf("table");
      if (this.RECORDING_PHASE) this.braces(false, this.tableLine);
      else if (this.openBrace("table", start))
        this.readBraces(false, () => this.SUBRULE(this.tableLine, { ARGS: [lines] }));
      return { kind: "table", span: this.since(start), title, lines };
    },
    { resyncEnabled: false },
  );

  protected tableLine = this.RULE("tableLine", (lines: TableLine[]): void => {
    const kind = this.RECORDING_PHASE ? "setting" : classify(this.run.tokens, this.index());
    if (!this.RECORDING_PHASE && !this.starts(tableWords)) {
      const slip = !this.namesSomething() && nearest(this.peek(1).image, ["sweep", "show", "hold"]) !== null;
      if (kind === "setting" && !slip) lines.push(this.SUBRULE(this.property));
      else this.wrongLine("table", ["sweep", "show", "hold"], "sweep, show, hold or the name of a setting");
      return;
    }
    this.OR<void>([
      { ALT: () => this.keep(lines, this.SUBRULE(this.sweep)) },
      { ALT: () => this.keep(lines, this.SUBRULE(this.show)) },
      { ALT: () => this.keep(lines, this.SUBRULE(this.hold)) },
      {
        ALT: () => this.keep(lines, this.SUBRULE1(this.property)),
        IGNORE_AMBIGUITIES: true,
      },
    ]);
  });

  // ------------------------------------------------------------ variants

  protected remove = this.RULE(
    "remove",
    (): Remove | null => {
      const start = this.next();
      this.CONSUME(RemoveWord);
      const path = this.needPath(0, "remove", "remove fill");
      return path === null ? null : { kind: "remove", span: this.since(start), path };
    },
    { resyncEnabled: false },
  );

  protected keepLine = this.RULE(
    "keepLine",
    (): Keep | null => {
      const start = this.next();
      this.CONSUME(KeepWord);
      const what = this.needName(0, "keep", "the word expectations", "keep expectations");
      return what === null ? null : { kind: "keep", span: this.since(start), what };
    },
    { resyncEnabled: false },
  );

  protected variant = this.RULE(
    "variant",
    (): Variant => {
      const start = this.next();
      const lines: VariantLine[] = [];
      this.CONSUME(VariantWord);
      const title = this.titleOf("variant");
      const from =
        this.OPTION(() => {
          this.CONSUME(FromWord);
          return this.needText(
            1,
            "from",
            "the title of another variant",
            'variant "Later still" from "Later" { }',
          );
        }) ?? null;
      if (this.RECORDING_PHASE) this.braces(true, this.variantLine);
      else if (this.openBrace("variant", start))
        this.readBraces(true, () => this.SUBRULE(this.variantLine, { ARGS: [lines] }));
      return { kind: "variant", span: this.since(start), title, from, lines };
    },
    { resyncEnabled: false },
  );

  protected variantLine = this.RULE("variantLine", (lines: VariantLine[]): void => {
    if (!this.RECORDING_PHASE && !this.starts(variantWords)) {
      this.readEntry(lines as Entry[]);
      return;
    }
    this.OR<void>([
      { ALT: () => this.keep(lines, this.SUBRULE(this.remove)) },
      { ALT: () => this.keep(lines, this.SUBRULE(this.keepLine)) },
      { ALT: () => this.keep(lines, this.SUBRULE(this.expect)) },
      { ALT: () => this.keep(lines, this.SUBRULE(this.hold)) },
      {
        ALT: () => this.SUBRULE(this.entry, { ARGS: [lines as Entry[]] }),
        IGNORE_AMBIGUITIES: true,
      },
    ]);
  });

  // ------------------------------------------------------------ solve

  protected find = this.RULE(
    "find",
    (): Find | null => {
      const example = "find key.distance between 2 m and 9 m";
      const start = this.next();
      this.CONSUME(FindWord);
      const path = this.needPath(0, "find", example);
      if (path === null) return null;
      if (!this.need(0, BetweenWord, "find", "`between` and two values", example)) return null;
      const low = this.SUBRULE1(this.expression);
      if (!this.need(0, AndWord, "between", "`and` and the upper value", example)) return null;
      const high = this.SUBRULE2(this.expression);
      const near =
        this.OPTION(() => {
          this.CONSUME(NearWord);
          return this.SUBRULE3(this.expression);
        }) ?? null;
      return { kind: "find", span: this.since(start), path, low, high, near };
    },
    { resyncEnabled: false },
  );

  protected meet = this.RULE(
    "meet",
    (): Meet => {
      const start = this.next();
      this.CONSUME(MeetWord);
      const claim = this.SUBRULE(this.claim, { ARGS: ["meet"] });
      return { kind: "meet", span: this.since(start), claim };
    },
    { resyncEnabled: false },
  );

  protected prefer = this.RULE(
    "prefer",
    (): Prefer | null => {
      const start = this.next();
      this.CONSUME(PreferWord);
      const direction = this.needName(0, "prefer", "least or most", "prefer least key.power");
      if (direction === null) return null;
      const value = this.SUBRULE(this.expression);
      return { kind: "prefer", span: this.since(start), direction, value };
    },
    { resyncEnabled: false },
  );

  protected solve = this.RULE(
    "solve",
    (): Solve => {
      const start = this.next();
      const lines: SolveLine[] = [];
      this.CONSUME(SolveWord);
      const title = this.OPTION(() => textOf(this.CONSUME(Text) as Token, false)) ?? null;
      if (this.RECORDING_PHASE) this.braces(false, this.solveLine);
      else if (this.openBrace("solve", start))
        this.readBraces(false, () => this.SUBRULE(this.solveLine, { ARGS: [lines] }));
      return { kind: "solve", span: this.since(start), title, lines };
    },
    { resyncEnabled: false },
  );

  protected solveLine = this.RULE("solveLine", (lines: SolveLine[]): void => {
    if (!this.RECORDING_PHASE && !this.starts(solveWords)) {
      this.wrongLine("solve", ["find", "meet", "prefer"], "find, meet or prefer");
      return;
    }
    this.OR<void>([
      { ALT: () => this.keep(lines, this.SUBRULE(this.find)) },
      { ALT: () => this.keep(lines, this.SUBRULE(this.meet)) },
      { ALT: () => this.keep(lines, this.SUBRULE(this.prefer)) },
    ]);
  });

  // ------------------------------------------------------------ measured

  protected measured = this.RULE(
    "measured",
    (): Measured => {
      const start = this.next();
      const lines: MeasuredLine[] = [];
      this.CONSUME(MeasuredWord);
      if (this.RECORDING_PHASE) this.braces(true, this.measuredLine);
      else if (this.openBrace("measured", start))
        this.readBraces(true, () => this.SUBRULE(this.measuredLine, { ARGS: [lines] }));
      return { kind: "measured", span: this.since(start), lines };
    },
    { resyncEnabled: false },
  );

  protected measuredLine = this.RULE("measuredLine", (lines: MeasuredLine[]): void => {
    if (!this.RECORDING_PHASE) {
      if (classify(this.run.tokens, this.index()) === "reading") lines.push(this.SUBRULE(this.reading));
      else this.readEntry(lines as Entry[]);
      return;
    }
    this.OR<void>([
      { ALT: () => this.keep(lines, this.SUBRULE(this.reading)) },
      {
        ALT: () => this.SUBRULE(this.entry, { ARGS: [lines as Entry[]] }),
        IGNORE_AMBIGUITIES: true,
      },
    ]);
  });

  // ------------------------------------------------------------ helpers

  private keep<T>(lines: T[], line: T | null): void {
    if (!this.RECORDING_PHASE && line !== null) lines.push(line);
  }

  private startsUnitHere(): boolean {
    return this.atAny([NameToken, CompoundUnit, Percent, Degree]);
  }

  /** Whether the line starts with one of these words, used as that word and not as the name of a setting. */
  private starts(words: readonly Token["tokenType"][]): boolean {
    return this.atAny(words) && !this.namesSomething();
  }

  private wrongLine(statement: string, words: readonly string[], allowed: string): void {
    const token = this.peek(1);
    const meant = nearest(token.image, words);
    const fixes = meant === null ? [] : [this.fix(spanOf(token), meant, false)];
    this.fault("statement.line", spanOf(token), { sign: shown(token), statement, allowed }, { fixes });
    this.skipLine();
  }

  private titleOf(statement: string): TextLiteral {
    if (this.RECORDING_PHASE || this.at(Text)) return textOf(this.CONSUME(Text) as Token, false);
    const span = this.gap();
    this.fault("statement.title", span, { statement });
    while (isWord(this.peek(1)) && this.peek(1).tokenType !== FromWord) this.take();
    return { kind: "text", span, value: "", block: false };
  }
}
