/** Programs of the two demo airplanes: complete, explained, deterministic, with their flights and fuel. */
import { describe, expect, it } from 'vitest';
import { readOwnTests } from '../../../analysis/catalogue/index.ts';
import { type Outing, type Program, planProgram } from '../../../analysis/program/index.ts';
import { demo } from '../demo-airplanes.ts';

const programs = { ouzel: planProgram(demo('ouzel')), wrenlet: planProgram(demo('wrenlet')) };
const flightsOf = (program: Program): Outing[] => program.outings.filter((outing) => outing.kind === 'flight');

describe.each(['ouzel', 'wrenlet'] as const)('the program of %s', (name) => {
  const program = programs[name];
  const tests = program.stages.flatMap((stage) => stage.tests);

  it('is the same every time, and plain JSON', () => {
    expect(planProgram(demo(name))).toEqual(program);
    expect(JSON.parse(JSON.stringify(program))).toEqual(program);
  });

  it('says of each test why it is in, why it stands here, what it needs and what it unlocks', () => {
    for (const test of tests) {
      expect(test.because, test.id).toMatch(/^(Every airplane needs it\.|It is in because the airplane .*\)\.)$/);
      // one sentence, whole and plain: no doubled mark, no code, no count that does not agree
      expect(test.why, test.id).toMatch(/^[A-Z][^.]{20,280}\.$/);
      expect(test.why, test.id).not.toMatch(
        / {2}|\(\)|undefined|null|NaN|[;,] ?[;,.]|\b1 (later )?tests\b|\b1 later test wait\b/,
      );
      expect(test.needs.length > 0 || /^(Nothing has to come before it|It comes first)/.test(test.why), test.id).toBe(
        true,
      );
      for (const need of test.needs) expect(tests.find((one) => one.id === need)?.unlocks, need).toContain(test.id);
    }
  });

  it('says of what is left out why, with the field', () => {
    for (const one of program.notApplicable) {
      expect(one.reason).toMatch(/^It does not apply because the airplane .*\)\.$/);
      expect(one.paths.length).toBeGreaterThan(0);
    }
    expect(program.notApplicable.length + tests.length).toBe(149);
  });

  it('has at most one new thing in a flight and keeps each inside its time and its fuel', () => {
    for (const flight of flightsOf(program)) {
      const fresh = flight.tests.filter((id) => tests.find((test) => test.id === id)?.opens);
      expect(fresh.length, flight.title).toBeLessThanOrEqual(1);
      expect(flight.minutesTotal, flight.title).toBeLessThanOrEqual(100);
      expect(flight.fuel, flight.title).not.toBeNull();
      if (flight.fuel) expect(flight.fuel.burn + flight.fuel.reserve).toBeLessThanOrEqual(flight.fuel.usable);
    }
  });

  it('loads every flight inside the envelope, uncertainty included, or says what cannot be reached', () => {
    for (const flight of flightsOf(program)) {
      expect(flight.loading?.inside, flight.title).toBe(true);
      expect(flight.loading?.takeoff?.mass ?? 0).toBeGreaterThan(
        flight.loading?.landing?.mass ?? Number.POSITIVE_INFINITY,
      );
    }
  });

  it('starts with the ground and ends with the entry', () => {
    expect(program.order[0]).toBe('open-inspection');
    expect(program.order.indexOf('logbook-statement')).toBeGreaterThan(program.order.indexOf('task-list-review'));
    expect(program.outings.map((outing) => outing.number)).toEqual(program.outings.map((_, i) => i + 1));
  });

  it('has its gates, each with evidence of this airplane', () => {
    expect(program.gates.map((gate) => gate.id)).toEqual(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H']);
    expect(program.operatingLimitations).toContain('Day, visual conditions, pilot only');
    for (const gate of program.gates) for (const one of gate.evidence) expect(program.order).toContain(one.test);
  });
});

describe('the two airplanes', () => {
  it('need as much as they carry', () => {
    expect(programs.ouzel.order).toHaveLength(142);
    expect(programs.wrenlet.order).toHaveLength(104);
    expect(programs.ouzel.hours).toMatchObject({ kind: 'fixed-hours', assigned: 40, onCondition: 33.9 });
    expect(programs.wrenlet.hours).toMatchObject({ kind: 'fixed-hours', assigned: 25 });
  });

  it('Wrenlet has nothing about gear, coolant, transfer, lanes or autopilot', () => {
    const tests = programs.wrenlet.stages.flatMap((stage) => stage.tests);
    const said = tests.flatMap((test) => [
      test.title,
      test.purpose,
      test.why,
      ...test.missing.map((one) => one.meaning),
    ]);
    const outings = programs.wrenlet.outings.flatMap((outing) => [outing.title, outing.why]);
    const wrong = [...said, ...outings].filter((words) =>
      /retract|coolant|transfer|\blanes?\b|autopilot|gear-|exit door|\bfan\b|canopy|\bflaps?\b/i.test(words),
    );
    // the one number that serves both kinds of cooling names both
    expect(wrong.filter((words) => !words.startsWith('highest coolant (or cylinder head)'))).toEqual([]);
  });

  it('keep the first flights as the design has them', () => {
    const ouzel = programs.ouzel;
    const first = flightsOf(ouzel)
      .slice(0, 4)
      .map((flight) => flight.tests);
    expect(first).toEqual([
      ['first-flight'],
      ['second-flight-repeat'],
      ['third-flight-engine'],
      ['tank-switching-flight'],
    ]);
  });

  it('raise weight step by step and move the CG aft step by step', () => {
    for (const program of [programs.ouzel, programs.wrenlet]) {
      const steps = (test: string) => flightsOf(program).filter((flight) => flight.tests.includes(test));
      const masses = steps('weight-expansion').map((flight) => flight.loading?.takeoff?.mass ?? 0);
      expect(masses).toHaveLength(5);
      expect([...masses].sort((a, b) => a - b)).toEqual(masses);
      const arms = steps('aft-cg-expansion').map((flight) => flight.loading?.takeoff?.arm ?? 0);
      expect([...arms].sort((a, b) => a - b)).toEqual(arms);
    }
  });
});

describe('what cannot be worked out', () => {
  it('is said, never guessed', () => {
    const bare = planProgram(
      demo('ouzel', { engine: { takeoffFuelFlow: undefined, ratedPower: undefined }, loading: { empty: undefined } }),
    );
    const flight = flightsOf(bare)[0];
    expect(flight?.fuel).toBeNull();
    expect(flight?.loading).toBeNull();
    expect(flight?.remarks[0]).toContain('Fuel not worked out');
  });

  it('names what weight and balance lacks', () => {
    const flight = flightsOf(planProgram(demo('ouzel', { loading: { empty: undefined } })))[0];
    expect(flight?.loading?.takeoff).toBeNull();
    expect(flight?.remarks.join(' ')).toContain('empty weight and arm missing');
  });

  it('takes the burn from the rated power where it is not stated', () => {
    const flight = flightsOf(planProgram(demo('ouzel', { engine: { takeoffFuelFlow: undefined } })))[0];
    expect(flight?.fuel?.words).toContain('0.55 lb per hp-hour');
  });
});

describe('own tests', () => {
  it('are placed like any other', () => {
    const { tests } = readOwnTests([
      {
        id: 'own-door-rattle',
        title: 'Door rattle',
        stage: 'envelope',
        system: 'cabin',
        purpose: 'Find where the door rattles.',
        needs: ['airspeed-calibration-first'],
        steps: ['Listen at each speed.'],
        pass: [{ text: 'No rattle', source: { says: 'own choice', mark: 'practice' } }],
        stop: ['the door moves'],
        flightMinutes: 10,
        blocks: 'once',
        planning: { load: 'light-forward' },
      },
    ]);
    const program = planProgram(demo('ouzel'), { ownTests: tests });
    const own = program.stages.flatMap((stage) => stage.tests).find((test) => test.id === 'own-door-rattle');
    expect(own).toMatchObject({ own: true, stage: 'envelope' });
    expect(own?.position ?? 0).toBeGreaterThan(program.order.indexOf('airspeed-calibration-first') + 1);
    expect(program.hours.flights).toBe(programs.ouzel.hours.flights);
  });
});
