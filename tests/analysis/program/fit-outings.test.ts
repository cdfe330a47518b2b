/** An arrangement kept through a change of the airplane: valid still, what may stand stands, what is done stays. */
import { describe, expect, it } from 'vitest';
import { CATALOGUE, readOwnTests } from '../../../analysis/catalogue/index.ts';
import {
  arrangementOf,
  checkOrder,
  compareArrangements,
  moveTest,
  planProgram,
} from '../../../analysis/program/index.ts';
import { demo, demoJson } from '../demo-airplanes.ts';
import { randomAirplane, seeded } from './random-airplane.ts';

const RUNS = 60;

describe('an arrangement', () => {
  it.each(['ouzel', 'wrenlet'] as const)('of %s as made fits itself, part for part', (name) => {
    const airplane = demo(name);
    const program = planProgram(airplane);
    const again = planProgram(airplane, { arrangement: arrangementOf(program) });
    expect(arrangementOf(again)).toEqual(arrangementOf(program));
  });

  it('is kept when moved by hand', () => {
    const ouzel = demo('ouzel');
    const program = planProgram(ouzel);
    const to = program.outings.find((one) => one.tests.includes('flap-speed-limits'))?.number ?? 0;
    const moved = moveTest(ouzel, program, { test: 'canopy-flight-check', to });
    if (!moved.allowed) throw new Error(moved.reasons.join('\n'));
    const again = planProgram(ouzel, { arrangement: arrangementOf(moved.program) });
    expect(arrangementOf(again)).toEqual(arrangementOf(moved.program));
  });

  it(`stays valid through ${RUNS} changes of configuration, and most of it stands`, () => {
    const random = seeded(20310511);
    const bases = [demoJson('ouzel'), demoJson('wrenlet')];
    const shares: number[] = [];
    for (let run = 0; run < RUNS; run += 1) {
      const [before, after] = [randomAirplane(bases[run % 2], random), randomAirplane(bases[run % 2], random)];
      const program = planProgram(before);
      const fitted = planProgram(after, { arrangement: arrangementOf(program) });
      expect(checkOrder(fitted, CATALOGUE, after), `run ${run}`).toEqual([]);
      const both = fitted.outings.filter((one) => one.tests.every((test) => program.order.includes(test)));
      const kept = new Set(program.outings.map((one) => one.tests.join(' ')));
      shares.push(both.filter((one) => kept.has(one.tests.join(' '))).length / both.length);
    }
    shares.sort((a, b) => a - b);
    // two airplanes drawn anew differ in about a third of their systems
    expect(shares[RUNS / 2]).toBeGreaterThan(0.6);
  });

  it('takes in a test of one’s own and moves nothing else', () => {
    const ouzel = demo('ouzel');
    const program = planProgram(ouzel);
    const { tests: ownTests, problems } = readOwnTests([
      {
        id: 'own-pump-noise',
        title: 'Pump noise',
        stage: 'systems-flight',
        system: 'gear',
        purpose: 'Know the sound of a healthy pump.',
        needs: ['gear-first-retraction'],
        pass: [{ text: 'Same sound each time', source: { says: 'own choice', mark: 'practice' } }],
        stop: ['any new sound'],
        flightMinutes: 10,
        blocks: 'once',
      },
    ]);
    expect(problems).toEqual([]);
    const fitted = planProgram(ouzel, { ownTests, arrangement: arrangementOf(program) });
    expect(checkOrder(fitted, [...CATALOGUE, ...ownTests], ouzel)).toEqual([]);
    expect(fitted.outings).toHaveLength(program.outings.length);
    expect(compareArrangements(program, fitted)).toHaveLength(1);
    // flown at any load, it rides along from the start too
    const fresh = planProgram(ouzel, { ownTests });
    expect(checkOrder(fresh, [...CATALOGUE, ...ownTests], ouzel)).toEqual([]);
    expect(fresh.hours.flights).toBe(program.hours.flights);
  });

  it('lets a test left out hand on what it waited for, and keeps it in the evidence of its gate', () => {
    const ouzel = demo('ouzel');
    const leftOut = new Map([['stall-power-on', 'engine maker advises against it']]);
    const program = planProgram(ouzel, { leftOut });
    expect(checkOrder(program, CATALOGUE, ouzel, 100, new Set(leftOut.keys()))).toEqual([]);
    expect(program.order).not.toContain('stall-power-on');
    expect(program.notApplicable.find((one) => one.id === 'stall-power-on')).toMatchObject({
      by: 'person',
      reason: 'Left out: engine maker advises against it',
    });
    const tests = program.stages.flatMap((stage) => stage.tests);
    expect(tests.find((one) => one.id === 'stall-turning')?.needs).toContain('stall-landing');
    expect(program.gates.some((gate) => gate.evidence.some((one) => one.test === 'stall-power-on'))).toBe(true);
  });
});
