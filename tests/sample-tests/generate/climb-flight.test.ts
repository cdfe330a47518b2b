import { describe, expect, it } from 'vitest';
import { fromSi, toSi } from '../../../analysis/units/index.ts';
import { climbFlight } from '../../../sample-tests/generate/climb-flight.ts';

const flight = climbFlight();

describe('climb flight of the samples', () => {
  it('tells the story: five speeds, two bands, reciprocal headings, a cooling climb that peaks on the way', () => {
    const { runs, cooling } = flight.truth;
    expect(runs).toHaveLength(20);
    for (let i = 0; i < runs.length; i += 2) {
      const [out, back] = [runs[i], runs[i + 1]];
      const turned = Math.abs((out?.heading ?? 0) - (back?.heading ?? 0));
      expect(Math.abs(turned - Math.PI)).toBeLessThan(toSi(6, 'deg'));
      expect(Math.abs((out?.ias ?? 0) - (back?.ias ?? 0))).toBeLessThan(toSi(1.5, 'kt'));
    }
    expect(cooling.coolantPeakSeconds).toBeGreaterThan(cooling.fromSeconds + 30);
    expect(cooling.coolantPeakSeconds).toBeLessThan(cooling.toSeconds - 120);
    expect(fromSi(cooling.coolantPeak, 'degC')).toBeGreaterThan(94);
    const hottest = Math.max(...flight.states.map((s) => fromSi(s.coolant, 'degC')));
    expect(hottest).toBeLessThan(105);
  });

  it('the best rate lies inside the speeds flown', () => {
    const flown = flight.truth.runs.map((run) => run.cas);
    for (const best of flight.truth.best) {
      expect(best.bestRateSpeed).toBeGreaterThan(Math.min(...flown) + toSi(5, 'kt'));
      expect(best.bestRateSpeed).toBeLessThan(Math.max(...flown) - toSi(5, 'kt'));
      expect(best.bestAngleSpeed).toBeLessThan(best.bestRateSpeed);
    }
  });

  it('without gusts and wander the energy rate of a reciprocal pair is the excess power, within 0.3 %', () => {
    const still = climbFlight({ noise: 0 });
    const energyRates = still.truth.runs.map((run) => {
      const rows = still.states.filter((s) => s.t >= run.fromSeconds && s.t <= run.toSeconds);
      const gained = (rows.at(-1)?.tas ?? 0) - (rows[0]?.tas ?? 0);
      const rate = run.rateObserved + (run.tas * gained) / (run.toSeconds - run.fromSeconds) / toSi(1, 'g0');
      return rate / run.specificExcessPower;
    });
    for (let i = 0; i < energyRates.length; i += 2) {
      const pair = ((energyRates[i] ?? 0) + (energyRates[i + 1] ?? 0)) / 2;
      // Floor: the run's mean density and speed stand for a rate that falls by a tenth on the way up.
      expect(Math.abs(pair - 1), `pair ${i / 2}`).toBeLessThan(0.003);
    }
  });

  it('reciprocal headings see the wind gradient with opposite sign', () => {
    const runs = climbFlight({ noise: 0 }).truth.runs;
    const differences = runs
      .filter((_, i) => i % 2 === 0)
      .map((run, k) => {
        const back = runs[2 * k + 1];
        return run.rateObserved / run.specificExcessPower - (back ? back.rateObserved / back.specificExcessPower : 0);
      });
    const signs = new Set(differences.map((d) => Math.sign(d)));
    expect(signs.size).toBe(1);
  });
});
