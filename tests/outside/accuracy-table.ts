/**
 * How far the code stands from published values: one row a subject and quantity, the same figures the gates hold.
 * Printed by `npm run accuracy`; the README carries the table and a test keeps it current.
 */
import { measureAirspeed, measureAtmosphere, SPECIAL } from './measure-air.ts';
import { measureClimb } from './measure-climb.ts';
import { measureBoiling, measureCooling } from './measure-cooling.ts';
import { LEG_SPECIAL, measureCourse, measureLegs } from './measure-legs.ts';
import { measureWeight, WEIGHT_UNITS } from './measure-weight.ts';
import { type Deviation, deviations, readTruth, splitKey, type TruthCase } from './truth-set.ts';

export interface AccuracyRow {
  subject: string;
  quantity: string;
  cases: number;
  /** mean and largest size of the deviation, in the source's unit */
  mean: number;
  worst: number;
  unit: string;
}

interface Subject {
  title: string;
  set: string;
  /** of the set, those the code computes; all where left out */
  only?: RegExp;
  measure(one: TruthCase): Record<string, number | undefined>;
  /** size in SI of units that only this subject's keys use */
  special?: Record<string, number>;
}

const SUBJECTS: readonly Subject[] = [
  { title: 'standard atmosphere, altimetry', set: 'atmosphere', measure: measureAtmosphere },
  { title: 'airspeeds and probe', set: 'airspeed-conversions', measure: measureAirspeed },
  { title: 'hot day', set: 'cooling', measure: measureCooling },
  { title: 'coolant boiling', set: 'coolant-boiling', measure: measureBoiling },
  { title: 'legs by satellite', set: 'gps-airspeed', measure: measureLegs },
  { title: 'runs to and fro', set: 'speed-course', measure: measureCourse, special: LEG_SPECIAL },
  { title: 'climb', set: 'climb', measure: measureClimb, only: /climb-(tapeline|ccf|induced|weight|angle|vy-vx)/ },
  { title: 'weight and balance', set: 'weight-balance', measure: measureWeight, special: WEIGHT_UNITS },
];

const UNITS: Record<string, string> = {
  psf: 'lb/ft²',
  fpm: 'ft/min',
  degC: '°C',
  lbf: 'lbf',
  lb_ft3: 'lb/ft³',
  ft2_s: 'ft²/s',
  m2_s: 'm²/s',
  Pa_s: 'Pa s',
  in_lb: 'lb·in',
  lb: 'lb',
  in: 'in',
  pct_mac: '% MAC',
  ft_per_kt: 'ft/kt',
  deg: '°',
};

export function accuracyRows(): AccuracyRow[] {
  return SUBJECTS.flatMap(({ title, set, measure, special = SPECIAL, only = /./ }) => {
    const cases = readTruth(set).cases.filter((one) => only.test(one.id));
    const all = cases.flatMap((one) => deviations(one, measure(one), special));
    const groups = new Map<string, Deviation[]>();
    // Members of a list (wind_speed_2_kt) are one quantity.
    for (const one of all) {
      const key = one.key.replace(/_\d+(?=_)/, '');
      groups.set(key, [...(groups.get(key) ?? []), one]);
    }
    return [...groups].map(([key, found]) => rowOf(title, key, found));
  });
}

function rowOf(subject: string, key: string, found: Deviation[]): AccuracyRow {
  const { base, unit } = splitKey(key);
  const special = Object.keys(UNITS).find((suffix) => key.endsWith(`_${suffix}`));
  const quantity = (special ? key.slice(0, -special.length - 1) : base).replaceAll('_', ' ');
  const sizes = found.map((one) => Math.abs(one.got - one.expected));
  return {
    subject,
    quantity,
    cases: found.length,
    mean: sizes.reduce((sum, size) => sum + size, 0) / sizes.length,
    worst: sizes.reduce((most, size) => Math.max(most, size), 0),
    unit: special ? (UNITS[special] ?? '') : (unit ?? ''),
  };
}

const figure = (value: number) => (value === 0 ? '0' : value.toPrecision(2).replace(/e([+-])0?(\d)/, 'e$1$2'));

/** The table in Markdown. */
export function accuracyTable(rows: readonly AccuracyRow[] = accuracyRows()): string {
  const lines = rows.map(
    (row) =>
      `| ${row.subject} | ${row.quantity} | ${row.cases} | ${figure(row.mean)} | ${figure(row.worst)} | ${row.unit} |`,
  );
  return [
    '| subject | quantity | published values | mean deviation | largest | unit |',
    '|---|---|---:|---:|---:|---|',
    ...lines,
  ].join('\n');
}
