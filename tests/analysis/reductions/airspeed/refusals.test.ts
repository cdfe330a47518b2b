import { describe, expect, it } from 'vitest';
import { recordingOf } from '../../../../analysis/logs/index.ts';
import { InputProblem } from '../../../../analysis/remarks/index.ts';
import { simulatedAirplane, simulatedFlights, simulatedTable } from '../../../outside/simulated-log.ts';
import { box, cardPoints, columnIn, exactAirplane, flagsOf, reduce } from './card.ts';

const airplane = exactAirplane();
const code = (legs: Parameters<typeof cardPoints>[0]) => reduce({ points: cardPoints(legs), airplane }).code;

describe('legs that do not carry an answer', () => {
  it('two legs are too few', () => {
    expect(code(box(45, [0, 180]))).toBe('too-few-points');
    expect(code(box(45, [0]))).toBe('too-few-points');
  });

  it('reciprocal directions say nothing of the wind across them, however many', () => {
    expect(code(box(45, [20, 200, 20, 200, 20, 200]))).toBe('bad-geometry');
  });

  it('directions within 60 degrees are refused, with the dilution in words', () => {
    const result = reduce({ points: cardPoints(box(45, [0, 20, 40, 60])), airplane });
    expect(result.code).toBe('bad-geometry');
    expect(result.reason).toMatch(/multiplied by \d/);
    expect(result.mend).toContain('across');
  });

  it('directions within 120 degrees are given with a warning', () => {
    const result = reduce({ points: cardPoints(box(45, [0, 60, 120])), airplane });
    expect(result.status).toBe('reduced');
    expect(flagsOf(result, 'geometry-warning')[0]).toContain('1.7');
  });

  it('nothing at all is refused, not thrown', () => {
    expect(reduce({}).code).toBe('missing-channel');
  });
});

describe('dilution by directions of the air, not of tracks', () => {
  // Four at right angles 0.50, three at 120 degrees 0.58; evenly spread over 180, 120, 90 and 60 degrees 0.71, 1.73,
  // 3.4, 8.4: the figures of the method, from its own experiments.
  it.each([
    [[0, 90, 180, 270], 0.5, 0.005],
    [[0, 120, 240], 0.58, 0.005],
    [[0, 90, 180], 0.71, 0.005],
    [[0, 60, 120], 1.73, 0.005],
  ])('%j: %d', (headings, wanted, within) => {
    const result = reduce({ points: cardPoints(box(45, headings)), airplane });
    expect(Math.abs((columnIn(result, 'position-error', 'dilution')[0] ?? 0) - wanted)).toBeLessThan(within);
  });

  it.each([
    [[0, 45, 90], 3.4],
    [[0, 30, 60], 8.4],
  ])('%j: %d, and so refused', (headings, wanted) => {
    const said = Number(
      /multiplied by ([\d.]+)/.exec(reduce({ points: cardPoints(box(45, headings)), airplane }).reason ?? '')?.[1],
    );
    expect(Math.abs(said / wanted - 1)).toBeLessThan(0.1);
  });
});

describe('values that do not belong together', () => {
  const points = cardPoints([45, 50, 55].flatMap((ias, j) => box(ias, [0, 90, 180, 270], 10 * j)));
  const withUnit = (field: 'ground-speed' | 'indicated-airspeed', unit: string, factor: number) => ({
    ...points,
    points: points.points.map((one) => ({ ...one, [field]: { value: one[field].value * factor, unit } })),
  });

  it('ground speed in km/h taken for knots is refused: no airspeed system errs by four fifths', () => {
    // 45 m/s is 162 km/h; read as knots it is 83 m/s.
    const result = reduce({ points: withUnit('ground-speed', 'kt', 3.6), airplane });
    expect(result.code).toBe('implausible-values');
  });

  it('miles for knots is answered with a question about the unit', () => {
    const result = reduce({ points: withUnit('ground-speed', 'm/s', 1.15), airplane });
    expect(result.status).toBe('reduced');
    expect(flagsOf(result, 'implausible-unit')[0]).toContain('miles and knots');
  });

  it('an altitude far outside the atmosphere is refused by the relation it broke', () => {
    const high = {
      ...points,
      points: points.points.map((one) => ({ ...one, 'pressure-altitude': { value: 30_000, unit: 'm' } })),
    };
    expect(reduce({ points: high, airplane }).code).toBe('out-of-domain');
  });

  it('figures that do not fit the card are a problem with the field named', () => {
    const broken = { kind: 'airspeed', points: [{ 'indicated-airspeed': { value: 90, unit: 'kt' } }] };
    expect(() => reduce({ points: broken })).toThrow(InputProblem);
    expect(() => reduce({ points: broken })).toThrow(/ground-speed/);
    expect(() => reduce({ points: points, options: { flapz: 'up' } })).toThrow(InputProblem);
  });

  it('a written leg that lacks what the others have is named', () => {
    const one = structuredClone(points);
    const bare = one.points.map((point, i) => {
      if (i !== 4) return point;
      const { 'outside-air-temperature': _, ...rest } = point;
      return rest;
    });
    expect(reduce({ points: { ...one, points: bare }, airplane }).reason).toContain('written leg 5 has no outside air');
  });
});

describe('a log that lacks something (simulated flight, channels taken away or spoilt)', () => {
  const flight = simulatedFlights()[0];
  if (!flight) throw new Error('no simulated flight');
  const plane = simulatedAirplane(flight, 'exact');
  const table = simulatedTable(flight.file);
  const spoilt = (quantity: string, change: (values: Float64Array, t: Float64Array) => Float64Array | null) =>
    recordingOf([
      {
        ...table,
        channels: table.channels.flatMap((channel) => {
          if (channel.quantity !== quantity) return [channel];
          const values = change(channel.values, table.time.seconds);
          return values ? [{ ...channel, values }] : [];
        }),
      },
    ]);

  it.each([
    ['indicated-airspeed', 'indicated airspeed'],
    ['pressure-altitude', 'pressure altitude'],
    ['outside-air-temperature', 'outside air temperature'],
    ['ground-speed', 'ground speed'],
    ['track-true', 'true track'],
  ])('%s missing: refused by name', (quantity, words) => {
    const result = reduce({ recording: spoilt(quantity, () => null), airplane: plane });
    expect(result.code).toBe('missing-channel');
    expect(result.reason).toContain(words);
  });

  it('outside air stated by hand stands in for the channel, flagged', () => {
    const recording = spoilt('outside-air-temperature', () => null);
    const result = reduce({ recording, airplane: plane, options: { airTemperature: { value: 19.1, unit: 'degC' } } });
    expect(result.status).toBe('reduced');
    expect(flagsOf(result, 'assumed-value').some((message) => message.includes('as read by hand'))).toBe(true);
  });

  it('ground speed stuck for the whole log: refused', () => {
    const recording = spoilt('ground-speed', (values) => values.map(() => 50));
    expect(reduce({ recording, airplane: plane }).code).toBe('stuck-channel');
  });

  it('ground speed stuck for half the log: those legs are left out, the others answer', () => {
    const recording = spoilt('ground-speed', (values, t) => values.map((v, i) => ((t[i] ?? 0) > 1250 ? 50 : v)));
    const result = reduce({ recording, airplane: plane });
    expect(result.status).toBe('reduced');
    expect(columnIn(result, 'legs', 'from-seconds').every((from) => from < 1250)).toBe(true);
    expect(flagsOf(result, 'excluded').filter((message) => message.includes('stood still')).length).toBeGreaterThan(5);
  });

  it('a gap in the middle of a leg leaves that leg out and says so', () => {
    const [, from = 0, to = 0] = flight.segments[8] ?? [];
    const middle = (Number(from) + Number(to)) / 2;
    const recording = spoilt('ground-speed', (values, t) =>
      values.map((v, i) => (Math.abs((t[i] ?? 0) - middle) < 15 ? Number.NaN : v)),
    );
    const result = reduce({ recording, airplane: plane });
    const gap = result.flags.find((one) => one.kind === 'excluded' && one.message.startsWith('a gap'));
    expect(gap?.fromSeconds).toBeLessThan(middle);
    expect(gap?.toSeconds).toBeGreaterThan(middle);
    expect(columnIn(result, 'legs', 'from-seconds')).toHaveLength(flight.segments.length - 1);
  });

  it('rows missing in the middle of a leg cut it in two', () => {
    const [, from = 0, to = 0] = flight.segments[8] ?? [];
    const middle = (Number(from) + Number(to)) / 2;
    const keep = Array.from(table.time.seconds, (_, i) => i).filter(
      (i) => Math.abs((table.time.seconds[i] ?? 0) - middle) > 6,
    );
    const pick = (values: Float64Array) => Float64Array.from(keep, (i) => values[i] ?? Number.NaN);
    const recording = recordingOf([
      {
        ...table,
        rows: keep.length,
        time: { ...table.time, seconds: pick(table.time.seconds) },
        channels: table.channels.map((channel) => ({ ...channel, values: pick(channel.values) })),
      },
    ]);
    const result = reduce({ recording, airplane: plane });
    expect(result.segments.some((one) => one.fromSeconds < middle && one.toSeconds > middle)).toBe(false);
  });
});
