/** Published corrections through the whole reduction: one peak written on a card, corrected as the rule prints it. */
import { describe, expect, it } from 'vitest';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { differenceFromSi, fromSi, toSi } from '../../analysis/units/index.ts';
import { readTruth } from './truth-set.ts';

const CHANNELS: Record<string, string> = {
  coolant: 'coolant-temperature',
  oil: 'oil-temperature',
  'cylinder-head': 'cylinder-head-temperature#1',
  'cylinder-barrel': 'cylinder-head-temperature#1',
};
const cases = readTruth('cooling').cases.filter((one) => one.group === 'hot-day-correction');

function reduced(one: (typeof cases)[number]) {
  const part = String(one.inputs.part);
  const channel = CHANNELS[part] ?? '';
  const result = reductionOf('cooling-climb')?.reduce({
    points: {
      kind: 'cooling-climb',
      points: [
        {
          time: { value: 0, unit: 's' },
          [channel]: { value: one.inputs.measured_F, unit: 'degF' },
          'outside-air-temperature': { value: one.inputs.air_F, unit: 'degF' },
          'pressure-altitude': { value: one.inputs.pressure_altitude_ft, unit: 'ft' },
          peaked: true,
        },
      ],
    },
    options: part === 'cylinder-barrel' ? { heads: 'barrels' } : {},
  });
  const table = result?.tables.find((each) => each.name === 'peaks');
  const cell = (name: string) => Number(table?.rows[0]?.[table.columns.findIndex((each) => each.name === name)]);
  return { cell, flags: result?.flags.map((each) => each.kind) ?? [] };
}

describe('hot-day correction of a climb’s peak', () => {
  it('has its published cases', () => {
    expect(cases.length).toBeGreaterThanOrEqual(5);
  });

  it.each(cases.map((one) => [`${one.source}: ${one.id}`, one] as const))('%s', (_, one) => {
    const { cell, flags } = reduced(one);
    const printed = one.expected.corrected_F ?? Number.NaN;
    const tolerance = one.tolerance.corrected_F ?? 0;
    const measured = toSi(Number(one.inputs.measured_F), 'degF');
    // by the letter: what was read and the correction beside it
    const literal = Number(one.inputs.measured_F) + differenceFromSi(cell('correction'), 'dF');
    expect(Math.abs(literal - printed)).toBeLessThanOrEqual(tolerance);
    if (printed < Number(one.inputs.measured_F)) {
      expect(cell('corrected')).toBeCloseTo(measured, 6);
      expect(flags).toContain('correction-not-credited');
    } else expect(Math.abs(fromSi(cell('corrected'), 'degF') - printed)).toBeLessThanOrEqual(tolerance);
  });
});
