/** The traces on which a result's segments lie, so that they can be moved where one sees why. */
import type { LogChannel } from '../../analysis/logs/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { baseName, siUnitFor } from '../../analysis/units/index.ts';
import type { Chart } from '../charts/chart.ts';
import { LOOKED_AT_FIRST, type Trace, traceChart, traceDataset, traceGroups } from '../charts/trace.ts';
import { bookPath } from '../parts/frame.view.ts';
import type { KeptResult, PageContext } from './kept.ts';

/** Channels drawn for one file. */
const DRAWN = 2;

/** Columns of a log worth seeing under the segments of a kind of reduction. */
export function segmentColumns(kind: string, channels: readonly Omit<LogChannel, 'values'>[]): string[] {
  const reduction = reductionOf(kind);
  const read = [...(reduction?.needs ?? []), ...(reduction?.uses ?? [])].map(baseName);
  const wanted = [...LOOKED_AT_FIRST.filter((name) => read.includes(name)), ...read];
  return wanted
    .flatMap((name) => channels.filter((one) => one.quantity !== null && baseName(one.quantity) === name).slice(0, 1))
    .map((one) => one.column)
    .filter((column, i, all) => all.indexOf(column) === i)
    .slice(0, DRAWN);
}

/**
 * Charts of the traces of one log under the segments found in it.
 * @param kept the result
 * @param log id, name and length of the log
 * @param channels what the columns are
 * @param traces their samples, thinned
 */
export function segmentTraces(
  kept: KeptResult,
  log: { id: string; name: string; seconds: number },
  channels: readonly Omit<LogChannel, 'values'>[],
  traces: readonly Trace[],
  { book, units }: PageContext,
): Chart[] {
  const spans = kept.result.segments.flatMap((one, index) =>
    one.file === log.name ? [{ label: String(index + 1), from: one.fromSeconds, to: one.toSeconds, edits: index }] : [],
  );
  if (spans.length === 0) return [];
  const drawn = channels
    .filter((one) => traces.some((trace) => trace.column === one.column))
    .map(({ column, quantity, unit }) => ({
      column,
      quantity,
      unit: quantity !== null && unit !== null ? siUnitFor(unit) : null,
    }));
  return traceGroups(drawn, units).map(({ unit, columns }) => {
    const datasets = traces.filter((one) => columns.includes(one.column)).map((one) => traceDataset(one, units));
    const query = new URLSearchParams(columns.map((column): [string, string] => ['columns', column]));
    return traceChart(
      `${datasets.map((one) => one.label).join(', ')}, ${log.name}, with its segments`,
      datasets,
      unit,
      {
        samples: bookPath(book.id, `/logs/${log.id}/samples?${query}`),
        spans,
        seconds: log.seconds,
      },
    );
  });
}
