import { describe, expect, it } from 'vitest';
import { coolingClimb } from '../../../../analysis/reductions/cooling-climb/index.ts';
import { InputProblem } from '../../../../analysis/remarks/index.ts';
import { toSi } from '../../../../analysis/units/index.ts';
import { airplaneWith } from '../../../blind/cooling-days.ts';
import { rowsNamed } from '../cooling-ground/table-rows.ts';
import { kindsOf } from './climbed.ts';

const wrenlet = airplaneWith('wrenlet', (json) => {
  const stated = (value: number) => ({ value, unit: 'degC', source: 'the test' });
  Object.assign(json.limits ?? {}, { cylinderHead: { caution: stated(200), limit: stated(230) } });
});

/** What the pilot of an air-cooled airplane writes every minute: head, oil, air, altitude. */
function card(heads: readonly number[], more: Record<string, unknown> = {}) {
  return {
    kind: 'cooling-climb',
    points: heads.map((head, i) => ({
      time: { value: i, unit: 'min' },
      'cylinder-head-temperature#1': { value: head, unit: 'degC' },
      'oil-temperature': { value: 90 + i, unit: 'degC' },
      'outside-air-temperature': { value: 15 - 1.2 * i, unit: 'degC' },
      'pressure-altitude': { value: 1000 + 600 * i, unit: 'ft' },
      'indicated-airspeed': { value: 60, unit: 'kt' },
      ...more,
    })),
  };
}

const reduce = (points: unknown, options = {}) => coolingClimb.reduce({ points, airplane: wrenlet, options });

describe('a climb written on a card', () => {
  const result = reduce(card([150, 171, 184, 190, 191, 188, 183]));
  const [oil, head] = ['oil-temperature', 'cylinder-head-temperature#1'].map((channel) =>
    rowsNamed(result, 'peaks').find((row) => row.channel === channel),
  );

  it('gives the highest reading, in the air and at the height written beside it', () => {
    expect(result.status).toBe('reduced');
    expect(head?.peak).toBeCloseTo(toSi(191, 'degC'), 9);
    expect(head?.['pressure-altitude']).toBeCloseTo(toSi(3400, 'ft'), 6);
    // 10.2 degC less the ram rise at 60 kt
    expect(Math.abs(Number(head?.air) - toSi(10.2, 'degC'))).toBeLessThan(0.6);
    expect(Number(head?.margin)).toBeCloseTo(toSi(230, 'degC') - Number(head?.corrected), 6);
    expect(kindsOf(result)).toContain('method-note');
  });

  it('does not call a peak what was still rising', () => {
    expect(oil?.peak).toBeNull();
    expect(oil?.highest).toBeCloseTo(toSi(96, 'degC'), 9);
    expect(kindsOf(result)).toContain('not-peaked');
  });

  it('is less sure of a rounded top between readings far apart', () => {
    const sharp = rowsNamed(reduce(card([150, 160, 190, 189.9, 160])), 'peaks').find(
      (row) => row.channel === head?.channel,
    );
    const flat = rowsNamed(reduce(card([189, 189, 190, 189, 188, 187])), 'peaks').find(
      (row) => row.channel === head?.channel,
    );
    expect(Number(sharp?.['peak-u95'])).toBeGreaterThan(Number(flat?.['peak-u95']));
  });

  it('fills a missing altitude from its neighbours, and takes a lone peak on the pilot’s word', () => {
    const points = card([150, 171, 184, 190, 191, 188, 183]);
    const row: Record<string, unknown> = points.points[4] ?? {};
    delete row['pressure-altitude'];
    const holed = rowsNamed(reduce(points), 'peaks').find((one) => one.channel === head?.channel);
    expect(holed?.['pressure-altitude']).toBeCloseTo(toSi(3400, 'ft'), 6);
    const lone = reduce(card([191], { peaked: true }));
    expect(rowsNamed(lone, 'peaks').every((one) => one.peak !== null)).toBe(true);
    expect(kindsOf(lone)).toContain('data-rule');
  });

  it('tells climbs apart by the run they are written under', () => {
    const a = card([150, 180, 191, 186], { run: 'A' });
    const b = card([150, 180, 193, 187], { run: 'B' });
    const both = reduce({ kind: 'cooling-climb', points: [...a.points, ...b.points] });
    const heads = rowsNamed(both, 'peaks').filter((row) => row.channel === head?.channel);
    expect(heads.map((row) => row.climb)).toEqual(['climb A', 'climb B']);
    expect(both.flags.find((one) => one.kind === 'assumed-repeatability')?.message).toContain('1 repeat seen');
  });

  it('refuses figures without air or height, and names the field that does not fit', () => {
    const bare = {
      kind: 'cooling-climb',
      points: [{ time: { value: 0, unit: 's' }, 'oil-temperature': { value: 90, unit: 'degC' } }],
    };
    expect(reduce(bare)).toMatchObject({ status: 'refused', code: 'missing-channel' });
    const wrong = card([150], { 'bus-voltage': { value: 13, unit: 'V' } });
    expect(() => reduce(wrong)).toThrow(InputProblem);
    expect(() => reduce(card([150], { time: undefined }))).toThrow(InputProblem);
  });
});
