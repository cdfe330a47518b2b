/** After a repeat, a no-go, a lost day: valid still, and as little changed as can be. */
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../../analysis/catalogue/index.ts';
import { checkOrder, planProgram, replan } from '../../../analysis/program/index.ts';
import { demo } from '../demo-airplanes.ts';

const ouzel = demo('ouzel');
const program = planProgram(ouzel);
const numberOf = (test: string) => program.outings.find((outing) => outing.tests.includes(test))?.number ?? 0;
const doneUpTo = (test: string) =>
  program.outings.filter((one) => one.number <= numberOf(test)).map((one) => one.number);

describe('a test to repeat', () => {
  it('joins the next outing that can take it', () => {
    const next = numberOf('stall-clean');
    const after = replan(
      ouzel,
      program,
      { kind: 'repeat', test: 'heat-vent-co-flight' },
      { doneOutings: doneUpTo('heat-vent-co-flight'), printed: [next] },
    );
    expect(checkOrder(after.program, CATALOGUE, ouzel)).toEqual([]);
    expect(after.program.outings).toHaveLength(program.outings.length);
    expect(after.changes).toHaveLength(2);
    expect(after.words).toContain('nothing else moves');
    // the sheets that lie ready are left alone
    expect(after.printAgain).toEqual([]);
    expect(after.program.outings[next - 1]?.tests).not.toContain('heat-vent-co-flight');
  });

  it('joins the very next one where no sheet is printed', () => {
    const done = { doneOutings: doneUpTo('heat-vent-co-flight') };
    const after = replan(ouzel, program, { kind: 'repeat', test: 'heat-vent-co-flight' }, done);
    expect(after.program.outings[numberOf('stall-clean') - 1]?.tests).toContain('heat-vent-co-flight');
  });

  it('gets an outing of its own where all that could take it is printed', () => {
    const printed = program.outings.map((one) => one.number);
    const done = doneUpTo('heat-vent-co-flight');
    const after = replan(
      ouzel,
      program,
      { kind: 'repeat', test: 'heat-vent-co-flight' },
      { doneOutings: done, printed },
    );
    expect(after.changes.map((one) => one.what)).toEqual(['changed', 'new']);
    expect(after.printAgain.map((one) => one.before)).toEqual([
      program.outings[numberOf('heat-vent-co-flight') - 1]?.title,
    ]);
  });

  it('gets an outing of its own when what waits for it is next', () => {
    const after = replan(
      ouzel,
      program,
      { kind: 'repeat', test: 'airspeed-calibration-first' },
      { doneOutings: doneUpTo('airspeed-calibration-first'), printed: [numberOf('stall-clean')] },
    );
    expect(checkOrder(after.program, CATALOGUE, ouzel)).toEqual([]);
    expect(after.program.outings).toHaveLength(program.outings.length + 1);
    const again = after.program.outings.findIndex((one) => one.tests.includes('airspeed-calibration-first'));
    expect(again).toBe(numberOf('airspeed-calibration-first'));
    expect(after.changes.map((one) => one.what)).toEqual(['changed', 'new']);
    expect(after.printAgain).toEqual([]);
    expect(after.renumbered).toHaveLength(1);
  });

  it('repeats one part of several', () => {
    const after = replan(
      ouzel,
      program,
      { kind: 'repeat', test: 'weight-expansion', part: 2 },
      { doneOutings: doneUpTo('weight-expansion') },
    );
    expect(checkOrder(after.program, CATALOGUE, ouzel)).toEqual([]);
  });

  it('says so when it is not in the program', () => {
    const after = replan(ouzel, program, { kind: 'repeat', test: 'spin-recovery' });
    expect(after.changes).toEqual([]);
    expect(after.words).toContain('not in this program');
  });
});

describe('a no-go', () => {
  it('lets the next outing go first that does not wait for it', () => {
    const after = replan(ouzel, program, { kind: 'no-go', outing: numberOf('flap-speed-limits') });
    expect(checkOrder(after.program, CATALOGUE, ouzel)).toEqual([]);
    expect(after.changes).toHaveLength(1);
    expect(after.changes[0]?.what).toBe('shifted');
  });

  it('leaves the plan alone where everything waits', () => {
    const after = replan(ouzel, program, { kind: 'no-go', outing: numberOf('second-flight-repeat') });
    expect(after.changes).toEqual([]);
    expect(after.program.outings.map((one) => one.parts)).toEqual(program.outings.map((one) => one.parts));
  });
});

describe('a lost day', () => {
  it('changes nothing', () => {
    const after = replan(ouzel, program, { kind: 'day-lost', outing: numberOf('first-flight') });
    expect(after.changes).toEqual([]);
    expect(after.program).toEqual(program);
  });
});
