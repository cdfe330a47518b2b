/** Hours, ledger, gates and progress: the bookkeeping round a program. */
import { describe, expect, it } from 'vitest';
import { testOf } from '../../../analysis/catalogue/index.ts';
import {
  askGate,
  GATES,
  gateHolding,
  hoursOf,
  ledgerOf,
  planProgram,
  progressOf,
  type TestRecord,
  type TestState,
} from '../../../analysis/program/index.ts';
import { demo } from '../demo-airplanes.ts';

const ouzel = demo('ouzel');
const program = planProgram(ouzel);

describe('hours', () => {
  it('compare what is planned with what is assigned', () => {
    const { hours, outings } = program;
    const minutes = outings.filter((one) => one.kind === 'flight').reduce((sum, one) => sum + one.minutesTotal, 0);
    expect(Math.abs(hours.planned - minutes / 60)).toBeLessThanOrEqual(0.05);
    expect(hours.difference).toBeCloseTo(hours.planned - 40, 1);
    expect(hours.words).toContain('the least, not the plan');
  });

  it('leave room where more is assigned than planned', () => {
    const generous = demo('ouzel', { plan: { program: { hours: 100 } } });
    expect(planProgram(generous).hours.words).toContain('remain for repeats');
  });

  it('follow a task list instead, and say which of its tests are missing', () => {
    const tasks = [{ title: 'Stalls', tests: ['stall-clean', 'spin-recovery'] }];
    const listed = demo('ouzel', { plan: { program: undefined } });
    const airplane = { ...listed, plan: { ...listed.plan, program: { kind: 'task-list' as const, tasks } } };
    const hours = hoursOf(
      airplane,
      program.stages.flatMap((stage) => stage.tests),
      program.outings,
    );
    expect(hours).toMatchObject({ kind: 'task-list', assigned: null, difference: null });
    expect(hours.tasks).toEqual([
      { title: 'Stalls', tests: ['stall-clean', 'spin-recovery'], missing: ['spin-recovery'] },
    ]);
  });

  it('are counted down in the ledger', () => {
    const ledger = ledgerOf(
      [
        { minutes: 42, landings: 1 },
        { minutes: 66, landings: 3 },
      ],
      program.hours,
    );
    expect(ledger).toMatchObject({ flights: 2, hours: 1.8, landings: 4, remaining: 38.2 });
    const flown = ledgerOf([{ minutes: 3000, landings: 90 }], program.hours);
    expect(flown.remaining).toBe(0);
    expect(flown.words).toContain('not thereby done');
    expect(ledgerOf([], { ...program.hours, kind: 'task-list', assigned: null }).remaining).toBeNull();
  });
});

describe('gates', () => {
  it('name tests that exist', () => {
    const named = GATES.flatMap((gate) => [...gate.holds, ...gate.evidence.flatMap((one) => one.tests)]);
    expect(named.filter((id) => testOf(id) === undefined)).toEqual([]);
  });

  it('ask only for what this airplane has', () => {
    const wrenlet = planProgram(demo('wrenlet'));
    const evidence = wrenlet.gates.flatMap((gate) => gate.evidence.map((one) => one.test));
    expect(evidence).not.toContain('gear-swing-normal');
    expect(evidence).toContain('weigh-empty-cg');
  });

  it('answer three ways, and are complete only when nothing is open', () => {
    const gate = program.gates[3];
    if (!gate) throw new Error('no gate D');
    const records = new Map<string, TestRecord>([
      ['first-flight', { accepted: true }],
      ['second-flight-repeat', { accepted: true, notShown: 'oil temperature: not shown' }],
      ['third-flight-engine', { accepted: true, stale: true }],
      [
        'post-flight-inspection',
        { accepted: false, waived: { by: 'I. C.', reason: 'done by a mechanic', limit: 'oil checked' } },
      ],
    ]);
    const answer = askGate(gate, records);
    expect(answer.evidence.map((one) => one.outcome)).toEqual([
      'shown',
      'not shown',
      'not shown',
      'waived',
      'not shown',
    ]);
    expect(answer.complete).toBe(false);
    expect(answer.missing).toHaveLength(3);
    const all = new Map<string, TestRecord>(gate.evidence.map((one) => [one.test, { accepted: true }]));
    expect(askGate(gate, all)).toMatchObject({ complete: true, missing: [] });
  });

  it('stand before the tests they hold', () => {
    expect(gateHolding({ id: 'first-flight' }, program)?.id).toBe('C');
    expect(gateHolding({ id: 'open-inspection' }, program)).toBeNull();
  });
});

describe('progress', () => {
  it('begins with the first outing, held by nothing', () => {
    const progress = progressOf(program, new Map());
    expect(progress).toMatchObject({ accepted: 0, of: 142, holds: [] });
    expect(progress.next?.number).toBe(1);
    expect(progress.ready).toContain('open-inspection');
  });

  it('names the gate and the missing numbers of the next outing', () => {
    const flight = program.outings.find((one) => one.tests.includes('first-flight'));
    const before = program.outings.filter((one) => one.number < (flight?.number ?? 0)).flatMap((one) => one.tests);
    const states = new Map<string, TestState>(before.map((id) => [id, 'accepted']));
    const progress = progressOf(program, states);
    expect(progress.next?.tests).toEqual(['first-flight']);
    expect(progress.holds[0]).toMatchObject({ test: 'first-flight', for: [], gate: 'C' });
    expect(progress.holds[0]?.missing[0]).toContain('line-up');
  });

  it('ends when all is accepted', () => {
    const states = new Map<string, TestState>(program.order.map((id) => [id, 'accepted']));
    expect(progressOf(program, states)).toMatchObject({ accepted: 142, next: null, holds: [], ready: [] });
  });
});
