import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../analysis/numbers/index.ts';
import { coolingGround } from '../../../../analysis/reductions/cooling-ground/index.ts';
import type { Prediction } from '../../../../analysis/reductions/index.ts';
import { InputProblem } from '../../../../analysis/remarks/index.ts';
import type { Result } from '../../../../analysis/results/index.ts';
import { toSi } from '../../../../analysis/units/index.ts';
import { airplaneWith } from '../../../blind/cooling-days.ts';
import { type Day, type Step, simulateRun } from '../../../blind/cooling-run.ts';
import { rowsNamed } from './table-rows.ts';

const C = (degrees: number) => toSi(degrees, 'degC');
const ouzel = airplaneWith('ouzel');
const WARM: Step[] = [
  { rpm: 1400, seconds: 240, excess: 55, tau: 500 },
  { rpm: 1800, seconds: 420, excess: 65, tau: 400 },
];
const HOT: Step = { rpm: 2500, seconds: 900, excess: 88, tau: 300 };
const DAY: Day = {
  steps: [...WARM, HOT, { ...HOT, excess: 76, tau: 260, fan: true }],
  air: C(21),
  thermostat: { start: C(80), open: C(92) },
};
const result: Result = JSON.parse(
  JSON.stringify(coolingGround.reduce({ recording: simulateRun(DAY, 'first').recording, airplane: ouzel })),
);
const FAN_OFF = { 'engine-speed': { value: 2500, unit: 'rpm' }, 'cooling-fan-state': 'off' };
const predict = (conditions: object, from = result): Prediction => {
  if (!coolingGround.predict) throw new Error('no prediction');
  return coolingGround.predict(from, conditions);
};

describe('a prediction from a kept result', () => {
  const prediction = predict(FAN_OFF);

  it('is a table minute by minute that a card can read, and an early time to caution and limit', () => {
    expect(prediction.status).toBe('predicted');
    const [table] = prediction.tables;
    expect(table?.columns.map(({ name }) => name)).toEqual([
      'time',
      'coolant-temperature',
      'coolant-temperature-low',
      'coolant-temperature-high',
    ]);
    const rows = rowsNamed(prediction, 'next-run');
    expect(rows[1]?.time).toBe(60);
    for (const row of rows) {
      expect(Number(row['coolant-temperature-low'])).toBeLessThanOrEqual(Number(row['coolant-temperature']));
      expect(Number(row['coolant-temperature-high'])).toBeGreaterThanOrEqual(Number(row['coolant-temperature']));
    }
    const caution = prediction.quantities.find((one) => one.name === 'time-to-caution');
    expect(caution?.low ?? 0).toBeGreaterThan(60);
    expect(prediction.quantities.find((one) => one.name === 'longest-run')?.value).toBe(caution?.low);
  });

  it('holds the next run, which differs by the usual scatter, 95 times in 100', () => {
    let [inside, all] = [0, 0];
    const random = seededRandom('next runs');
    const rows = rowsNamed(prediction, 'next-run');
    const start = C(0) + Number(rows[0]?.['coolant-temperature']) - C(0);
    for (let run = 0; run < 60; run += 1) {
      // another day like it: D differs by 1.5 K from run to run, for the run measured and for this one
      const settles = C(21) + HOT.excess + 1.5 * random.normal() * Math.SQRT2;
      for (const row of rows.slice(1, 15)) {
        const T = settles + (start - settles) * Math.exp(-Number(row.time) / HOT.tau);
        all += 1;
        if (T >= Number(row['coolant-temperature-low']) && T <= Number(row['coolant-temperature-high'])) inside += 1;
      }
    }
    expect(inside / all).toBeGreaterThan(0.92);
  });

  it('reaches half as long again as the run and says so when asked for more', () => {
    const far = predict({ ...FAN_OFF, duration: { value: 60, unit: 'min' } });
    expect(far.flags.some(({ kind }) => kind === 'extrapolated')).toBe(true);
    expect(rowsNamed(far, 'next-run').length).toBeLessThanOrEqual(23);
  });

  it('is earlier in hotter air and from a hotter start', () => {
    const early = (conditions: object) =>
      predict({ ...FAN_OFF, ...conditions }).quantities.find((one) => one.name === 'time-to-caution')?.low ?? 0;
    expect(early({ 'outside-air-temperature': { value: 25, unit: 'degC' } })).toBeLessThan(early({}));
    expect(early({ start: { value: 100, unit: 'degC' } })).toBeLessThan(early({}));
  });
});

describe('it refuses what was not measured', () => {
  it.each([
    ['another speed', { 'engine-speed': { value: 3000, unit: 'rpm' } }, /not held; measured are/],
    ['fan not said', { 'engine-speed': { value: 2500, unit: 'rpm' } }, /Say where the exit stands/],
    ['door elsewhere', { ...FAN_OFF, 'cowl-exit-position': { value: 30, unit: '%' } }, /not held/],
    [
      'hotter than the hot day',
      { ...FAN_OFF, 'outside-air-temperature': { value: 45, unit: 'degC' } },
      /hotter than the hot day/,
    ],
    ['another season', { ...FAN_OFF, 'outside-air-temperature': { value: -5, unit: 'degC' } }, /colder/],
    ['a cold start', { ...FAN_OFF, start: { value: 40, unit: 'degC' } }, /thermostat may not be open/],
  ])('%s', (_, conditions, words) => {
    const prediction = predict(conditions);
    expect(prediction.status).toBe('refused');
    expect(prediction.reason).toMatch(words);
  });

  it('and what cannot be read', () => {
    expect(() => predict({ 'engine-speed': 2500 })).toThrow(InputProblem);
    expect(predict(FAN_OFF, { ...result, model: {} }).status).toBe('refused');
    expect(predict(FAN_OFF, { ...result, status: 'refused' }).status).toBe('refused');
  });
});

describe('longest run', () => {
  it('ends at caution where it settles over it, at what was measured where it does not', () => {
    const rows = rowsNamed(result, 'longest-run');
    const off = rows.find((row) => row.fan === false);
    const on = rows.find((row) => row.fan === true);
    expect(off?.['ended-by']).toBe('caution');
    expect(Number(off?.longest)).toBeLessThan(900);
    expect(on?.['ended-by']).toBe('not measured longer');
  });
});
