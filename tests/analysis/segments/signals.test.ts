import { describe, expect, it } from 'vitest';
import { seriesOf } from '../../../analysis/logs/index.ts';
import {
  besideFile,
  flightSignals,
  intersect,
  meanBetween,
  meansOf,
  sampleAt,
  stretchesWhere,
  unwrapped,
  within,
  withoutLag,
} from '../../../analysis/segments/index.ts';
import { recordingFrom } from './flown.ts';

const deg = Math.PI / 180;

describe('a channel at other times', () => {
  const recording = recordingFrom({
    rateHz: 1,
    seconds: 20,
    channels: { 'indicated-airspeed': (t) => t, 'track-true': (t) => (350 * deg + t * 5 * deg) % (2 * Math.PI) },
    missing: [[8, 14]],
  });
  const speed = seriesOf(recording, 'indicated-airspeed');
  const track = seriesOf(recording, 'track-true');

  it('is linear between near samples and missing over gaps and outside', () => {
    if (!speed || !track) throw new Error('made above');
    expect([...sampleAt(speed, [-1, 0, 2.5, 8, 10, 14, 20, 21])]).toEqual([
      Number.NaN,
      0,
      2.5,
      8,
      Number.NaN,
      14,
      20,
      Number.NaN,
    ]);
    expect((sampleAt(track, [2.5])[0] ?? 0) / deg).toBeCloseTo(2.5, 9); // 0 and 5 degrees; and through north:
    expect((sampleAt(track, [1.5])[0] ?? 0) / deg).toBeCloseTo(357.5, 9);
  });

  it('is set back by its lag', () => {
    if (!speed) throw new Error('made above');
    expect(sampleAt(withoutLag(speed, 2), [3])[0]).toBe(5);
    expect(withoutLag(speed, 0)).toBe(speed);
  });

  it('has a mean, a scatter, and the share that is there', () => {
    if (!speed || !track) throw new Error('made above');
    const got = meanBetween(speed, 0, 20);
    expect(got?.longestGap).toBe(6);
    expect(got?.covered).toBeCloseTo(0.7, 9);
    expect((meanBetween(track, 0, 4)?.mean ?? 9) % (2 * Math.PI)).toBeCloseTo(0, 9); // 350 to 10 degrees
    expect(meanBetween(speed, 9, 13)).toBeUndefined();
    expect(meansOf(recording, { fromSeconds: 0, toSeconds: 4 }, ['indicated-airspeed', 'oil-temperature'])).toEqual({
      'indicated-airspeed': 2,
    });
  });

  it('is taken from the same recorder where both have it', () => {
    const two = recordingFrom(
      { file: 'engine.csv', rateHz: 1, seconds: 5, channels: { 'pressure-altitude': () => 1 } },
      {
        file: 'air.csv',
        rateHz: 1,
        seconds: 5,
        channels: { 'pressure-altitude': () => 2, 'indicated-airspeed': () => 40 },
      },
    );
    expect(besideFile(two, 'air.csv', ['pressure-altitude'])?.v[0]).toBe(2);
    expect(flightSignals(two)?.height[2]).toBe(2);
  });

  it('counts turns on', () => {
    expect([...unwrapped([350, 355, 5, 15].map((a) => a * deg))].map((a) => Math.round(a / deg))).toEqual([
      350, 355, 365, 375,
    ]);
  });
});

describe('conditions', () => {
  it('are entered within the band and left at one and a half', () => {
    const condition = within('within 1', [0, 0.9, 1.4, 1.6, 1.2, 0.8, Number.NaN, 0], 1);
    expect(stretchesWhere(condition)).toEqual([
      { from: 0, to: 2 },
      { from: 5, to: 7 },
    ]);
  });

  it('hold together where all of them do', () => {
    expect(
      intersect(
        [
          { from: 0, to: 9 },
          { from: 20, to: 30 },
        ],
        [
          { from: 5, to: 22 },
          { from: 25, to: 26 },
        ],
      ),
    ).toEqual([
      { from: 5, to: 9 },
      { from: 20, to: 22 },
      { from: 25, to: 26 },
    ]);
  });
});
