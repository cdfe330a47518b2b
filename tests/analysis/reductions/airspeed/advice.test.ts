import { Matrix, pseudoInverse } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { airspeedCalibrationOf, calibrate } from '../../../../analysis/models/index.ts';
import { airspeed } from '../../../../analysis/reductions/airspeed/index.ts';
import { InputProblem } from '../../../../analysis/remarks/index.ts';
import { box, CALM_DAY, cardPoints, columnIn, DEGREE, exactAirplane, KNOT, reduce } from './card.ts';

const airplane = exactAirplane();
const off = [0.3, -0.2, 0.25, -0.35, 0.1, 0.2, -0.3, 0.15, -0.1, 0.05, -0.25, 0.3];
// One speed is held by three legs, on one side: that is where a leg is worth most.
const legs = [
  ...box(40, [0, 90, 180, 270], 0, off),
  ...box(48, [20, 110, 200, 290], 10, off.slice(4)),
  ...box(56, [40, 80, 130], 20, off.slice(8)),
];
const result = reduce({ points: cardPoints(legs), airplane });

describe('the next leg', () => {
  it('is advised at the speed that is known worst, and flying it does what was promised', () => {
    const advised = columnIn(result, 'next-leg', 'indicated-airspeed')[0] ?? 0;
    expect(advised).toBeCloseTo(56, 6);
    const heading = (columnIn(result, 'next-leg', 'heading-true')[0] ?? 0) / DEGREE;
    const now = columnIn(result, 'next-leg', 'largest-u95-now')[0] ?? 0;
    const then = columnIn(result, 'next-leg', 'largest-u95-then')[0] ?? 0;
    expect(now).toBeCloseTo(Math.max(...columnIn(result, 'position-error', 'u95')), 9);
    const flown = reduce({ points: cardPoints([...legs, { ias: 56, heading, minutes: 25, off: 0.1 }]), airplane });
    const got = Math.max(...columnIn(flown, 'position-error', 'u95'));
    expect(got).toBeLessThan(now);
    expect(Math.abs(got / then - 1)).toBeLessThan(0.15); // the leg's own residual is not known beforehand
  });

  it('covariance by adding a row is the inverse of the larger problem', () => {
    const J = new Matrix([
      [1, 0.2, 1],
      [-0.4, 1, 1],
      [-1, 0.1, 1],
      [0.3, -1, 1],
    ]);
    const row = [0.7, 0.7, 1];
    const larger = new Matrix([...J.to2DArray(), row]);
    const direct = pseudoInverse(larger.transpose().mmul(larger)).get(2, 2);
    const C = pseudoInverse(J.transpose().mmul(J));
    const j = Matrix.columnVector(row);
    const Cj = C.mmul(j);
    const changed = C.get(2, 2) - Cj.get(2, 0) ** 2 / (1 + j.transpose().mmul(Cj).get(0, 0));
    expect(changed).toBeCloseTo(direct, 12);
  });
});

describe('prediction', () => {
  const at = (ias: number, more: Record<string, unknown> = {}) =>
    airspeed.predict?.(result, { 'indicated-airspeed': { value: ias, unit: 'm/s' }, ...more });

  it('is for the next leg: wider than the curve by the scatter of one', () => {
    const calibration = airspeedCalibrationOf(result.model);
    if (!calibration) throw new Error('no calibration');
    const predicted = at(48)?.quantities[0];
    const curve = calibrate(calibration, 48);
    expect(predicted?.value).toBeCloseTo(curve.cas, 9);
    expect((predicted?.high ?? 0) - (predicted?.value ?? 0)).toBeGreaterThan(2 * curve.u95);
    expect(Math.abs((predicted?.value ?? 0) - 48 - CALM_DAY.correction(48))).toBeLessThan(0.3);
  });

  it('gives true airspeed where height and temperature are given', () => {
    const predicted = at(48, {
      'pressure-altitude': { value: 1200, unit: 'm' },
      'outside-air-temperature': { value: 10, unit: 'degC' },
    });
    const tas = predicted?.quantities.find((one) => one.name === 'true-airspeed');
    expect(tas?.value).toBeGreaterThan(51);
    expect(tas?.value).toBeLessThan(53);
  });

  it('is refused beyond what was flown, at a flap setting not flown, and without a calibration', () => {
    expect(at(70)).toMatchObject({ status: 'refused' });
    expect(at(70)?.reason).toContain('airspeeds flown');
    expect(at(48, { flaps: 'landing' })?.reason).toContain('landing');
    expect(
      airspeed.predict?.({ ...result, model: {} }, { 'indicated-airspeed': { value: 48, unit: 'm/s' } }),
    ).toMatchObject({
      status: 'refused',
    });
    expect(() => airspeed.predict?.(result, { speed: 48 })).toThrow(InputProblem);
  });
});

describe('the method note', () => {
  it('has a worked example whose figures are the product’s own', () => {
    const gray = reduce({
      points: {
        kind: 'airspeed',
        points: [
          [140, 192],
          [112, 283],
          [120, 20],
        ].map(([speed, track]) => ({
          'ground-speed': { value: speed, unit: 'kt' },
          'track-true': { value: track, unit: 'deg' },
        })),
      },
    });
    const text = airspeed.note.workedExample.lines.join(' ');
    const value = (name: string) => gray.quantities.find((one) => one.name === name);
    expect(text).toContain(`${((value('true-airspeed')?.value ?? 0) / KNOT).toFixed(1)} kt`);
    expect(text).toContain(`${((value('wind-speed')?.value ?? 0) / KNOT).toFixed(1)} kt`);
    expect(text).toContain(`${((value('wind-direction')?.value ?? 0) / DEGREE).toFixed(0)}°`);
    const u95 = (value('true-airspeed')?.u95 ?? 0) / KNOT;
    expect(Math.abs(u95 - Number(/U95 is about ([\d.]+) kt/.exec(text)?.[1]))).toBeLessThan(0.05);
    expect(gray.provenance.methodVersion).toBe(airspeed.note.versions[0]?.version);
  });
});
