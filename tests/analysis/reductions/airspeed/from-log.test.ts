import { describe, expect, it } from 'vitest';
import { recordingOf } from '../../../../analysis/logs/index.ts';
import { InputProblem } from '../../../../analysis/remarks/index.ts';
import { resultSchema } from '../../../../analysis/results/index.ts';
import { dropSegment, type SegmentEdit } from '../../../../analysis/segments/index.ts';
import {
  simulatedAirplane,
  simulatedFlights,
  simulatedRecording,
  simulatedTable,
} from '../../../outside/simulated-log.ts';
import { columnIn, flagsOf, reduce, tableIn } from './card.ts';

const [boxes, turns] = simulatedFlights();
if (!boxes || !turns) throw new Error('no simulated flights');
const airplane = simulatedAirplane(boxes, 'exact');
const recording = simulatedRecording(boxes.file);
const found = reduce({ recording, airplane, options: { startMass: { value: boxes.massKg, unit: 'kg' } } });

describe('the result of a log', () => {
  it('has the shape every result has', () => {
    expect(resultSchema.safeParse(JSON.parse(JSON.stringify(found))).success).toBe(true);
  });

  it('leads every leg back to its samples, on the clock of the first log', () => {
    const from = columnIn(found, 'legs', 'from-seconds');
    const to = columnIn(found, 'legs', 'to-seconds');
    expect(from.length).toBe(found.segments.length);
    from.forEach((start, i) => {
      expect(found.segments[i]).toMatchObject({
        fromSeconds: start,
        toSeconds: to[i] ?? Number.NaN,
        role: 'leg',
        file: boxes.file,
      });
      expect(Number(found.segments[i]?.means['indicated-airspeed'])).toBeGreaterThan(30);
    });
  });

  it('splits U95 of every speed into parts that add in quadrature', () => {
    for (const quantity of found.quantities.filter((one) => one.name === 'position-error')) {
      const sum = Math.hypot(...Object.values(quantity.parts).map((part) => part ?? 0));
      expect(sum / (quantity.u95 ?? 1)).toBeCloseTo(1, 6);
    }
  });

  it('reports the frozen fix, the wild reading and the thin legs', () => {
    expect(flagsOf(found, 'channel-flagged')).toContain('satellite fix frozen: left out');
    const wild = simulatedTable(boxes.file);
    const at = wild.time.seconds.findIndex((t) => t >= 560);
    const spoilt = recordingOf([
      {
        ...wild,
        channels: wild.channels.map((channel) =>
          channel.quantity === 'outside-air-temperature'
            ? { ...channel, values: channel.values.map((v, i) => (i === at ? 174.15 : v)) }
            : channel,
        ),
      },
    ]);
    const again = reduce({ recording: spoilt, airplane });
    expect(flagsOf(again, 'excluded')).toContain('1 single readings far off their own leg were left out');
    columnIn(again, 'position-error', 'correction').forEach((value, j) => {
      expect(Math.abs(value - (columnIn(found, 'position-error', 'correction')[j] ?? 0))).toBeLessThan(1e-3);
    });
    expect(flagsOf(found, 'gap').length).toBeGreaterThan(0);
  });

  it('names a chi-square near its degrees of freedom: the noise within the legs explains how they differ', () => {
    const chi = found.quantities.find((one) => one.name === 'residual-chi-square');
    const share = chi?.conditions['share-below'];
    expect(typeof share === 'object' ? share.value : 0).toBeGreaterThan(0.01);
    expect(typeof share === 'object' ? share.value : 1).toBeLessThan(0.99);
  });
});

describe('segments set by hand', () => {
  const edits: SegmentEdit[] = found.segments.map((one) => ({
    file: one.file,
    fromSeconds: one.fromSeconds,
    toSeconds: one.toSeconds,
    role: one.role,
    reason: 'as found',
  }));

  it('give the same answer when they are those found', () => {
    const again = reduce({
      recording,
      airplane,
      segments: edits,
      options: { startMass: { value: boxes.massKg, unit: 'kg' } },
    });
    columnIn(again, 'position-error', 'correction').forEach((value, j) => {
      expect(value).toBeCloseTo(columnIn(found, 'position-error', 'correction')[j] ?? 0, 9);
    });
    expect(flagsOf(again, 'set-by-hand')).toHaveLength(edits.length);
  });

  it('a dropped one is counted with its reason, and the others answer', () => {
    const result = reduce({ recording, airplane, segments: dropSegment(edits, 3, 'traffic, turned away') });
    expect(columnIn(result, 'legs', 'leg')).toHaveLength(edits.length - 1);
    expect(flagsOf(result, 'excluded').some((message) => message.includes('traffic, turned away'))).toBe(true);
  });

  it('of a file that is not there are a problem', () => {
    expect(() =>
      reduce({ recording, airplane, segments: [{ ...edits[0], file: 'other.csv' } as SegmentEdit] }),
    ).toThrow(InputProblem);
  });
});

describe('two recorders', () => {
  it('air data in one, satellites in the other, started later: the same answer', () => {
    const whole = simulatedTable(boxes.file);
    const air = new Set(['indicated-airspeed', 'pressure-altitude', 'outside-air-temperature', 'roll-angle']);
    const later = 40;
    const from = whole.time.seconds.findIndex((t) => t >= later);
    const satellites = {
      ...whole,
      file: 'satellites.csv',
      time: { ...whole.time, seconds: whole.time.seconds.slice(from).map((t) => t - later) },
      channels: whole.channels
        .filter((channel) => !air.has(channel.quantity ?? ''))
        .map((channel) => ({ ...channel, values: channel.values.slice(from) })),
    };
    const airData = { ...whole, channels: whole.channels.filter((channel) => air.has(channel.quantity ?? '')) };
    const result = reduce({ recording: recordingOf([airData, satellites], [0, later]), airplane });
    columnIn(result, 'position-error', 'correction').forEach((value, j) => {
      expect(Math.abs(value - (columnIn(found, 'position-error', 'correction')[j] ?? 0))).toBeLessThan(0.02);
    });
    expect(result.segments[0]?.file).toBe(boxes.file);
  });
});

describe('turns', () => {
  const result = reduce({ recording: simulatedRecording(turns.file), airplane, options: {} });

  it('are cut into eighths and flagged as another pressure field', () => {
    expect(columnIn(result, 'position-error', 'legs').every((n) => n >= 8)).toBe(true);
    expect(flagsOf(result, 'method-note').some((message) => message.includes('pressure field'))).toBe(true);
    expect(flagsOf(result, 'data-rule').some((message) => message.includes('less than twice'))).toBe(true);
  });

  it('show no lag of the airspeed where there is none, and one where there is', () => {
    const said = (one: typeof result) =>
      flagsOf(one, 'method-note').filter((message) => message.includes('after the satellites'));
    expect(said(result)).toEqual([]);
    const table = simulatedTable(turns.file);
    const late = 2.0;
    const lagging = {
      ...table,
      channels: table.channels.map((channel) =>
        channel.quantity === 'indicated-airspeed'
          ? {
              ...channel,
              values: channel.values.map(
                (_, i) => channel.values[Math.max(0, i - Math.round(late / 0.4))] ?? Number.NaN,
              ),
            }
          : channel,
      ),
    };
    const [message] = said(reduce({ recording: recordingOf([lagging]), airplane }));
    expect(Math.abs(Number(/comes ([\d.-]+) s/.exec(message ?? '')?.[1]) - late)).toBeLessThan(0.6);
  });
});

describe('a telephone and a card', () => {
  it('satellite log with airspeed, height and air temperature written leg by leg', () => {
    const table = simulatedTable(boxes.file);
    const phone = recordingOf([
      {
        ...table,
        channels: table.channels.filter((one) => ['ground-speed', 'track-true'].includes(one.quantity ?? '')),
      },
    ]);
    const points = found.segments.map((segment) => ({
      'from-seconds': segment.fromSeconds,
      'to-seconds': segment.toSeconds,
      'indicated-airspeed': { value: Math.round((segment.means['indicated-airspeed'] ?? 0) / 0.514444), unit: 'kt' },
      'pressure-altitude': { value: 4110, unit: 'ft' },
      'outside-air-temperature': { value: 19, unit: 'degC' },
    }));
    const result = reduce({ recording: phone, points: { kind: 'airspeed', points }, airplane });
    expect(result.status).toBe('reduced');
    columnIn(result, 'position-error', 'correction').forEach((value, j) => {
      // Airspeed to the knot, height to a hundred feet: half a knot.
      expect(Math.abs(value - (columnIn(found, 'position-error', 'correction')[j] ?? 0))).toBeLessThan(0.35);
    });
    expect(tableIn(result, 'legs').rows[0]?.[3]).toBe(found.segments[0]?.fromSeconds);
  });
});
