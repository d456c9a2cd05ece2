/** The table of quantities. Loaded by `halfshade calc` alone. */
export { calc } from "../../quantities/calc.js";
export { allQuantities, findQuantity } from "../../quantities/registry.js";
