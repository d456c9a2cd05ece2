import { didYouMean } from "./near-names.js";
import type { QuantityInput } from "./quantity.js";

/** What is wrong with a number for an input, as a sentence; undefined when it is inside the range. */
export function numberProblem(value: number, input: QuantityInput): string | undefined {
  const range = input.range;
  if (range === undefined) return undefined;
  const wrong =
    (range.above !== undefined && !(value > range.above) && `greater than ${range.above}`) ||
    (range.atLeast !== undefined && !(value >= range.atLeast) && `${range.atLeast} or greater`) ||
    (range.below !== undefined && !(value < range.below) && `less than ${range.below}`) ||
    (range.atMost !== undefined && !(value <= range.atMost) && `${range.atMost} or less`) ||
    (range.whole === true && !Number.isInteger(value) && "a whole number");
  return wrong ? `${input.name} must be ${wrong}; ${value} is not` : undefined;
}

/** What is wrong with a text for an input, as a sentence; undefined when it is one of those accepted. */
export function textProblem(value: string, input: QuantityInput): string | undefined {
  const accepted = input.range?.oneOf;
  if (accepted === undefined || accepted.includes(value)) return undefined;
  return `${input.name} must be ${accepted.join(" or ")}; "${value}" is not.${didYouMean(value, accepted)}`;
}
