import { describe, expect, it } from 'vitest';
import { type Recording, recordingOf } from '../../../../analysis/logs/index.ts';
import { InputProblem } from '../../../../analysis/remarks/index.ts';
import { resultSchema } from '../../../../analysis/results/index.ts';
import { simulateFlight } from '../../../blind/cooling-flight-log.ts';
import { cells, exponent, flagsOf, reduce } from './card.ts';

const flight = simulateFlight({ what: 'test log', points: 14, scatter: 0.5, exact: true }, 1);
const options = { thermostat: 'none' };
const found = reduce({ recording: flight.recording, airplane: flight.airplane, options });

function changed(quantity: string, change: (values: Float64Array) => Float64Array | null): Recording {
  return recordingOf(
    flight.recording.tables.map((table) => ({
      ...table,
      channels: table.channels.flatMap((channel) => {
        if (channel.quantity !== quantity) return [channel];
        const values = change(channel.values);
        return values ? [{ ...channel, values }] : [];
      }),
    })),
  );
}

const again = (recording: Recording, more = {}) => reduce({ recording, airplane: flight.airplane, options, ...more });

describe('steady points of a log', () => {
  it('are found where the plan had them, each with its settings and its way back to the samples', () => {
    expect(resultSchema.safeParse(JSON.parse(JSON.stringify(found))).success).toBe(true);
    expect(found.segments.length).toBeGreaterThanOrEqual(12);
    for (const { fromSeconds, toSeconds, means } of found.segments) {
      const plan = flight.points[Math.floor((fromSeconds + toSeconds) / 2 / 300)];
      expect(Math.floor(toSeconds / 300)).toBe(Math.floor(fromSeconds / 300));
      expect(means['fuel-flow']).toBeCloseTo(plan?.flow ?? 0, 7);
      expect(Math.abs((means['indicated-airspeed'] ?? 0) - (plan?.ias ?? 0))).toBeLessThan(1);
    }
    for (const rate of cells(found, 'steady-points', 'temperature-rate'))
      expect(Math.abs(Number(rate))).toBeLessThan(0.0094);
  });

  it('give the law inside U95', () => {
    for (const [name, truth] of [
      ['fuel-flow', flight.law.flow],
      ['dynamic-pressure', flight.law.pressure],
      ['cowl-exit-position', flight.law.door],
    ] as const) {
      const one = exponent(found, name);
      expect(Math.abs((one?.value ?? 9) - truth), name).toBeLessThanOrEqual(one?.u95 ?? 0);
    }
  });

  it('say what they were found by', () => {
    expect(flagsOf(found, 'method-note').some((one) => /fuel flow within 2 %.*airspeed within 3 kt/.test(one))).toBe(
      true,
    );
  });
});

describe('a log that lacks something', () => {
  it('no outside air, or no temperature at all: refused by name', () => {
    for (const [quantity, words] of [
      ['outside-air-temperature', 'outside air temperature'],
      ['coolant-temperature', 'coolant temperature'],
    ] as const) {
      const result = again(changed(quantity, () => null));
      expect(result.code).toBe('missing-channel');
      expect(result.reason).toContain(words);
    }
  });

  it('no airspeed or no fuel flow: points and margins stand, exponents are withheld with the reason', () => {
    for (const [quantity, words] of [
      ['indicated-airspeed', 'dynamic pressure'],
      ['fuel-flow', 'fuel flow'],
    ] as const) {
      const result = again(changed(quantity, () => null));
      expect(result.status).toBe('reduced');
      expect(cells(result, 'margins', 'margin').some((one) => typeof one === 'number')).toBe(true);
      expect(flagsOf(result, 'not-resolved').some((one) => one.includes(words))).toBe(true);
      expect(exponent(result, 'cowl-exit-position')).toBeUndefined();
    }
  });

  it('fuel flow in litres taken for gallons moves the level and leaves the exponents', () => {
    const result = again(changed('fuel-flow', (values) => values.map((one) => one / 3.785)));
    expect(exponent(result, 'fuel-flow')?.value).toBeCloseTo(exponent(found, 'fuel-flow')?.value ?? 0, 2);
  });

  it('temperatures that fit no unit are left out, and refused where nothing is left', () => {
    const result = again(changed('coolant-temperature', (values) => values.map((one) => one + 200)));
    expect(result.code).toBe('missing-channel');
  });

  it('a gap inside a point cuts it; no mean is taken across', () => {
    const [, second] = found.segments;
    const middle = ((second?.fromSeconds ?? 0) + (second?.toSeconds ?? 0)) / 2;
    const result = again(
      changed('fuel-flow', (values) => values.map((one, i) => (Math.abs(i - middle) < 15 ? Number.NaN : one))),
    );
    expect(result.segments.some((one) => one.fromSeconds < middle && one.toSeconds > middle)).toBe(false);
  });

  it('a flight that never holds anything has no points: refused with what is wanted', () => {
    const restless = changed('fuel-flow', (values) => values.map((one, i) => one * (1 + 0.3 * Math.sin(i / 20))));
    const result = again(restless);
    expect(result.code).toBe('no-segments');
  });
});

describe('segments set by hand', () => {
  const byHand = (role = 'steady', more = {}) => [
    { file: 'flight.csv', fromSeconds: 100, toSeconds: 290, role, label: 'first', reason: 'looked at', ...more },
  ];

  it('stand with their reason; dropped ones are named', () => {
    const result = again(flight.recording, {
      segments: [...byHand(), { ...byHand('dropped')[0], fromSeconds: 400, toSeconds: 590 }],
    });
    expect(result.segments).toHaveLength(1);
    expect(result.segments[0]).toMatchObject({ label: 'first', role: 'steady' });
    expect(flagsOf(result, 'set-by-hand')[0]).toContain('looked at');
    expect(flagsOf(result, 'excluded')[0]).toContain('dropped by hand');
  });

  it('a file that is not there is a problem', () => {
    expect(() => again(flight.recording, { segments: byHand('steady', { file: 'other.csv' }) })).toThrow(InputProblem);
  });
});
