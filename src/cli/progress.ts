import type { Table, TableRow } from "../tables/types.js";
import type { Session } from "./session.js";

/** Rows below which nobody waits. */
const FEW = 50;
const CELLS = 24;

/** The same table with a bar on the terminal while its rows are worked out; nothing where words go elsewhere. */
export function watched(session: Session, table: Table): Table {
  const { io } = session;
  // Rows on the same terminal are progress enough.
  const hidden = !io.outIsTerminal || session.options.has("output");
  if (!io.errIsTerminal || !hidden || table.rows < FEW) return table;
  return { ...table, work: () => counted(session, table) };
}

function* counted(session: Session, table: Table): Generator<TableRow, void> {
  let done = 0;
  let shown = -1;
  for (const row of table.work()) {
    done += 1;
    const filled = Math.floor((done * CELLS) / table.rows);
    if (filled !== shown) {
      shown = filled;
      const bar = `${"=".repeat(filled)}${" ".repeat(CELLS - filled)}`;
      session.io.err(`\r[${bar}] ${done} of ${table.rows} rows`);
    }
    yield row;
  }
  session.io.err(`\r${" ".repeat(CELLS + 30)}\r`);
}
