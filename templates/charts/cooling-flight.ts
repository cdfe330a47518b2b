/** Cooling in steady flight: every point brought to the hot day beside its limit, and what the fit leaves of each. */
import * as z from 'zod';
import type { Result, ResultTable } from '../../analysis/results/index.ts';
import { fromSi, show } from '../../analysis/units/index.ts';
import { nameInWords } from '../words/list.ts';
import type { InstrumentUnits } from '../words/unit-shown.ts';
import type { Chart, Dataset, Limit } from './chart.ts';
import { columnOf, differentIn, rowsWhere } from './column-of.ts';

const limitsSchema = z.record(
  z.string(),
  z.object({ caution: z.number().nullable().optional(), limit: z.number().nullable().optional() }),
);

/**
 * Charts of a flight-cooling result.
 * @param result as kept
 * @param units the airplane's instrument units, object
 */
export function coolingFlightCharts(result: Result, units: InstrumentUnits): Chart[] {
  const points = result.tables.find((one) => one.name === 'steady-points');
  const margins = result.tables.find((one) => one.name === 'margins');
  if (!points || !margins) return [];
  const power = points.columns.some((one) => one.name === 'fuel-flow') ? 'fuel-flow' : 'manifold-times-speed';
  const x = { label: nameInWords(power), unit: columnOf(points, power, units).symbol };
  const parts = [...new Set(differentIn(points, 'channel').map((one) => partOf(String(one))))];
  const hot = parts.map((part) => hotDayChart(part, { result, points, margins, power, x }, units));
  return [...hot, residualChart(points, power, x, units)].flatMap((one) => one ?? []);
}

/** What is cooled, by the name of its channel: all heads are one. */
function partOf(channel: string): string {
  return channel.startsWith('cylinder-head') ? 'cylinder-head' : channel.startsWith('oil') ? 'oil' : 'coolant';
}

type AxisWords = { label: string; unit: string };

interface Drawn {
  result: Result;
  points: ResultTable;
  margins: ResultTable;
  power: string;
  x: AxisWords;
}

function hotDayChart(part: string, { result, points, margins, power, x }: Drawn, units: InstrumentUnits): Chart | null {
  const channels = differentIn(points, 'channel').filter((one) => partOf(String(one)) === part);
  const datasets = channels.flatMap((channel): Dataset[] => {
    const own = rowsWhere(margins, 'channel', channel);
    const flows = powerByLabel(rowsWhere(points, 'channel', channel), power, units);
    const labels = own.rows.map((row) => String(row[own.columns.findIndex((one) => one.name === 'label')]));
    const corrected = columnOf(own, 'corrected', units).values;
    const half = columnOf(own, 'u95', units, true).values;
    const kept = labels.flatMap((label, i) => {
      const flow = flows.get(label);
      const value = corrected[i];
      return flow === undefined || value === null || value === undefined
        ? []
        : [{ flow, value, half: half[i] ?? null }];
    });
    if (kept.length === 0) return [];
    kept.sort((a, b) => a.flow - b.flow);
    return [
      {
        label: nameInWords(String(channel)),
        axis: 'left',
        draw: 'points',
        x: kept.map((one) => one.flow),
        y: kept.map((one) => one.value),
        half: kept.map((one) => one.half),
      },
    ];
  });
  if (datasets.length === 0) return null;
  const temperature = columnOf(margins, 'corrected', units);
  const limits = limitLines(result, part, units);
  const ends = datasets.flatMap((one) =>
    one.y.flatMap((value, i) => (value === null ? [] : [value - (one.half?.[i] ?? 0), value + (one.half?.[i] ?? 0)])),
  );
  const most = datasets.map((one) => {
    const values = one.y.filter((value) => value !== null);
    return `${one.label}: up to ${Math.max(...values).toFixed(0)} ${temperature.symbol}`;
  });
  const said = limits.map((one) => one.label);
  return {
    title: `${nameInWords(part)} brought to the hot day`,
    summary: `${most.join('; ')}.${said.length > 0 ? ` Lines: ${said.join(', ')}.` : ''}`,
    x,
    left: { label: 'Temperature', unit: temperature.symbol, includes: [...ends, ...limits.map((one) => one.value)] },
    datasets,
    limits,
    spans: [],
  };
}

function residualChart(points: ResultTable, power: string, x: AxisWords, units: InstrumentUnits): Chart | null {
  const datasets = differentIn(points, 'channel').flatMap((channel): Dataset[] => {
    const own = rowsWhere(points, 'channel', channel);
    const left = columnOf(own, 'residual', units, true).values;
    if (left.every((one) => one === null)) return [];
    const flows = columnOf(own, power, units).values;
    const kept = left.flatMap((y, i) => {
      const flow = flows[i];
      return y === null || flow === null || flow === undefined ? [] : [{ flow, y }];
    });
    kept.sort((a, b) => a.flow - b.flow);
    return [
      {
        label: nameInWords(String(channel)),
        axis: 'left',
        draw: 'points',
        x: kept.map((one) => one.flow),
        y: kept.map((one) => one.y),
      },
    ];
  });
  if (datasets.length === 0) return null;
  const all = datasets.flatMap((one) => one.y.filter((value) => value !== null));
  const symbol = columnOf(points, 'residual', units, true).symbol;
  const widest = Math.max(...all.map(Math.abs));
  return {
    title: 'What the fit leaves of each point',
    summary: `Measured less fitted over ${all.length} points, at most ${widest.toFixed(1)} ${symbol}.`,
    x,
    left: { label: 'Measured less fitted', unit: symbol, includes: [-widest, widest] },
    datasets,
    limits: [{ label: 'fitted', axis: 'left', value: 0, weight: 'caution' }],
    spans: [],
    low: true,
  };
}

function powerByLabel(points: ResultTable, power: string, units: InstrumentUnits): Map<string, number> {
  const label = points.columns.findIndex((one) => one.name === 'label');
  const flows = columnOf(points, power, units).values;
  return new Map(
    points.rows.flatMap((row, i) => {
      const flow = flows[i];
      return flow === null || flow === undefined ? [] : [[String(row[label]), flow] as const];
    }),
  );
}

function limitLines(result: Result, part: string, units: InstrumentUnits): Limit[] {
  const read = limitsSchema.safeParse(result.model?.limits);
  const own = read.success ? read.data[part] : undefined;
  return (['caution', 'limit'] as const).flatMap((name): Limit[] => {
    const value = own?.[name];
    if (value === null || value === undefined) return [];
    const text = show(value, units.temperature).text;
    return [{ label: `${name} ${text}`, axis: 'left', value: fromSi(value, units.temperature), weight: name }];
  });
}
