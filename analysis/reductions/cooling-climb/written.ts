/** A climb read from the gauges and written on a card: the same answers, each reading as it stands. */
import type { Airplane } from '../../airplane/index.ts';
import { type CooledPart, governingOf, type Regime, thermostatSpans } from '../../models/index.ts';
import { quantisationStep } from '../../numbers/index.ts';
import { type Flag, flag, type Refusal, refusal } from '../../remarks/index.ts';
import type { Grid } from '../../segments/index.ts';
import { airAlong } from './air.ts';
import type { Found } from './answer.ts';
import type { Course, Way } from './course.ts';
import type { CoolingClimbOptions, WrittenReading } from './input.ts';
import { peakOf } from './peak.ts';
import { type Run, USUAL_LAG } from './run.ts';

/** A gauge nobody said more about is read to this, K; common practice, no source. */
const READ_TO = 2;
/** So many different readings tell the step they were read to; no gauge is read more coarsely than the other, K. */
const ENOUGH_DISTINCT = 5;
const MOST_STEP = 5;

/**
 * Climbs written on cards.
 * @param readings of all climbs, SI
 * @param airplane the description, or undefined
 * @param options what a person stated, object
 * @returns one run a climb, or a refusal that names what is missing
 */
export function writtenRuns(
  readings: readonly WrittenReading[],
  airplane: Airplane | undefined,
  options: CoolingClimbOptions,
): Run[] | Refusal {
  const runs: Run[] = [];
  for (const name of new Set(readings.map((one) => one.run))) {
    const rows = readings.filter((one) => one.run === name).sort((a, b) => a.seconds - b.seconds);
    const run = runFrom(name === '' ? 'climb' : `climb ${name}`, rows, airplane, options);
    if ('code' in run) return run;
    runs.push(run);
  }
  return runs;
}

const PARTS = {
  'coolant-temperature': 'coolant',
  'oil-temperature': 'oil',
  'cylinder-head-temperature': 'cylinder-head',
} as const;

function runFrom(
  label: string,
  rows: readonly WrittenReading[],
  airplane: Airplane | undefined,
  options: CoolingClimbOptions,
): Run | Refusal {
  const t = Float64Array.from(rows, (row) => row.seconds);
  const column = (name: string) => {
    const values = Float64Array.from(rows, (row) => row.values.get(name) ?? Number.NaN);
    return values.some((value) => !Number.isNaN(value)) ? values : null;
  };
  const height = between(t, column('pressure-altitude'));
  if (!height) return lacking(label, 'pressure altitude');
  const probe = between(t, column('outside-air-temperature'));
  const inlet = between(t, column('inlet-air-temperature'));
  if (!probe && !inlet && !options.airByHeight) return lacking(label, 'outside air temperature');
  const { air, flags } = airAlong({
    grid: { start: 0, dt: typicalStep(t), n: rows.length } satisfies Grid,
    probe: probe ?? inlet,
    inlet,
    height,
    airspeed: between(t, column('indicated-airspeed')),
    airplane,
    byHeight: options.airByHeight,
    asRead: true,
  });
  const way: Way = {
    label,
    file: `written figures, ${label}`,
    t,
    height,
    air: air.outside,
    airRate: slopes(t, air.outside),
    airRead: new Uint8Array(rows.length).fill(1),
    inlet,
    ram: air.ram,
  };
  const seen = rows.some((row) => row.peaked);
  const names = [...new Set(rows.flatMap((row) => [...row.values.keys()]))];
  const found = names.flatMap((quantity): Found[] => {
    const part = partOf(quantity, options);
    const course = part && courseFrom(way, quantity, part, column(quantity));
    const peak = course && peakOf(course, seen);
    if (!part || !course || !peak) return [];
    const governing = governingOf(airplane, options.thermostat, part);
    const exit = rows[peak.at]?.values.get('cowl-exit-position') ?? null;
    return [
      {
        course,
        peak: { ...peak, atStart: peak.atStart && rows.length > 1 },
        regimes: regimesFrom(course, governing),
        air,
        lag: USUAL_LAG,
        thermostatLeft:
          governing === null || governing === 'none'
            ? null
            : Math.min(1, Math.max(0, (governing.open - peak.highest) / (governing.open - governing.start))),
        exitLeft: exit === null ? null : 1 - exit,
        settings: Object.fromEntries(
          ['engine-speed', 'indicated-airspeed', 'cowl-exit-position'].flatMap((name) => {
            const value = rows[peak.at]?.values.get(name);
            return value === undefined ? [] : [[name, value]];
          }),
        ),
        ahead: null,
        start: null,
        powerFalls: false,
        around: { t, T: course.T, air: air.outside, from: 0 },
      },
    ];
  });
  if (found.length === 0) return lacking(label, 'coolant, oil or cylinder head temperature');
  return {
    file: way.file,
    found,
    climbs: [],
    trace: null,
    flags: [...flags, ...byHandRemarks(label, rows)],
    comparisons: [],
  };
}

function lacking(label: string, what: string): Refusal {
  return refusal(
    'missing-channel',
    `${label}: no ${what} among the written figures, and a peak means nothing without it. Write it beside the readings`,
  );
}

function byHandRemarks(label: string, rows: readonly WrittenReading[]): Flag[] {
  const words =
    rows.length < 3
      ? `${label}: ${rows.length} reading${rows.length === 1 ? '' : 's'} written: that this was the peak rests on the pilot’s word`
      : `${label}: ${rows.length} readings by hand; between two of them the temperature may have been higher, which is in its uncertainty`;
  return [flag(rows.length < 3 ? 'data-rule' : 'method-note', words)];
}

function partOf(quantity: string, options: CoolingClimbOptions): CooledPart | null {
  const base = quantity.split('#')[0] ?? quantity;
  const part = Object.entries(PARTS).find(([name]) => name === base)?.[1];
  if (part === undefined) return null;
  return part === 'cylinder-head' && options.heads === 'barrels' ? 'cylinder-barrel' : part;
}

// Each reading stands for itself. What a rounded top between two readings may hide is its fit part.
function courseFrom(way: Way, quantity: string, part: CooledPart, values: Float64Array | null): Course | null {
  if (!values) return null;
  const step = readTo(values);
  const n = values.length;
  return {
    way,
    quantity,
    part,
    T: values,
    rate: slopes(way.t, values),
    bend: new Float64Array(n),
    noiseU: new Float64Array(n),
    noiseNu: Number.POSITIVE_INFINITY,
    stepU: new Float64Array(n).fill(step / Math.sqrt(12)),
    unseenU: values.map((_, i) => hiddenTop(way.t, values, i)),
    step,
  };
}

// A handful of readings does not tell its step: thirty kelvins apart they would seem read to thirty.
function readTo(values: Float64Array): number {
  const distinct = new Set(values.filter((value) => !Number.isNaN(value)));
  const step = quantisationStep(values);
  return distinct.size >= ENOUGH_DISTINCT && step > 0 ? Math.min(step, MOST_STEP) : READ_TO;
}

// How far a parabola through a reading and its neighbours rises above it, taken as rectangular.
function hiddenTop(t: Float64Array, v: Float64Array, i: number): number {
  const [a, b, c] = [v[i - 1], v[i], v[i + 1]];
  if (a === undefined || b === undefined || c === undefined || Number.isNaN(a + b + c)) return 0;
  const [left, right] = [(t[i] ?? 0) - (t[i - 1] ?? 0), (t[i + 1] ?? 0) - (t[i] ?? 0)];
  if (!(left > 0 && right > 0)) return 0;
  const square = ((a - b) / left + (c - b) / right) / (left + right);
  const slope = ((c - b) * left) / right / (left + right) - ((a - b) * right) / left / (left + right);
  if (!(square < 0)) return 0;
  const top = -slope / (2 * square);
  return top > -left && top < right ? slope ** 2 / (-4 * square) / Math.sqrt(3) : 0;
}

function regimesFrom(course: Course, governing: ReturnType<typeof governingOf>): Regime[] {
  const n = course.T.length;
  if (governing === 'none') return new Array<Regime>(n).fill('fully-open');
  if (governing === null) return new Array<Regime>(n).fill('unknown');
  // readings a minute apart: each has waited for the wax
  const spans = thermostatSpans(course.T, Number.POSITIVE_INFINITY, governing, course.T[0]);
  return Array.from({ length: n }, (_, i) => spans.find((span) => i >= span.from && i <= span.to)?.regime ?? 'unknown');
}

/** Missing readings by straight lines between their neighbours, held at the ends; null where none was written. */
function between(t: Float64Array, values: Float64Array | null): Float64Array | null {
  if (!values) return null;
  const there = [...values.keys()].filter((i) => !Number.isNaN(values[i] ?? Number.NaN));
  return values.map((value, i) => {
    if (!Number.isNaN(value)) return value;
    const after = there.find((k) => k > i);
    const before = there.findLast((k) => k < i);
    if (before === undefined) return values[after ?? i] ?? Number.NaN;
    if (after === undefined) return values[before] ?? Number.NaN;
    const share = ((t[i] ?? 0) - (t[before] ?? 0)) / ((t[after] ?? 0) - (t[before] ?? 0));
    return (values[before] ?? 0) * (1 - share) + (values[after] ?? 0) * share;
  });
}

function slopes(t: Float64Array, v: Float64Array): Float64Array {
  const last = v.length - 1;
  return v.map((_, i) => {
    const [a, b] = [Math.max(0, i - 1), Math.min(last, i + 1)];
    const dt = (t[b] ?? 0) - (t[a] ?? 0);
    return dt > 0 ? ((v[b] ?? 0) - (v[a] ?? 0)) / dt : 0;
  });
}

function typicalStep(t: Float64Array): number {
  const steps = Array.from(t.slice(1), (one, i) => one - (t[i] ?? one)).sort((a, b) => a - b);
  return Math.max(1, steps[Math.floor(steps.length / 2)] ?? 60);
}
