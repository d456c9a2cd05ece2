import type { ParserMethod, TokenType } from "chevrotain";
import * as kinds from "../text/kinds.js";
import type { Argument, Expression, Path, Unit, Value } from "./ast.js";
import { damaged } from "./build.js";
import { ExpressionParser } from "./expressions.js";

/**
 * The grammar of values and expressions. What stands in the second argument of `both` is recorded when the parser is
 * built: it is the published grammar, and the follow-up rules look ahead by it. What runs is the reader beside it.
 */
export abstract class ValueRules extends ExpressionParser {
  /** A rule with its grammar and its reader. */
  protected both<A extends unknown[], R>(
    name: string,
    grammar: () => unknown,
    reader: (...args: A) => R,
    rescue?: () => R,
  ): ParserMethod<A, R> {
    return this.RULE(
      name,
      (...args: A): R => (this.RECORDING_PHASE ? (grammar() as R) : reader(...args)),
      rescue === undefined ? { resyncEnabled: false } : { recoveryValueFunc: rescue },
    );
  }

  protected path = this.both(
    "path",
    () => {
      this.CONSUME1(kinds.Word);
      this.MANY(() => {
        this.CONSUME(kinds.Dot);
        this.CONSUME2(kinds.Word);
      });
    },
    (): Path => this.readPath(),
  );

  protected value = this.both(
    "value",
    () =>
      this.OR([
        { ALT: () => this.CONSUME(kinds.Text) },
        { ALT: () => this.CONSUME(kinds.TextBlock) },
        { ALT: () => this.CONSUME(kinds.Question) },
        { ALT: () => this.SUBRULE(this.list) },
        {
          ALT: () => {
            this.SUBRULE1(this.expression);
            this.OPTION(() => {
              this.OR2([
                { ALT: () => this.CONSUME(kinds.FromWord) },
                { ALT: () => this.CONSUME(kinds.UnderWord) },
                { ALT: () => this.CONSUME(kinds.OverWord) },
                { ALT: () => this.CONSUME(kinds.IsWord) },
              ]);
              this.SUBRULE2(this.expression);
            });
          },
        },
      ]),
    (of: string): Value => this.readValue(of),
    (): Value => damaged(this.gap()),
  );

  protected list: ParserMethod<[], Value> = this.both(
    "list",
    () => this.members(kinds.OpenSquare, kinds.CloseSquare, this.value),
    (): Value => this.readList(),
  );

  protected expression: ParserMethod<[], Expression> = this.both(
    "expression",
    () => {
      this.SUBRULE1(this.operand);
      this.MANY(() => {
        this.OR([
          { ALT: () => this.CONSUME(kinds.Plus) },
          { ALT: () => this.CONSUME(kinds.Minus) },
          { ALT: () => this.CONSUME(kinds.Times) },
          { ALT: () => this.CONSUME(kinds.Slash) },
        ]);
        this.SUBRULE2(this.operand);
      });
    },
    () => this.readExpression(),
    () => damaged(this.gap()),
  );

  protected operand: ParserMethod<[], Expression> = this.both(
    "operand",
    () => {
      this.OPTION1(() => this.CONSUME(kinds.Minus));
      this.SUBRULE1(this.primary);
      this.OPTION2(() => {
        this.CONSUME(kinds.PlusMinus);
        this.SUBRULE2(this.primary);
      });
    },
    () => this.readOperand(),
  );

  protected primary: ParserMethod<[], Expression> = this.both(
    "primary",
    () =>
      this.OR([
        { ALT: () => this.SUBRULE(this.quantity) },
        { ALT: () => this.CONSUME(kinds.FNumber) },
        {
          ALT: () => {
            this.CONSUME(kinds.IsoWord);
            this.CONSUME(kinds.Numeral);
          },
        },
        { ALT: () => this.CONSUME(kinds.Ratio) },
        { ALT: () => this.SUBRULE(this.reference), IGNORE_AMBIGUITIES: true },
        { ALT: () => this.SUBRULE(this.group) },
      ]),
    () => this.readExpression(),
  );

  protected group: ParserMethod<[], Expression> = this.both(
    "group",
    () => this.members(kinds.OpenRound, kinds.CloseRound, this.expression),
    () => this.readGroup(),
  );

  protected quantity = this.both(
    "quantity",
    () => {
      this.SUBRULE1(this.amount);
      this.MANY(() => {
        this.OPTION(() => this.CONSUME(kinds.By));
        this.SUBRULE2(this.amount);
      });
    },
    () => this.readQuantity(),
  );

  protected amount = this.both(
    "amount",
    () => {
      this.OR([
        {
          ALT: () => {
            this.CONSUME(kinds.Numeral);
            this.OPTION1(() => this.CONSUME1(kinds.Fraction));
          },
        },
        { ALT: () => this.CONSUME2(kinds.Fraction) },
      ]);
      this.OPTION2(() => this.SUBRULE(this.unit));
    },
    () => this.readQuantity(),
  );

  protected unit: ParserMethod<[], Unit | null> = this.both(
    "unit",
    () =>
      this.OR([
        {
          ALT: () => {
            this.CONSUME1(kinds.Name);
            this.OPTION(() => this.CONSUME2(kinds.Name));
          },
        },
        { ALT: () => this.CONSUME(kinds.CompoundUnit) },
        { ALT: () => this.CONSUME(kinds.Percent) },
        { ALT: () => this.CONSUME(kinds.Degree) },
      ]),
    () => this.readUnit(),
  );

  protected reference = this.both(
    "reference",
    () => {
      this.SUBRULE(this.path);
      this.OPTION(() => this.SUBRULE(this.callArguments));
    },
    () => this.readReference(),
  );

  protected callArguments: ParserMethod<[], Argument[]> = this.both(
    "callArguments",
    () => this.members(kinds.OpenRound, kinds.CloseRound, this.argument),
    () => this.readArguments(),
  );

  protected argument: ParserMethod<[], Argument> = this.both(
    "argument",
    () => {
      this.OPTION({
        MAX_LOOKAHEAD: 2,
        DEF: () => {
          this.CONSUME(kinds.Word);
          this.CONSUME(kinds.Colon);
        },
      });
      this.SUBRULE(this.value, { ARGS: [""] });
    },
    () => this.readArgument(),
  );

  /** The grammar of what stands between brackets. */
  private members(open: TokenType, close: TokenType, member: ParserMethod<never[], unknown>): void {
    this.CONSUME(open);
    this.OPTION1(() => this.CONSUME1(kinds.NewLine));
    this.OPTION2(() => {
      this.SUBRULE1(member);
      this.MANY(() => {
        this.CONSUME(kinds.Comma);
        this.OPTION3(() => this.CONSUME2(kinds.NewLine));
        this.OPTION4(() => this.SUBRULE2(member));
      });
    });
    this.OPTION5(() => this.CONSUME3(kinds.NewLine));
    this.CONSUME(close);
  }
}
