/** A cooling climb: each temperature as read and as it would be on the hot day, its limits, the air, and where it peaked. */
import * as z from 'zod';
import type { Result } from '../../analysis/results/index.ts';
import { fromSi, show, unitOf } from '../../analysis/units/index.ts';
import { nameInWords, sentence } from '../words/list.ts';
import type { InstrumentUnits } from '../words/unit-shown.ts';
import type { Chart, Dataset, Limit, Span } from './chart.ts';

const list = z.array(z.number().nullable());
const traceSchema = z.object({
  quantity: z.string(),
  climb: z.string(),
  file: z.string(),
  fromSeconds: z.number(),
  toSeconds: z.number(),
  seconds: z.array(z.number()),
  temperature: list,
  corrected: list.nullable(),
  regulated: z.array(z.boolean()).nullable(),
  air: list,
  peakSeconds: z.number(),
  highest: z.number(),
  leastMarginSeconds: z.number().nullable(),
  caution: z.number().nullable(),
  limit: z.number().nullable(),
  ahead: z.object({ seconds: z.array(z.number()), expected: list, high: list }).nullable(),
});
const modelSchema = z.object({ traces: z.array(traceSchema) });

type Trace = z.infer<typeof traceSchema>;

/** A stretch shorter than this is not worth a name, s. */
const SHORTEST = 20;
/** Two marks nearer than this would print over each other, s. */
const APART = 60;

/**
 * Charts of a cooling climb, one for each climb and kind of temperature.
 * @param result as kept
 * @param units the airplane's instrument units, object
 */
export function coolingClimbCharts(result: Result, units: InstrumentUnits): Chart[] {
  const read = modelSchema.safeParse(result.model);
  if (!read.success) return [];
  const groups = new Map<string, Trace[]>();
  for (const trace of read.data.traces) {
    const key = `${trace.climb} ${trace.quantity.split('#')[0]}`;
    groups.set(key, [...(groups.get(key) ?? []), trace]);
  }
  return [...groups.values()].map((group) => chartOf(group, result, units));
}

function chartOf(group: readonly Trace[], result: Result, units: InstrumentUnits): Chart {
  const [first] = group;
  const base = first?.quantity.split('#')[0] ?? '';
  const shown = (values: readonly (number | null)[]) =>
    values.map((one) => (one === null ? null : fromSi(one, units.temperature)));
  const line = (label: string, draw: Dataset['draw'], x: number[], values: readonly (number | null)[]): Dataset => ({
    label,
    axis: 'left',
    draw,
    x,
    y: shown(values),
  });
  const limits = [...across(first, units), ...marks(group, units)];
  return {
    title: `${nameInWords(base)}, ${first?.climb ?? ''}`,
    summary: summaryOf(group, units),
    x: { label: 'Time from the first record', unit: '', clock: true },
    left: {
      label: 'Temperature',
      unit: unitOf(units.temperature).symbol,
      includes: limits.flatMap((one) => (one.axis === 'left' ? [one.value] : [])),
    },
    datasets: [
      ...group.map((one) => line(nameInWords(one.quantity), 'line', one.seconds, one.temperature)),
      ...group.flatMap((one) =>
        one.corrected ? [line(`${suffixed('On the hot day', one, group)}`, 'dashed', one.seconds, one.corrected)] : [],
      ),
      ...group.flatMap(({ ahead, ...one }) =>
        ahead
          ? [
              line(suffixed('Had it climbed on', one, group), 'dashed', ahead.seconds, ahead.expected),
              line(suffixed('Had it climbed on, at most', one, group), 'dashed', ahead.seconds, ahead.high),
            ]
          : [],
      ),
      ...(first ? [line('Outside air', 'line', first.seconds, first.air)] : []),
    ],
    limits,
    spans: first ? [...climbSpan(first, result), ...regulatedSpans(first)] : [],
  };
}

function suffixed(words: string, { quantity }: { quantity: string }, group: readonly Trace[]): string {
  return group.length > 1 ? `${words}, ${nameInWords(quantity).toLowerCase()}` : words;
}

function across(trace: Trace | undefined, units: InstrumentUnits): Limit[] {
  return (['caution', 'limit'] as const).flatMap((word): Limit[] => {
    const value = trace?.[word];
    if (value === null || value === undefined) return [];
    const label = `${word} ${show(value, units.temperature).text}`;
    return [{ label, axis: 'left', value: fromSi(value, units.temperature), weight: word }];
  });
}

// Of several heads the hottest one's peak is marked.
function marks(group: readonly Trace[], units: InstrumentUnits): Limit[] {
  const hottest = group.reduce<Trace | undefined>(
    (top, one) => (top && top.highest >= one.highest ? top : one),
    undefined,
  );
  if (!hottest) return [];
  const { peakSeconds, leastMarginSeconds, highest } = hottest;
  const peak: Limit = {
    label: `highest ${show(highest, units.temperature, { decimals: 0 }).text}`,
    axis: 'x',
    value: peakSeconds,
    weight: 'caution',
  };
  if (leastMarginSeconds === null || Math.abs(leastMarginSeconds - peakSeconds) < APART) return [peak];
  return [peak, { label: 'least margin', axis: 'x', value: leastMarginSeconds, weight: 'caution' }];
}

// The climb itself, so that its ends can be moved where it came from a log.
function climbSpan(trace: Trace, result: Result): Span[] {
  const edits = result.segments.findIndex(
    (one) => one.file === trace.file && Math.abs(one.fromSeconds - trace.fromSeconds) < 1,
  );
  if (edits < 0) return [];
  return [{ label: trace.climb, from: trace.fromSeconds, to: trace.toSeconds, edits }];
}

function regulatedSpans({ regulated, seconds }: Trace): Span[] {
  const spans: Span[] = [];
  regulated?.forEach((one, i) => {
    const t = seconds[i] ?? 0;
    const last = spans[spans.length - 1];
    if (!one) return;
    if (last && regulated[i - 1]) last.to = t;
    else spans.push({ label: 'regulated', from: t, to: t });
  });
  return spans.filter((span) => span.to - span.from >= SHORTEST);
}

function summaryOf(group: readonly Trace[], units: InstrumentUnits): string {
  const words = (si: number) => show(si, units.temperature, { decimals: 0 }).text;
  const peaks = group.map(({ quantity, highest, corrected, ahead }) => {
    const hot = corrected?.reduce<number>((top, one) => (one !== null && one > top ? one : top), 0) ?? 0;
    const tail = hot > 0 ? `, ${words(hot)} on the hot day` : '';
    return `${nameInWords(quantity)} reaches ${words(highest)}${tail}${ahead ? ' and had not peaked' : ''}.`;
  });
  const [first] = group;
  const lines = [
    ...(first?.caution ? [`caution ${words(first.caution)}`] : []),
    ...(first?.limit ? [`limit ${words(first.limit)}`] : []),
  ];
  return [...peaks, lines.length > 0 ? sentence(`lines: ${lines.join(', ')}.`) : ''].filter(Boolean).join(' ');
}
