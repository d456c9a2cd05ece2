const WIDTH = 110;

/** Plain data as JSON that people can read: what fits on a line stands on one, the rest is broken. */
export function compactJson(value: unknown): string {
  return `${print(value, "", 0)}\n`;
}

/** `used` is what stands before the value on its line. */
function print(value: unknown, indent: string, used: number): string {
  const flat = oneLine(value);
  if (indent.length + used + flat.length <= WIDTH || typeof value !== "object" || value === null) return flat;
  const deeper = `${indent}  `;
  if (Array.isArray(value)) {
    return `[\n${value.map((item) => deeper + print(item, deeper, 1)).join(",\n")}\n${indent}]`;
  }
  const lines = Object.entries(value)
    .filter(([, inner]) => inner !== undefined)
    .map(([key, inner]) => {
      const head = `${JSON.stringify(key)}: `;
      return deeper + head + print(inner, deeper, head.length + 1);
    });
  return `{\n${lines.join(",\n")}\n${indent}}`;
}

function oneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(oneLine).join(", ")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const inner = Object.entries(value)
    .filter(([, one]) => one !== undefined)
    .map(([key, one]) => `${JSON.stringify(key)}: ${oneLine(one)}`);
  return inner.length === 0 ? "{}" : `{ ${inner.join(", ")} }`;
}
