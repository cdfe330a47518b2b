/**
 * 2,000 random configurations: every program valid by the checker, which knows nothing of how the order was made.
 * The figures printed are those of the run.
 */
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../../analysis/catalogue/index.ts';
import { checkOrder, planProgram } from '../../../analysis/program/index.ts';
import { demoJson } from '../demo-airplanes.ts';
import { randomAirplane, seeded } from './random-airplane.ts';

const RUNS = 2000;

describe('the order of random airplanes', () => {
  it(`is valid for ${RUNS} of ${RUNS}`, () => {
    const random = seeded(20310504);
    const bases = [demoJson('ouzel'), demoJson('wrenlet')];
    const flights: number[] = [];
    const tests: number[] = [];
    for (let run = 0; run < RUNS; run += 1) {
      const airplane = randomAirplane(bases[run % 2], random);
      const program = planProgram(airplane);
      const violations = checkOrder(program, CATALOGUE, airplane);
      expect(violations, `run ${run}`).toEqual([]);
      flights.push(program.hours.flights);
      tests.push(program.order.length);
    }
    const span = (list: number[]) => `${Math.min(...list)} to ${Math.max(...list)}`;
    console.log(`${RUNS} programs valid; tests ${span(tests)}, flights ${span(flights)}`);
    expect(Math.min(...tests)).toBeLessThan(110);
    expect(Math.max(...tests)).toBeGreaterThan(135);
  }, 240_000);
});
