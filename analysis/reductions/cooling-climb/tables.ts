/** Tables of a cooling climb: the peaks, what was regulated, what was still to come, how the climbs were flown. */
import type { Cell, ResultTable } from '../../results/index.ts';
import type { Answer } from './answer.ts';

type Column = readonly [name: string, unit: string, cell: (one: Answer) => Cell | undefined];

const at = (values: Float64Array | null | undefined, one: Answer) => finite(values?.[one.peak.at]);
const finite = (value: number | null | undefined): number | null =>
  value === undefined || value === null || !Number.isFinite(value) ? null : value;

const PEAKS: readonly Column[] = [
  ['channel', 'none', (one) => one.course.quantity],
  ['peak', 'K', (one) => (one.reading ? one.peak.highest : null)],
  ['air', 'K', (one) => at(one.course.way.air, one)],
  ['corrected', 'K', (one) => one.corrected?.value ?? null],
  ['limit', 'K', (one) => one.limits.limit],
  ['margin', 'dK', (one) => marginOf(one)],
  ['u95', 'dK', (one) => finite(one.corrected?.doubt.u95)],
  ['climb', 'none', (one) => one.course.way.label],
  ['regime', 'none', (one) => one.regime],
  ['highest', 'K', (one) => one.peak.highest],
  ['peak-u95', 'dK', (one) => finite(one.reading?.u95)],
  ['correction', 'dK', (one) => finite(one.corrected?.correction)],
  ['start-allowance', 'dK', (one) => finite(one.corrected?.startAllowance)],
  ['power-allowance', 'dK', (one) => finite(one.corrected?.powerAllowance)],
  ['hot-day-air', 'K', (one) => finite(one.corrected?.hotAir)],
  ['caution', 'K', (one) => one.limits.caution],
  ['least-margin', 'dK', (one) => leastMarginOf(one)],
  ['least-margin-u95', 'dK', (one) => finite(one.hottest?.doubt.u95)],
  ['least-margin-seconds', 's', (one) => (one.hottest ? finite(one.course.way.t[one.hottest.at]) : null)],
  ['pressure-altitude', 'm', (one) => at(one.course.way.height, one)],
  ['over-air', 'dK', (one) => overAirOf(one)],
  ['recirculation', 'dK', (one) => recirculationOf(one)],
  ['indicated-airspeed', 'm/s', (one) => finite(one.settings['indicated-airspeed'])],
  ['engine-speed', '1/s', (one) => finite(one.settings['engine-speed'])],
  ['exit', '1', (one) => finite(one.settings['cowl-exit-position'])],
  ['peak-seconds', 's', (one) => finite(one.course.way.t[one.peak.at])],
  ['from-seconds', 's', (one) => finite(one.course.way.t[0])],
  ['to-seconds', 's', (one) => finite(one.course.way.t.at(-1))],
];

/** Limit less the corrected peak, K; null where either is missing or a margin may not be given. */
export function marginOf({ corrected, limits, counts }: Answer): number | null {
  return corrected && counts && limits.limit !== null ? limits.limit - corrected.value : null;
}

/** The least margin over the trace, K. */
export function leastMarginOf({ hottest, limits }: Answer): number | null {
  return hottest && limits.limit !== null ? limits.limit - hottest.value : null;
}

/** Temperature over the air that entered, K: what carries over between days. */
export function overAirOf({ course, peak }: Answer): number | null {
  return finite((course.T[peak.at] ?? Number.NaN) - ((course.way.inlet ?? course.way.air)[peak.at] ?? Number.NaN));
}

/** Radiator inlet less outside air at the peak, K; null where the inlet was not logged. */
export function recirculationOf({ course, peak }: Answer): number | null {
  return course.way.inlet ? finite((course.way.inlet[peak.at] ?? 0) - (course.way.air[peak.at] ?? 0)) : null;
}

/**
 * The table scripts rely on: one row a temperature and climb.
 * @param answers of all climbs, list
 * @returns the table `peaks`
 */
export function peaksTable(answers: readonly Answer[]): ResultTable {
  return tableOf('peaks', PEAKS, answers);
}

/**
 * What a thermostat or a door still had in hand, in place of a margin.
 * @param answers of all climbs, list
 * @returns the table `authority`, rows of regulated temperatures alone
 */
export function authorityTable(answers: readonly Answer[]): ResultTable {
  const columns: readonly Column[] = [
    ['channel', 'none', (one) => one.course.quantity],
    ['climb', 'none', (one) => one.course.way.label],
    ['temperature', 'K', (one) => one.peak.highest],
    ['thermostat-left', '1', (one) => one.thermostatLeft],
    ['exit-left', '1', (one) => one.exitLeft],
    ['from-seconds', 's', (one) => finite(one.course.way.t[0])],
    ['to-seconds', 's', (one) => finite(one.course.way.t.at(-1))],
  ];
  return tableOf(
    'authority',
    columns,
    answers.filter((one) => one.regime === 'regulated'),
  );
}

/**
 * What a climb that ended before the peak would have brought in the next half of its length.
 * @param answers of all climbs, list
 * @returns the table `ahead`
 */
export function aheadTable(answers: readonly Answer[]): ResultTable {
  return {
    name: 'ahead',
    columns: [
      { name: 'channel', unit: 'none' },
      { name: 'climb', unit: 'none' },
      { name: 'seconds-after-the-end', unit: 's' },
      { name: 'temperature', unit: 'K' },
      { name: 'temperature-low', unit: 'K' },
      { name: 'temperature-high', unit: 'K' },
    ],
    rows: answers.flatMap(({ ahead, course }) =>
      (ahead?.seconds ?? []).map((seconds, i) => [
        course.quantity,
        course.way.label,
        seconds,
        finite(ahead?.expected[i]),
        finite(ahead?.low[i]),
        finite(ahead?.high[i]),
      ]),
    ),
  };
}

function tableOf(name: string, columns: readonly Column[], answers: readonly Answer[]): ResultTable {
  return {
    name,
    columns: columns.map(([column, unit]) => ({ name: column, unit })),
    rows: answers.map((one) => columns.map(([, , cell]) => cell(one) ?? null)),
  };
}
