import { describe, expect, it } from 'vitest';
import { InputProblem } from '../../../../analysis/remarks/index.ts';
import type { Result } from '../../../../analysis/results/index.ts';
import { climbLog, columnIn, constantPower, exactAirplane, kindsOf, quantityIn, reduce } from './flown.ts';

const airplane = exactAirplane();
const pairs = [30, 35, 40, 45, 50].flatMap((cas) => [
  { cas, heading: 20 },
  { cas, heading: 200 },
]);
const found = reduce({ recording: climbLog({ climbs: pairs }), airplane });

describe('climbs of a log', () => {
  it('finds each climb, pairs opposite headings and measures its rate inside U95', () => {
    expect(found.status).toBe('reduced');
    expect(found.segments).toHaveLength(pairs.length);
    expect(columnIn(found, 'climbs', 'partner')).toEqual([2, 1, 4, 3, 6, 5, 8, 7, 10, 9]);
    const tas = columnIn(found, 'climbs', 'true-airspeed');
    const u95 = columnIn(found, 'climbs', 'u95');
    columnIn(found, 'climbs', 'rate-observed').forEach((rate, i) => {
      expect(Math.abs((rate ?? 0) - constantPower(tas[i] ?? 0))).toBeLessThan((u95[i] ?? 0) + 0.03);
    });
    expect(quantityIn(found, 'best-rate-speed').value).not.toBeNull();
  });

  it('a climb without its reciprocal is flagged and wider', () => {
    const lone = reduce({ recording: climbLog({ climbs: pairs.slice(0, 1) }), airplane });
    expect(kindsOf(lone)).toContain('lone-run');
    expect(kindsOf(found)).not.toContain('lone-run');
    expect(columnIn(lone, 'climbs', 'partner')).toEqual([null]);
  });

  it('a short one is reduced and flagged', () => {
    const short = reduce({ recording: climbLog({ climbs: [{ cas: 48, heading: 0, seconds: 90 }] }), airplane });
    expect(short.status).toBe('reduced');
    expect(kindsOf(short)).toContain('data-rule');
  });

  it('a long one is cut into slabs whose rates stand beside it', () => {
    const long = reduce({ recording: climbLog({ climbs: [{ cas: 40, heading: 0, seconds: 400 }] }), airplane });
    const slabs = columnIn(long, 'check-climb', 'rate-observed');
    expect(slabs.length).toBeGreaterThanOrEqual(4);
    const [whole] = columnIn(long, 'climbs', 'rate-observed');
    for (const rate of slabs) expect(Math.abs((rate ?? 0) / (whole ?? 1) - 1)).toBeLessThan(0.06);
  });
});

describe('what cannot be used', () => {
  const byHand = (fromSeconds: number, toSeconds: number) => [
    { file: 'climbs.csv', fromSeconds, toSeconds, role: 'climb', reason: 'looked at' },
  ];
  const refused = (result: Result) => {
    expect(result.status).toBe('refused');
    return `${result.code}: ${result.reason}`;
  };

  it('airspeed that changed by 10 kt and more', () => {
    const recording = climbLog({ climbs: [{ cas: 36, heading: 0, speedGain: 7 }] });
    expect(refused(reduce({ recording, airplane, segments: byHand(62, 178) }))).toMatch(
      /no-segments.*airspeed changed/,
    );
    // The finder keeps the part within its band of airspeed, which is said.
    const part = reduce({ recording, airplane });
    expect(part.flags.find((one) => one.message.includes('airspeed changed'))?.kind).toBe('data-rule');
  });

  it('no outside air temperature, no airspeed, no altitude', () => {
    for (const without of ['outside-air-temperature', 'indicated-airspeed', 'pressure-altitude']) {
      const said = refused(reduce({ recording: climbLog({ climbs: pairs, without }), airplane }));
      expect(said).toContain('missing-channel');
      expect(said).toContain(without);
    }
    expect(refused(reduce({ airplane }))).toContain('missing-channel');
  });

  it('a gap in the middle, found or set by hand, with its length', () => {
    const recording = climbLog({ climbs: [{ cas: 40, heading: 0 }], silence: [60, 72] });
    expect(refused(reduce({ recording, airplane }))).toMatch(/a gap of 1[34] s/);
    expect(refused(reduce({ recording, airplane, segments: byHand(65, 175) }))).toMatch(/a gap of 1[34] s/);
  });

  it('a climb set by hand stands with its flag; a file that is not there is a problem', () => {
    const recording = climbLog({ climbs: [{ cas: 40, heading: 0 }] });
    expect(kindsOf(reduce({ recording, airplane, segments: byHand(75, 175) }))).toContain('set-by-hand');
    const elsewhere = [{ file: 'other.csv', fromSeconds: 0, toSeconds: 9, role: 'climb' }];
    expect(() => reduce({ recording, airplane, segments: elsewhere })).toThrow(InputProblem);
  });

  it('a mass far from the standard one without a measured span efficiency', () => {
    const recording = climbLog({ climbs: pairs.slice(0, 2) });
    const startMass = { value: 850, unit: 'kg' };
    const said = refused(reduce({ recording, airplane, options: { startMass } }));
    expect(said).toContain('span efficiency is not measured');
    const measured = reduce({
      recording,
      airplane,
      options: { startMass, spanEfficiency: { value: 0.8, u95: 0.05 } },
    });
    expect(measured.status).toBe('reduced');
  });
});
