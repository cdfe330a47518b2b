/**
 * Published hot-day rules through the whole reduction of flight cooling: the same rows that gate the formulas, written
 * on a card as one steady point and read from the table of margins.
 */
import { describe, expect, it } from 'vitest';
import { airplaneSchema } from '../../analysis/airplane/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { fromSi } from '../../analysis/units/index.ts';
import { plainAirplane } from '../blind/plain-airplane.ts';
import { readTruth, type TruthCase } from './truth-set.ts';

const CHANNEL: Record<string, string> = {
  coolant: 'coolant-temperature',
  oil: 'oil-temperature',
  'cylinder-head': 'cylinder-head-temperature#1',
};

const { cases } = readTruth('cooling');
const degF = (value: unknown) => ({ value: Number(value), unit: 'degF' });
const feet = (value: unknown) => ({ value: Number(value), unit: 'ft' });
const airplane = airplaneSchema.parse({
  ...plainAirplane,
  instruments: { ...plainAirplane.instruments, airTemperatureIsStatic: true },
});

function margins(point: Record<string, unknown>, hotDay: string): Record<string, unknown> {
  const result = reductionOf('cooling-flight')?.reduce({
    points: { kind: 'cooling-flight', points: [point] },
    airplane,
    options: { thermostat: 'none', hotDay },
  });
  const table = result?.tables.find((one) => one.name === 'margins');
  const entries = table?.columns.map((column, i) => [column.name, table.rows[0]?.[i]] as const) ?? [];
  return { ...Object.fromEntries(entries), flags: result?.flags.map((one) => one.kind) };
}

const ofGroup = (group: string) =>
  cases.filter((one) => one.group === group).map((one): [string, TruthCase] => [`${one.source}: ${one.id}`, one]);

describe('14 CFR 23.1043(b), air of the hot day at a height', () => {
  it.each(ofGroup('hot-day-14cfr23'))('%s', (_, one) => {
    const point = {
      'coolant-temperature': { value: 95, unit: 'degC' },
      'outside-air-temperature': { value: -60, unit: 'degC' },
      'pressure-altitude': feet(one.inputs.pressure_altitude_ft),
    };
    const got = fromSi(Number(margins(point, '14cfr23')['hot-air']), 'degF');
    expect(Math.abs(got - Number(one.expected.hot_day_air_F))).toBeLessThanOrEqual(Number(one.tolerance.hot_day_air_F));
  });
});

describe('CS 22.1047(d), the same', () => {
  it.each(ofGroup('hot-day-cs22'))('%s', (_, one) => {
    const point = {
      'coolant-temperature': { value: 95, unit: 'degC' },
      'outside-air-temperature': { value: 0, unit: 'degC' },
      'pressure-altitude': { value: Number(one.inputs.pressure_altitude_m), unit: 'm' },
    };
    const got = fromSi(Number(margins(point, 'cs22')['hot-air']), 'degC');
    expect(Math.abs(got - Number(one.expected.hot_day_air_C))).toBeLessThanOrEqual(Number(one.tolerance.hot_day_air_C));
  });
});

describe('14 CFR 23.1043(c), temperatures corrected to it', () => {
  const rows = ofGroup('hot-day-correction').filter(([, one]) => CHANNEL[String(one.inputs.part)] !== undefined);

  it('holds every row but the barrels, which no channel of a log names', () => {
    expect(rows.length).toBe(ofGroup('hot-day-correction').length - 1);
  });

  it.each(rows)('%s', (_, one) => {
    const channel = CHANNEL[String(one.inputs.part)] ?? '';
    const got = margins(
      {
        [channel]: degF(one.inputs.measured_F),
        'outside-air-temperature': degF(one.inputs.air_F),
        'pressure-altitude': feet(one.inputs.pressure_altitude_ft),
      },
      '14cfr23',
    );
    const corrected = fromSi(Number(got.corrected), 'degF');
    const wanted = Number(one.expected.corrected_F);
    if (Number(one.inputs.air_F) > fromSi(Number(got['hot-air']), 'degF')) {
      // the rule's own figure would be cooler than the test day: it is said and not credited
      expect(corrected).toBeCloseTo(Number(one.inputs.measured_F), 6);
      expect(wanted).toBeLessThan(corrected);
      expect(got.flags).toContain('correction-not-credited');
    } else expect(Math.abs(corrected - wanted)).toBeLessThanOrEqual(Number(one.tolerance.corrected_F));
  });
});
