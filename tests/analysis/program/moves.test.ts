/** The moves offered are those that the checker lets through, and the others come with a reason. */
import { describe, expect, it } from 'vitest';
import { type MoveBook, moveOuting, movesIn, moveTest, planProgram } from '../../../analysis/program/index.ts';
import { demo } from '../demo-airplanes.ts';

const ouzel = demo('ouzel');
const program = planProgram(ouzel);
const numberOf = (test: string) => program.outings.find((outing) => outing.tests.includes(test))?.number ?? 0;
const moves: MoveBook = movesIn(ouzel, program);

describe('moves of a test', () => {
  // every twentieth flown test and every fiftieth ground test, tried against the independent checker at every outing
  const sample = program.stages
    .flatMap((stage) => stage.tests)
    .filter((test, i) => (test.flightMinutes > 0 ? i % 20 === 0 : i % 50 === 0));

  it.each(sample.map((test) => [test.id]))('%s: offered and refused as the checker says', (test) => {
    const found = moves.movesOf(test);
    if (!found) throw new Error('no moves');
    const own = program.outings[found.from - 1];
    const others = program.outings.filter(
      (one) => one.stage === own?.stage && one.kind === own.kind && one.number !== found.from,
    );
    for (const outing of others) {
      const { allowed } = moveTest(ouzel, program, { test, to: outing.number });
      const offered = found.joins.includes(outing.number);
      const because = found.refused.find((one) => one.outing === outing.number)?.because ?? '';
      // what the tanks hold is taken more carefully here than by the checker
      const careful = because.includes('is the longest');
      expect([outing.number, offered]).toEqual([outing.number, careful ? false : allowed]);
      if (!offered) expect(because).toMatch(/\w/);
    }
    for (const to of found.own.slice(0, 6)) {
      expect(moveTest(ouzel, program, { test, to, newOuting: true }).allowed, `own before ${to}`).toBe(true);
    }
  });

  it('say the reason in titles, not in names of files', () => {
    const refused = moves.movesOf('stall-landing')?.refused ?? [];
    const flaps = refused.find((one) => one.outing === numberOf('flap-speed-limits'));
    expect(flaps?.because).toContain('“Flap operating speed check” needs what it gives');
    expect(refused.map((one) => one.because).join(' ')).not.toMatch(/\b[a-z]+-[a-z]+-[a-z]+\b(?!”)/);
  });

  it('are none for what is on record as done, and none into it', () => {
    const done = program.outings.filter((one) => one.number <= numberOf('slow-flight')).map((one) => one.number);
    const after = movesIn(ouzel, program, {}, done);
    expect(after.movesOf('slow-flight')).toMatchObject({ joins: [], own: [], refused: [] });
    const flaps = after.movesOf('propeller-speed-control-flight');
    expect(flaps?.joins.every((number) => !done.includes(number))).toBe(true);
    expect(flaps?.own.every((number) => number > Math.max(...done))).toBe(true);
  });
});

describe('turns of an outing', () => {
  it('are open where the checker lets it pass', () => {
    for (const { number, stage } of program.outings.filter((one) => one.kind === 'flight').slice(0, 30)) {
      const turns = moves.turnsOf(number);
      const neighbour = program.outings[number];
      if (neighbour?.stage !== stage) continue;
      expect([number, turns.later === null]).toEqual([number, moveOuting(ouzel, program, number, number + 1).allowed]);
    }
  });

  it('end with the stage and at what it waits for', () => {
    expect(moves.turnsOf(1).earlier).toBe('there is no outing beyond it');
    expect(moves.turnsOf(numberOf('oil-coolant-consumption-trend')).earlier).toBe('the stage begins here');
    expect(moves.turnsOf(numberOf('stall-turning')).earlier).toContain(
      '“Stalls in turns” waits for “Stalls with power”',
    );
  });
});
