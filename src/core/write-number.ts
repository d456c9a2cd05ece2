/**
 * A number as a recipe writes it: the shortest decimal that reads back to the same value, never with an exponent.
 * Only finite numbers are written.
 */
export function writeNumber(value: number): string {
  if (value === 0) return "0";
  const text = String(value);
  if (!text.includes("e")) return text;
  const [mantissa = "0", exponentText = "0"] = text.split("e");
  const exponent = Number(exponentText);
  const negative = mantissa.startsWith("-");
  const digits = mantissa.replace("-", "").replace(".", "");
  const point = 1 + exponent;
  let plain: string;
  if (point <= 0) plain = `0.${"0".repeat(-point)}${digits}`;
  else if (digits.length <= point) plain = digits + "0".repeat(point - digits.length);
  else plain = `${digits.slice(0, point)}.${digits.slice(point)}`;
  return negative ? `-${plain}` : plain;
}
