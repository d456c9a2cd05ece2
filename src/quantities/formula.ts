import { type Inputs, type Outcome, type Quantity, type QuantityInput, value } from "./quantity.js";

/** What a formula is called, what it answers in, and where it is from. */
export interface FormulaHead {
  readonly name: string;
  readonly unit: string;
  readonly title: string;
  readonly source: string;
  readonly inputs: readonly QuantityInput[];
}

/** A quantity that is one number worked out from numbers; `get` reads an input by its name. */
export function formula(head: FormulaHead, compute: (get: (name: string) => number) => number): Quantity {
  return { ...head, compute: (inputs: Inputs): Outcome => value(compute((name) => inputs.number(name))) };
}

/** A formula that has no value for some inputs; `otherwise` is what is answered there. */
export function partialFormula(
  head: FormulaHead,
  compute: (get: (name: string) => number) => number | undefined,
  otherwise: Outcome,
): Quantity {
  return {
    ...head,
    compute: (inputs: Inputs): Outcome => {
      const result = compute((name) => inputs.number(name));
      return result === undefined ? otherwise : value(result);
    },
  };
}
