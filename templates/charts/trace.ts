/** Channels of a log over time: one chart for each unit shown, so that no axis means two things. */
import { fromSi, unitOf } from '../../analysis/units/index.ts';
import { nameInWords } from '../words/list.ts';
import { type InstrumentUnits, unitShown } from '../words/unit-shown.ts';
import type { Chart, Dataset, Span } from './chart.ts';

export interface Trace {
  column: string;
  quantity: string | null;
  /** unit of y: SI where quantity and unit are known, null where the values are as written */
  unit: string | null;
  x: number[];
  y: (number | null)[];
}

/** What is looked at first in a log: what burns, what flies, what it was done with. */
export const LOOKED_AT_FIRST: readonly string[] = [
  'coolant-temperature',
  'cylinder-head-temperature',
  'oil-temperature',
  'indicated-airspeed',
  'ground-speed',
  'pressure-altitude',
  'gps-altitude',
  'engine-speed',
  'gear-current',
  'fuel-quantity',
];

/** The unit a trace is shown in; empty where it is not known. */
export function traceUnit({ quantity, unit }: Pick<Trace, 'quantity' | 'unit'>, units: InstrumentUnits): string {
  return quantity === null || unit === null ? '' : unitShown(quantity, unit, units);
}

/** A trace in the unit it is shown in. */
export function traceDataset(trace: Trace, units: InstrumentUnits): Dataset {
  const shown = traceUnit(trace, units);
  return {
    label: trace.quantity === null ? trace.column : nameInWords(trace.quantity),
    axis: 'left',
    draw: 'line',
    x: trace.x,
    y: shown === '' ? trace.y : trace.y.map((value) => (value === null ? null : fromSi(value, shown))),
  };
}

/** Channels that share a unit, as a chart without its samples: those are fetched for what is in view. */
export interface TraceGroup {
  unit: string;
  columns: string[];
}

/**
 * Channels sorted by the unit they are shown in.
 * @param channels columns with quantity and SI unit
 * @param units the airplane's instrument units, object
 */
export function traceGroups(channels: readonly Omit<Trace, 'x' | 'y'>[], units: InstrumentUnits): TraceGroup[] {
  const groups = new Map<string, string[]>();
  for (const channel of channels) {
    const unit = traceUnit(channel, units);
    groups.set(unit, [...(groups.get(unit) ?? []), channel.column]);
  }
  return [...groups].map(([unit, columns]) => ({ unit, columns }));
}

/**
 * The chart of a group.
 * @param title what it shows, text
 * @param datasets traces of one unit, for the whole span
 * @param unit unit id, or empty
 * @param more where the samples come from, segments to draw, length of the log in seconds, what is in view at first
 */
export function traceChart(
  title: string,
  datasets: Dataset[],
  unit: string,
  more: { samples: string; spans: Span[]; seconds: number; view?: { from: number; to: number } | undefined },
): Chart {
  const symbol = unit === '' ? '' : unitOf(unit).symbol;
  return {
    title,
    summary: datasets.map((one) => summaryOf(one, symbol)).join(' '),
    x: { label: 'Time from the first record', unit: '', clock: true },
    left: { label: symbol === '' ? 'Value' : symbol, unit: '' },
    datasets,
    limits: [],
    spans: more.spans,
    samples: more.samples,
    whole: { from: 0, to: more.seconds },
    low: true,
    ...(more.view ? { view: more.view } : {}),
  };
}

function summaryOf({ label, y }: Dataset, symbol: string): string {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of y) {
    if (value === null) continue;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const digits = Math.max(Math.abs(low), Math.abs(high)) >= 100 ? 0 : 1;
  return high < low
    ? `${label} has no value.`
    : `${label} runs from ${low.toFixed(digits)} to ${high.toFixed(digits)} ${symbol}.`.replace(' .', '.');
}
