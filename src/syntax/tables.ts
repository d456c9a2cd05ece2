import {
  AsWord,
  Comma,
  CompoundUnit,
  CountWord,
  Degree,
  FromWord,
  HoldWord,
  Name as NameToken,
  NewLine,
  Numeral,
  OverWord,
  Percent,
  ShowWord,
  StepWord,
  SweepWord,
  TableWord,
  Text,
  ToWord,
} from "../text/kinds.js";
import type { Token } from "../text/token.js";
import type {
  Amount,
  Column,
  Expression,
  Hold,
  Property,
  Show,
  Sweep,
  Table,
  TextLiteral,
  Unit,
} from "./ast.js";
import { plainAmount, shown, spanOf, textOf } from "./build.js";
import { ClaimParser } from "./claims.js";
import { classify } from "./classify.js";
import { nearest } from "./near.js";
import { isWord } from "./token-classes.js";

type TableLine = Sweep | Show | Hold | Property;

const tableWords = [SweepWord, ShowWord, HoldWord];

/** Tables, and what all statements with lines of their own have in common. */
export abstract class TableParser extends ClaimParser {
  protected sweep = this.both(
    "sweep",
    () => {
      this.CONSUME(SweepWord);
      this.SUBRULE(this.path);
      this.OR1([
        {
          ALT: () => {
            this.CONSUME(OverWord);
            this.SUBRULE(this.value, { ARGS: [""] });
          },
        },
        {
          ALT: () => {
            this.CONSUME(FromWord);
            this.SUBRULE1(this.expression);
            this.CONSUME(ToWord);
            this.SUBRULE2(this.expression);
            this.OR2([
              {
                ALT: () => {
                  this.CONSUME(StepWord);
                  this.SUBRULE3(this.expression);
                },
              },
              {
                ALT: () => {
                  this.CONSUME(CountWord);
                  this.CONSUME(Numeral);
                },
              },
            ]);
          },
        },
      ]);
    },
    () => this.readSweep(),
  );

  private readSweep(): Sweep | null {
    const example = "sweep key.distance from 1 m to 4 m step 0.5 m";
    const start = this.next();
    this.take();
    const path = this.needPath(0, "sweep", example);
    if (path === null) return null;
    if (this.at(OverWord)) {
      this.take();
      const values = this.readValue("over");
      return { kind: "sweep", span: this.since(start), path, range: { kind: "over", values } };
    }
    if (!this.need(0, FromWord, "sweep", "`over` and a list, or `from` and `to`", example)) return null;
    const from = this.readExpression();
    if (!this.need(0, ToWord, "sweep", "`to` and the last value", example)) return null;
    const to = this.readExpression();
    let step: Expression | null = null;
    let count: Amount | null = null;
    if (this.at(StepWord)) {
      this.take();
      step = this.readExpression();
    } else if (this.at(CountWord)) {
      this.take();
      if (this.at(Numeral)) count = plainAmount(this.take());
      else this.part("count", "a number", example);
    } else this.part("sweep", "`step` and a value, or `count` and a number", example);
    return { kind: "sweep", span: this.since(start), path, range: { kind: "steps", from, to, step, count } };
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
        this.readBraces(false, (list) => this.SUBRULE(this.tableLine, { ARGS: [list] }), lines);
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

  // ------------------------------------------------------------ helpers

  protected keep<T>(lines: T[], line: T | null): void {
    if (!this.RECORDING_PHASE && line !== null) lines.push(line);
  }

  protected startsUnitHere(): boolean {
    return this.atAny([NameToken, CompoundUnit, Percent, Degree]);
  }

  /** Whether the line starts with one of these words, used as that word and not as the name of a setting. */
  protected starts(words: readonly Token["tokenType"][]): boolean {
    return this.atAny(words) && !this.namesSomething();
  }

  protected wrongLine(statement: string, words: readonly string[], allowed: string): void {
    const token = this.peek(1);
    const meant = nearest(token.image, words);
    const fixes = meant === null ? [] : [this.fix(spanOf(token), meant, false)];
    this.fault("statement.line", spanOf(token), { sign: shown(token), statement, allowed }, { fixes });
    this.skipLine();
  }

  protected titleOf(statement: string): TextLiteral {
    if (this.RECORDING_PHASE || this.at(Text)) return textOf(this.CONSUME(Text) as Token, false);
    const span = this.gap();
    this.fault("statement.title", span, { statement });
    while (isWord(this.peek(1)) && this.peek(1).tokenType !== FromWord) this.take();
    return { kind: "text", span, value: "", block: false };
  }
}
