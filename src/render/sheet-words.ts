import type { ReportWarning } from "../report/schema/report.js";
import type { BothWays } from "../report/sheet/sheet.js";

/** A length across the lens as the side it lies on. */
export function sideWays({ metric, feet }: BothWays): BothWays {
  const plain = (text: string): string => text.replace(/^-/, "");
  return { metric: `${plain(metric)} ${metric.startsWith("-") ? "left" : "right"}`, feet: plain(feet) };
}

/** A warning on a sheet: what it asks for in a word, and its sentences. */
export function warningWords({ severity, message, remedy, caution }: ReportWarning): {
  readonly lead: string;
  readonly text: string;
} {
  return {
    lead: severity === "stop" ? "Stop: " : "Check: ",
    text: `${message} ${remedy}${caution === null ? "" : ` ${caution}`}`,
  };
}

/** What stands in place of readings where there are none. */
export const noReadings = "No place that is read gets any light.";
