import { visibleLine } from "../../diagnostics/print-visible.js";
import { padEnd, wrap } from "../../diagnostics/print-width.js";
import { renderJson } from "../../render/json.js";
import { CLEAN } from "../exit.js";
import { misuse, type Session } from "../session.js";
import { language, type Quantities, quantities } from "../stages/load.js";

/** Every quantity with one line of what it is. */
function listed(stage: Quantities, session: Session): string {
  const all = stage.allQuantities();
  if (session.options.get("format") === "json") {
    return renderJson({
      format: 1,
      quantities: all.map(({ name, unit, title, source, inputs }) => ({ name, unit, title, source, inputs })),
    });
  }
  const room =
    Math.min(
      36,
      all.reduce((most, { name }) => Math.max(most, name.length), 0),
    ) + 2;
  const lines = all.flatMap(({ name, title }) => {
    const words = wrap(title, Math.max(20, session.width - room));
    if (name.length + 2 > room) return [name, ...words.map((line) => " ".repeat(room) + line)];
    return words.map((line, index) => padEnd(index === 0 ? name : "", room) + line);
  });
  return lines.map((line) => `${line}\n`).join("");
}

/** What a quantity takes and gives. */
function described(stage: Quantities, name: string): string | null {
  const quantity = stage.findQuantity(name);
  if (quantity === undefined) return null;
  const inputs = quantity.inputs.map((input) => {
    const unit = input.unit === "" ? input.kind : input.unit;
    const fallback = input.default === undefined ? "" : `, ${input.default} if left out`;
    return `  ${input.name} (${unit}${fallback})`;
  });
  const lines = [
    quantity.title,
    `Gives ${quantity.name} in ${quantity.unit}.`,
    "Takes:",
    ...inputs,
    `Source: ${quantity.source}`,
  ];
  return lines.map((line) => `${line}\n`).join("");
}

/** `halfshade calc QUANTITY INPUT=VALUE...`: works out one quantity. */
export async function calcCommand(session: Session): Promise<number> {
  const [name, ...inputs] = session.operands;
  const stage = await quantities();
  if (name === undefined) {
    session.io.out(listed(stage, session));
    return CLEAN;
  }
  const quantity = stage.findQuantity(name);
  if (
    inputs.length === 0 &&
    quantity !== undefined &&
    quantity.inputs.some((input) => input.default === undefined)
  ) {
    session.io.out(described(stage, name) ?? "");
    return CLEAN;
  }
  const files = quantity?.inputs.some((input) => input.kind === "file") === true ? await language() : null;
  const answer = stage.calc(name, inputs, (path) => {
    const read = files?.readTextFile(path);
    if (read === undefined) return { problem: "files can't be read here" };
    return read.problem === undefined
      ? { text: read.text }
      : { problem: sentenceOf(read.problem.code, path) };
  });
  if (!answer.ok) {
    const text = answer.problem;
    const names = [quantity?.name, ...(quantity?.inputs ?? []).map((input) => input.name), ...inputs];
    // A sentence that begins with a name, or with what somebody wrote, begins as it is written.
    const named = names.some((word) => word !== undefined && word !== "" && text.startsWith(word));
    const begun = named ? text : text.charAt(0).toUpperCase() + text.slice(1);
    return misuse(session, visibleLine(/[.!?)]$/.test(text) ? begun : `${begun}.`));
  }
  if (session.options.get("format") === "json") {
    const { name: of, value, unit, reason } = answer;
    session.io.out(renderJson({ format: 1, quantity: of, value, unit, reason: reason ?? null }));
  } else {
    session.io.out(`${visibleLine(answer.text)}\n`);
  }
  return CLEAN;
}

/** Why a file of an input cannot be had, in a few words. */
function sentenceOf(code: string, path: string): string {
  return `"${path}" cannot be read (${code}; \`halfshade explain ${code}\` says more)`;
}
