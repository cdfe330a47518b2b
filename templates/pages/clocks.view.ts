/** Two recorders' clocks: the signals they share, drawn over each other, and the shift between them moved by hand. */
import * as z from 'zod';
import type { ComparedClocks } from '../../analysis/logs/align/compare-clocks.ts';
import { unitOf } from '../../analysis/units/index.ts';
import type { Chart, Dataset } from '../charts/chart.ts';
import { type Trace, traceDataset, traceUnit } from '../charts/trace.ts';
import { fieldPart, textField } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import type { KeptLog, PageContext } from './kept.ts';
import { logPath } from './logs.view.ts';

/** What the browser module needs of one signal. */
export interface ShiftedChart {
  chart: Chart;
  /** the samples of the other log on its own clock, s; its dataset is the second one */
  own: number[];
  signal: { a: (number | null)[]; b: (number | null)[] };
}

/** All that the browser module is told. */
export interface ShiftedClocks {
  step: number;
  /** seconds more for each second of the other log's own time */
  drift: number;
  shift: number;
  /** as the signals tell, or null */
  found: number | null;
  charts: ShiftedChart[];
}

export const clocksView = z.strictObject({
  frame: framePart,
  answer: z.string(),
  because: z.string(),
  action: z.string(),
  shift: fieldPart,
  strip: z.string(),
  byHand: z.boolean(),
  figures: z.array(z.strictObject({ title: z.string(), summary: z.string() })),
  data: z.string(),
  rows: z.array(z.strictObject({ name: z.string(), text: z.string() })),
});
export type ClocksView = z.infer<typeof clocksView>;

export interface ClocksFacts {
  first: KeptLog;
  other: KeptLog;
  compared: ComparedClocks;
  traces: readonly { first: Trace; other: Trace }[];
  byHand: number | null;
  seconds: { first: number; other: number };
}

/** Address of the page that compares two clocks; the first log sets the time. */
export function clocksPath(book: string, first: string, other: string): string {
  return bookPath(book, `/logs/${first}/clock/${other}`);
}

/** Charts are heavy, and the first signals are the ones that tell. */
const MOST_CHARTS = 3;

/** The page of two clocks. */
export function clocksPage(
  facts: ClocksFacts,
  shown: { done?: string; typed?: string; wrong?: string },
  { book, units }: PageContext,
): ClocksView {
  const { first, other, compared, byHand } = facts;
  const { found, signals, step } = compared;
  const [alignment] = found.alignment;
  const told = alignment?.shiftSeconds ?? null;
  const shift = byHand ?? told ?? found.shifts[1] ?? 0;
  const drift = byHand === null ? (found.drifts[1] ?? 0) : 0;
  const charts = facts.traces.slice(0, MOST_CHARTS).map((pair, k): ShiftedChart => {
    const signal = signals[k];
    return {
      chart: chartOf(pair, facts, { shift, drift }, units),
      own: pair.other.x,
      signal: { a: signal ? rounded(signal.a) : [], b: signal ? rounded(signal.b) : [] },
    };
  });
  const data: ShiftedClocks = { step, drift, shift, found: told, charts };
  return {
    frame: frameOf(`${other.name} on the clock of ${first.name}`, {
      question: 'How do these two clocks stand to each other?',
      book,
      way: 'logs',
      crumbs: [
        { text: 'Logs', href: bookPath(book.id, '/logs') },
        { text: first.name, href: logPath(book.id, first.id) },
      ],
      done: shown.done ?? '',
      modules: ['page-clocks'],
    }),
    answer: answerOf(facts),
    because: byHand === null ? (found.questions[0]?.because ?? '') : '',
    action: clocksPath(book.id, first.id, other.id),
    shift: textField(
      {
        name: 'shift',
        label: `Seconds by which ${other.name} starts after ${first.name}`,
        hint: 'Negative where it starts before. Both sensors lag; the shift holds the difference of their lags too.',
        wrong: shown.wrong ?? '',
      },
      shown.typed ?? secondsText(shift),
      { number: true },
    ),
    strip: `Move ${other.name} in time`,
    byHand: byHand !== null,
    figures: charts.map(({ chart }) => ({ title: chart.title, summary: chart.summary })),
    data: JSON.stringify(data),
    rows: rowsOf(facts),
  };
}

function chartOf(
  pair: { first: Trace; other: Trace },
  { first, other, seconds }: ClocksFacts,
  { shift, drift }: { shift: number; drift: number },
  units: PageContext['units'],
): Chart {
  const named = (trace: Trace, log: KeptLog): Dataset => ({
    ...traceDataset(trace, units),
    label: `${trace.column}, ${log.name}`,
  });
  const [a, b] = [named(pair.first, first), named(pair.other, other)];
  const unit = traceUnit(pair.first, units);
  const symbol = unit === '' ? 'Value' : unitOf(unit).symbol;
  const from = Math.min(0, shift);
  const to = Math.max(seconds.first, seconds.other + shift);
  return {
    title: `${pair.first.column} and ${pair.other.column}`,
    summary: `${a.label} is drawn as it is, ${b.label} moved by ${secondsText(shift)} s.`,
    x: { label: `Time from the first record of ${first.name}`, unit: '', clock: true },
    left: { label: symbol, unit: '' },
    datasets: [a, { ...b, draw: 'dashed', x: b.x.map((t) => t + shift + drift * t) }],
    limits: [],
    spans: [],
    whole: { from, to },
    low: true,
  };
}

function answerOf({ first, other, compared, byHand }: ClocksFacts): string {
  const [alignment] = compared.found.alignment;
  if (byHand !== null) {
    const told = alignment ? ` The signals alone would tell ${secondsText(alignment.shiftSeconds)} s.` : '';
    return `${other.name} starts ${secondsText(byHand)} s after ${first.name}: set by hand.${told}`;
  }
  if (!alignment) return `Nothing settles by how many seconds ${other.name} starts after ${first.name}.`;
  const { shiftSeconds, u95, by, driftSecondsPerHour, driftU95 } = alignment;
  const parting =
    driftSecondsPerHour === undefined
      ? ''
      : ` Its clock parts from the other by ${driftSecondsPerHour.toFixed(1)} ± ${(driftU95 ?? 0).toFixed(1)} s an hour, which is allowed for.`;
  const how = by === 'clock' ? 'by their own clocks' : `by ${by}`;
  return `${other.name} starts ${secondsText(shiftSeconds)} ± ${u95.toFixed(1)} s after ${first.name}, ${how}.${parting}`;
}

function rowsOf({ compared, byHand, seconds, first, other }: ClocksFacts): ClocksView['rows'] {
  const [alignment] = compared.found.alignment;
  const rows = [
    { name: `Length of ${first.name}`, text: `${Math.round(seconds.first)} s` },
    { name: `Length of ${other.name}`, text: `${Math.round(seconds.other)} s` },
    { name: 'Signals they share', text: compared.signals.map((one) => one.by).join('; ') || 'none' },
  ];
  if (alignment && alignment.peak > 0) {
    rows.push(
      {
        name: 'Shift the signals tell',
        text: `${secondsText(alignment.shiftSeconds)} ± ${alignment.u95.toFixed(2)} s (U95)`,
      },
      { name: 'Agreement there', text: alignment.peak.toFixed(3) },
      { name: 'Best agreement elsewhere', text: alignment.secondPeak.toFixed(3) },
    );
  }
  if (alignment?.driftSecondsPerHour !== undefined) {
    rows.push({ name: 'Parting of the clocks', text: `${alignment.driftSecondsPerHour.toFixed(2)} s an hour` });
  }
  if (byHand !== null) rows.push({ name: 'Shift set by hand', text: `${secondsText(byHand)} s` });
  return rows;
}

const secondsText = (seconds: number) => String(Number(seconds.toFixed(1)));
const rounded = (v: Float64Array) =>
  Array.from(v, (value) => (Number.isFinite(value) ? Number(value.toPrecision(4)) : null));
