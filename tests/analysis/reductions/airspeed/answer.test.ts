import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { box, CALM_DAY, cardPoints, columnIn, exactAirplane, flagsOf, KNOT, reduce, tableIn } from './card.ts';

const airplane = exactAirplane();
const speeds = [36, 42, 48, 54, 60];
const full = speeds.flatMap((ias, j) => box(ias, [10, 100, 190, 280], 10 * j));

describe('legs without error', () => {
  const result = reduce({ points: cardPoints(full), airplane });

  it('give the correction, calibrated airspeed and wind back to rounding', () => {
    columnIn(result, 'position-error', 'correction').forEach((value, j) => {
      expect(value).toBeCloseTo(CALM_DAY.correction(speeds[j] ?? 0), 5);
    });
    const wind = result.quantities.find((one) => one.name === 'wind-speed');
    expect(wind?.value).toBeCloseTo(Math.hypot(4, 6), 5);
    const from = result.quantities.find((one) => one.name === 'wind-direction');
    expect(from?.value).toBeCloseTo(Math.atan2(6, -4), 6); // moves to 4 north, 6 west: comes from the south-east
  });

  it('say what stands in every column', () => {
    expect(
      tableIn(result, 'position-error')
        .columns.slice(0, 5)
        .map((one) => one.name),
    ).toEqual(['indicated-airspeed', 'calibrated-airspeed', 'correction', 'u95', 'legs']);
    expect(columnIn(result, 'position-error', 'legs')).toEqual([4, 4, 4, 4, 4]);
  });

  it('need not be in order, and may be flown at any time of day', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray(full, { minLength: full.length }),
        fc.integer({ min: 0, max: 600 }),
        (legs, later) => {
          const again = reduce({
            points: cardPoints(legs.map((leg) => ({ ...leg, minutes: (leg.minutes ?? 0) + later }))),
            airplane,
          });
          columnIn(again, 'position-error', 'correction').forEach((value, j) => {
            expect(value).toBeCloseTo(columnIn(result, 'position-error', 'correction')[j] ?? 0, 7);
          });
        },
      ),
      { numRuns: 5 },
    );
  });

  it('are no better for being flown exactly at speed: each leg has its own airspeed', () => {
    const off = full.map((leg, i) => ({ ...leg, ias: leg.ias + (i % 2 === 0 ? 0.8 : -0.6) * KNOT }));
    const again = reduce({ points: cardPoints(off), airplane });
    expect(again.quantities.find((one) => one.name === 'leg-scatter')?.value).toBeLessThan(0.02);
  });
});

describe('legs that differ', () => {
  const scatter = [
    0.3, -0.2, 0.25, -0.35, 0.1, 0.2, -0.3, 0.15, -0.1, 0.05, -0.25, 0.3, 0.2, -0.15, -0.3, 0.1, 0, 0.3, -0.2, -0.1,
  ];
  const scattered = (by: number) =>
    reduce({ points: cardPoints(full.map((leg, i) => ({ ...leg, off: by * (scatter[i] ?? 0) }))), airplane });

  it('widen U95 as much as they differ, once the prior is outweighed', () => {
    const one = columnIn(scattered(1), 'position-error', 'u95');
    const two = columnIn(scattered(2), 'position-error', 'u95');
    two.forEach((value, j) => {
      expect(value / (one[j] ?? 1)).toBeGreaterThan(1.6);
      expect(value / (one[j] ?? 1)).toBeLessThan(2.05);
    });
  });

  it('show residuals that add to nothing along each unknown', () => {
    const residuals = columnIn(scattered(1), 'legs', 'residual');
    for (let j = 0; j < speeds.length; j += 1) {
      const sum = residuals.slice(4 * j, 4 * j + 4).reduce((total, r) => total + r, 0);
      expect(Math.abs(sum)).toBeLessThan(1e-6); // the normal equation of the speed's own unknown, slopes alike
    }
  });

  it('one that stands apart is shown and asked about, and still used', () => {
    const odd = full.map((leg, i) => ({ ...leg, off: 0.3 * (scatter[i] ?? 0) + (i === 6 ? 3 : 0) }));
    const result = reduce({ points: cardPoints(odd), airplane });
    expect(flagsOf(result, 'outlier-leg')).toHaveLength(1);
    expect(flagsOf(result, 'outlier-leg')[0]).toContain('leg 7');
    expect(columnIn(result, 'position-error', 'legs')).toEqual([4, 4, 4, 4, 4]);
    const plain = reduce({
      points: cardPoints(full.map((leg, i) => ({ ...leg, off: 0.3 * (scatter[i] ?? 0) }))),
      airplane,
    });
    expect(flagsOf(plain, 'outlier-leg')).toEqual([]);
  });
});

describe('three legs at one speed', () => {
  const result = reduce({ points: cardPoints(box(45, [0, 120, 240])), airplane });

  it('are solved exactly, with the doubt of an expectation and a plain word that repeatability is not shown', () => {
    expect(columnIn(result, 'position-error', 'correction')[0]).toBeCloseTo(1.2, 5);
    expect(flagsOf(result, 'assumed-repeatability')[0]).toContain('repeatability is not shown');
    expect(flagsOf(result, 'wind-drift-not-separable')).toHaveLength(1);
    const u95 = (columnIn(result, 'position-error', 'u95')[0] ?? 0) / KNOT;
    expect(u95).toBeGreaterThan(2); // about 2.6 kt at good geometry was found in simulation
    expect(u95).toBeLessThan(3);
    expect(columnIn(result, 'position-error', 'dilution')[0]).toBeCloseTo(1 / Math.sqrt(3), 2);
  });
});

describe('a flap setting', () => {
  it('has corrections and a curve of its own, and shares the wind', () => {
    const truth = { ...CALM_DAY, correction: (ias: number) => (ias < 40 ? -1 : 1) };
    const legs = [
      ...[44, 50, 56].flatMap((ias, j) => box(ias, [10, 100, 190, 280], 10 * j)),
      ...[32, 36].flatMap((ias, j) =>
        box(ias, [30, 150, 270], 40 + 10 * j).map((leg) => ({ ...leg, flaps: 'landing' })),
      ),
    ];
    const result = reduce({ points: cardPoints(legs, truth), airplane });
    const flaps = tableIn(result, 'position-error').rows.map((row) => row[5]);
    expect(flaps).toEqual(['up', 'up', 'up', 'landing', 'landing']);
    columnIn(result, 'position-error', 'correction').forEach((value, j) => {
      expect(value).toBeCloseTo(j < 3 ? 1 : -1, 4);
    });
    const settings = new Set(tableIn(result, 'airspeed-curve').rows.map((row) => row[0]));
    expect([...settings]).toEqual(['up', 'landing']);
  });
});

describe('static source', () => {
  it('that senses too much makes airspeed and altitude read low: both corrections are to be added', () => {
    const truth = { ...CALM_DAY, correction: () => 2 };
    const result = reduce({ points: cardPoints(full, truth), airplane });
    for (const row of tableIn(result, 'airspeed-curve').rows) {
      expect(Number(row[5])).toBeGreaterThan(0);
      expect(Number(row[6])).toBeGreaterThan(0);
      expect(Number(row[6])).toBeGreaterThan(Number(row[7])); // thinner air aloft: more metres for the same pressure
    }
  });

  it('of its own, not shared with the altimeter, leaves the altimeter’s pressure alone and carries a doubt for it', () => {
    const own = reduce({ points: cardPoints(full), airplane: exactAirplane({ commonStatic: false }) });
    const sensors = tableIn(own, 'uncertainty-parts').columns.map((one) => one.name);
    expect(sensors).toContain('altimeter static source');
  });
});

describe('beside the former rules', () => {
  const outcomes = (result: ReturnType<typeof reduce>, rule: string) =>
    result.comparisons.filter((one) => one.what.includes(rule)).map((one) => one.outcome);

  it('3 % or 5 kt: corrections within are shown, larger ones exceeded, as a reference', () => {
    const small = reduce({ points: cardPoints(full), airplane });
    expect(outcomes(small, '23.1323(b)')).toEqual(Array(5).fill('shown'));
    expect(small.comparisons.every((one) => one.reference)).toBe(true);
    const large = reduce({ points: cardPoints(full, { ...CALM_DAY, correction: () => 4 }), airplane });
    expect(outcomes(large, '23.1323(b)')).toEqual(Array(5).fill('exceeded'));
  });

  it('30 ft per 100 kt of altitude is about 3.3 kt at 100 kt: tighter than 5 kt', () => {
    const truth = { ...CALM_DAY, correction: () => 2.1 }; // 4.1 kt
    const result = reduce({ points: cardPoints(full, truth), airplane });
    expect(outcomes(result, '23.1323(b)')[3]).toBe('shown');
    expect(outcomes(result, '23.1325(e)')[3]).toBe('exceeded'); // 54 m/s is 105 kt
  });
});

describe('a measured course flown to and fro on its heading', () => {
  const run = (heading: number, seconds: number, ias: number) => ({
    'course-true': { value: heading, unit: 'deg' },
    'course-length': { value: 3000, unit: 'm' },
    'course-time': { value: seconds, unit: 's' },
    'indicated-airspeed': { value: ias, unit: 'm/s' },
    'pressure-altitude': { value: 0, unit: 'm' },
    'outside-air-temperature': { value: 15, unit: 'degC' },
  });
  // Sea level, standard day: true and calibrated airspeed are one. 50 m/s through the air, 5 m/s along the course.
  const points = [run(70, 3000 / 55, 48), run(250, 3000 / 45, 48)];
  const result = reduce({ points: { kind: 'airspeed', points }, airplane });

  it('gives the correction, the wind along it, and nothing across', () => {
    expect(columnIn(result, 'position-error', 'correction')[0]).toBeCloseTo(2, 1);
    const wind = result.quantities.find((one) => one.name === 'wind-speed');
    expect(wind?.value).toBeNull();
    const along = wind?.conditions['along-course'];
    expect(typeof along === 'object' ? along.value : 0).toBeCloseTo(5, 6);
  });

  it('carries the doubt of its length, common to all runs', () => {
    const parts = tableIn(result, 'uncertainty-parts');
    const at = parts.columns.findIndex((one) => one.name === 'course length');
    expect(Number(parts.rows[0]?.[at])).toBeCloseTo(0.005 * 50, 1);
    const exact = points.map((one) => ({ ...one, 'course-length': { ...one['course-length'], u95: 0 } }));
    const sure = reduce({ points: { kind: 'airspeed', points: exact }, airplane });
    expect(tableIn(sure, 'uncertainty-parts').columns.map((one) => one.name)).not.toContain('course length');
  });

  it('one way only is refused', () => {
    const oneWay = [run(70, 54, 48), run(70, 55, 48), run(70, 54, 48)];
    expect(reduce({ points: { kind: 'airspeed', points: oneWay }, airplane })).toMatchObject({ code: 'bad-geometry' });
  });
});
