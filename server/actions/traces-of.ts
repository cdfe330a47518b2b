/** Traces of a log for a chart: as many points as can be seen, and every peak among them. */
import { siUnitFor } from '../../analysis/units/index.ts';
import { thin } from '../../templates/charts/min-max.ts';
import type { Desk } from '../desk.ts';
import { readStoredLog } from './read-stored-log.ts';

export interface TracesWanted {
  /** header texts; all channels when absent */
  columns?: readonly string[] | undefined;
  /** span shown, s from the first record; all of it when absent */
  from?: number | undefined;
  to?: number | undefined;
  /** columns of the picture */
  width?: number | undefined;
}

export interface Trace {
  column: string;
  quantity: string | null;
  /** unit of y: SI where quantity and unit are known, null where the values are as written */
  unit: string | null;
  /** s from the first record */
  x: number[];
  /** null ends the line: nothing was recorded there */
  y: (number | null)[];
}

const USUAL_WIDTH = 1000;

/** @throws InputProblem `not-found` */
export async function tracesOf(
  desk: Desk,
  bookId: string,
  logId: string,
  { columns, from = 0, to, width = USUAL_WIDTH }: TracesWanted = {},
): Promise<Trace[]> {
  const { outcome } = await readStoredLog(desk, bookId, logId);
  if (!outcome.table) return [];
  const { channels, time } = outcome.table;
  const span = { from, to: to ?? time.durationSeconds };
  return channels
    .filter((channel) => !channel.texts && (columns === undefined || columns.includes(channel.column)))
    .map(({ column, quantity, unit, values }) => {
      const { x, y } = thin(time.seconds, values, span, width);
      return { column, quantity, unit: quantity !== null && unit !== null ? siUnitFor(unit) : null, x, y };
    });
}
