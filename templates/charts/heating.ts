/** A ground run: temperature over time with its limits, the stretches measured, and the curve fitted to each. */
import * as z from 'zod';
import type { Result } from '../../analysis/results/index.ts';
import { fromSi, show, unitOf } from '../../analysis/units/index.ts';
import { nameInWords } from '../words/list.ts';
import type { InstrumentUnits } from '../words/unit-shown.ts';
import type { Chart, Dataset, Limit } from './chart.ts';

const values = z.array(z.number().nullable());
const modelSchema = z.object({
  traces: z.array(
    z.object({
      file: z.string(),
      startSeconds: z.number(),
      stepSeconds: z.number(),
      temperatures: z.array(z.object({ quantity: z.string(), values })),
      oil: values.nullable(),
      air: values.nullable(),
    }),
  ),
  curves: z.array(z.object({ file: z.string(), seconds: z.array(z.number()), values })),
  limits: z.object({
    caution: z.number().nullable().optional(),
    limit: z.number().nullable().optional(),
    part: z.string(),
  }),
});

/**
 * Charts of a ground-cooling result, one for each run.
 * @param result as kept
 * @param units the airplane's instrument units, object
 */
export function heatingCharts(result: Result, units: InstrumentUnits): Chart[] {
  const read = modelSchema.safeParse(result.model);
  if (!read.success) return [];
  const { traces, curves, limits } = read.data;
  const shown = (list: readonly (number | null)[]) =>
    list.map((one) => (one === null ? null : fromSi(one, units.temperature)));
  const symbol = unitOf(units.temperature).symbol;
  const lines: Limit[] = [
    ...lineAt(limits.caution, 'caution', 'caution', units),
    ...lineAt(limits.limit, 'limit', 'limit', units),
  ];
  return traces.map((trace) => {
    const times = (list: readonly unknown[]) => list.map((_, i) => trace.startSeconds + i * trace.stepSeconds);
    const line = (label: string, list: (number | null)[]): Dataset => ({
      label,
      axis: 'left',
      draw: 'line',
      x: times(list),
      y: shown(list),
    });
    const fits = curves.filter((one) => one.file === trace.file);
    return {
      title: traces.length > 1 ? `Temperatures, ${trace.file}` : 'Temperatures of the run',
      summary: summaryOf(trace.temperatures, limits, units),
      x: { label: 'Time from the first record', unit: '', clock: true },
      left: { label: 'Temperature', unit: symbol, includes: lines.map((one) => one.value) },
      datasets: [
        ...trace.temperatures.map((one) => line(nameInWords(one.quantity), one.values)),
        ...(trace.oil ? [line('Oil temperature', trace.oil)] : []),
        ...(trace.air ? [line('Outside air', trace.air)] : []),
        ...(fits.length > 0 ? [fittedCurves(fits, shown)] : []),
      ],
      limits: lines,
      spans: result.segments.flatMap((one, index) =>
        one.file === trace.file
          ? [{ label: String(index + 1), from: one.fromSeconds, to: one.toSeconds, edits: index }]
          : [],
      ),
    };
  });
}

/** All fitted curves as one dashed line with gaps between: they are one kind of thing. */
function fittedCurves(
  fits: readonly { seconds: number[]; values: (number | null)[] }[],
  shown: (list: readonly (number | null)[]) => (number | null)[],
): Dataset {
  const x: number[] = [];
  const y: (number | null)[] = [];
  for (const fit of fits) {
    x.push(...fit.seconds, fit.seconds.at(-1) ?? 0);
    y.push(...shown(fit.values), null);
  }
  return { label: 'Fitted, and beyond the run', axis: 'left', draw: 'dashed', x, y };
}

function lineAt(
  value: number | null | undefined,
  word: string,
  weight: Limit['weight'],
  units: InstrumentUnits,
): Limit[] {
  if (value === null || value === undefined) return [];
  const text = show(value, units.temperature).text;
  return [{ label: `${word} ${text}`, axis: 'left', value: fromSi(value, units.temperature), weight }];
}

function summaryOf(
  temperatures: readonly { quantity: string; values: readonly (number | null)[] }[],
  limits: { caution?: number | null | undefined; limit?: number | null | undefined },
  units: InstrumentUnits,
): string {
  const peaks = temperatures.map(({ quantity, values: list }) => {
    const peak = list.reduce<number>(
      (most, one) => (one !== null && one > most ? one : most),
      Number.NEGATIVE_INFINITY,
    );
    return `${nameInWords(quantity)} reaches ${show(peak, units.temperature, { decimals: 0 }).text}.`;
  });
  const said = [
    ['caution', limits.caution],
    ['limit', limits.limit],
  ].flatMap(([word, value]) => (typeof value === 'number' ? [`${word} ${show(value, units.temperature).text}`] : []));
  return [...peaks, said.length > 0 ? `Lines: ${said.join(', ')}.` : ''].filter(Boolean).join(' ');
}
