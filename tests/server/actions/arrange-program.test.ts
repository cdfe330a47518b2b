/** The program as a person works with it: moved, replanned, added to; kept through undo, export and a check of the book. */

import { createWriteStream } from 'node:fs';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { describe, expect, it } from 'vitest';
import { arrangeProgram, proposeChange } from '../../../server/actions/arrange-program.ts';
import { exportBook } from '../../../server/actions/export-book.ts';
import { gateAnswers } from '../../../server/actions/gate-answers.ts';
import { importBook } from '../../../server/actions/import-book.ts';
import { leaveOutTest } from '../../../server/actions/leave-out-test.ts';
import { markTest } from '../../../server/actions/mark-test.ts';
import { noteOuting } from '../../../server/actions/note-outing.ts';
import { openBookWithPlan } from '../../../server/actions/open-book.ts';
import { ownTestsOf, saveOwnTest, withdrawOwnTest } from '../../../server/actions/own-tests.ts';
import { standingOf } from '../../../server/actions/plan-standing.ts';
import { programOf } from '../../../server/actions/program-of.ts';
import { saveAirplane } from '../../../server/actions/save-airplane.ts';
import { takeBack } from '../../../server/actions/take-back.ts';
import { undo } from '../../../server/actions/undo.ts';
import { verifyBook } from '../../../server/actions/verify-book.ts';
import type { Desk } from '../../../server/desk.ts';
import { changed, deskWithOuzel, OUZEL, temporaryFolder } from '../desk-for-tests.ts';

const own = (more: Record<string, unknown> = {}) => ({
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
  ...more,
});

async function outingOf(desk: Desk, book: string, test: string): Promise<number> {
  const { outings } = await programOf(desk, book);
  return outings.find((outing) => outing.tests.includes(test))?.number ?? 0;
}

async function standing(desk: Desk, book: string) {
  const { state, plan } = await openBookWithPlan(desk, book);
  if (!plan) throw new Error('no plan');
  return standingOf(plan, state.testStatus);
}

/** Every outing up to that of a test is done, and its tests accepted. */
async function doneThrough(desk: Desk, book: string, test: string): Promise<void> {
  const last = await outingOf(desk, book, test);
  const { outings } = await programOf(desk, book);
  for (const outing of outings.slice(0, last)) {
    for (const id of outing.tests) await markTest(desk, book, id, 'accepted');
  }
}

describe('a move', () => {
  it('is proposed without a trace, then kept, undone, and kept through a check of the whole book', async () => {
    const { desk, book } = deskWithOuzel();
    const to = await outingOf(desk, book, 'flap-speed-limits');
    const move = { test: 'canopy-flight-check', to };
    const proposed = await proposeChange(desk, book, move);
    expect(proposed.changes.map((one) => one.what)).toEqual(['changed', 'changed']);
    expect(await outingOf(desk, book, 'canopy-flight-check')).not.toBe(to);
    await arrangeProgram(desk, book, move, { who: 'Ines Corbeau' });
    expect(await outingOf(desk, book, 'canopy-flight-check')).toBe(to);
    expect((await verifyBook(desk, book)).broken).toEqual([]);
    undo(desk, book, 3);
    expect(await outingOf(desk, book, 'canopy-flight-check')).not.toBe(to);
    undo(desk, book, 4);
    expect(await outingOf(desk, book, 'canopy-flight-check')).toBe(to);
  });

  it('that a rule forbids is refused with the reason, and nothing is written', async () => {
    const { desk, book } = deskWithOuzel();
    const to = await outingOf(desk, book, 'airspeed-calibration-first');
    const refused = arrangeProgram(desk, book, { test: 'stall-clean', to });
    await expect(refused).rejects.toThrow('“Slow flight and approach to stall”, which is not done before it');
    expect((await verifyBook(desk, book)).entries).toBe(2);
  });

  it('survives a change of the airplane: what stands stays', async () => {
    const { desk, book } = deskWithOuzel();
    const to = await outingOf(desk, book, 'flap-speed-limits');
    await arrangeProgram(desk, book, { test: 'canopy-flight-check', to });
    expect(saveAirplane(desk, book, changed(OUZEL, 'cooling.groundFan', false)).saved).toBe(true);
    expect(await outingOf(desk, book, 'ground-cooling-fan-hold')).toBe(0);
    expect(await outingOf(desk, book, 'canopy-flight-check')).toBe(await outingOf(desk, book, 'flap-speed-limits'));
  });

  it('leaves what is on record as done where it is', async () => {
    const { desk, book } = deskWithOuzel();
    await doneThrough(desk, book, 'open-inspection');
    await expect(arrangeProgram(desk, book, { outing: 1, to: 2 })).rejects.toMatchObject({
      problems: [{ code: 'not-movable' }],
    });
  });
});

describe('a test to repeat', () => {
  it('asks to be put back, joins a later outing that is not printed; sheets that no longer hold are named', async () => {
    const { desk, book } = deskWithOuzel();
    await doneThrough(desk, book, 'heat-vent-co-flight');
    await markTest(desk, book, 'heat-vent-co-flight', 'repeat', 'the meter was off');
    expect((await standing(desk, book)).putBack).toMatchObject([{ test: 'heat-vent-co-flight', part: 1 }]);

    const next = (await programOf(desk, book)).outings[(await outingOf(desk, book, 'stall-clean')) - 1];
    if (!next) throw new Error('no next outing');
    const printed = next.parts.map(({ test, part }) => ({ test, part }));
    desk.shelf.open(book).record({ kind: 'outings-printed', outings: [{ title: next.title, parts: printed }] });
    expect((await standing(desk, book)).printed).toEqual([next.number]);

    const change = { happened: [{ kind: 'repeat' as const, test: 'heat-vent-co-flight' }] };
    const made = await arrangeProgram(desk, book, change);
    expect(made.printAgain).toEqual([]);
    expect(made.kept).toBe((await programOf(desk, book)).outings.length - 2);
    const after = await standing(desk, book);
    expect(after.putBack).toEqual([]);
    expect(after.printed).toEqual([next.number]);
    expect(await outingOf(desk, book, 'heat-vent-co-flight')).toBeGreaterThan(next.number);

    // moved by hand into the printed one, its sheets no longer hold
    const moved = await arrangeProgram(desk, book, { test: 'heat-vent-co-flight', to: next.number });
    expect(moved.printAgain.map((one) => one.before)).toEqual([next.title]);
    expect((await standing(desk, book)).stale.map((one) => one.title)).toEqual([next.title]);
    expect((await verifyBook(desk, book)).broken).toEqual([]);
  });

  it('of one step among several opens that step again, and its undo closes it', async () => {
    const { desk, book } = deskWithOuzel();
    const first = await outingOf(desk, book, 'weight-expansion');
    await doneThrough(desk, book, 'speed-expansion');
    await noteOuting(desk, book, first, { what: 'done' });
    await noteOuting(desk, book, first + 1, { what: 'done' });
    const done = async () => [...((await openBookWithPlan(desk, book)).plan?.partsDone ?? [])];
    expect(await done()).toEqual(['weight-expansion#1', 'weight-expansion#2']);
    const made = await arrangeProgram(desk, book, {
      happened: [{ kind: 'repeat', test: 'weight-expansion', part: 2 }],
    });
    expect(made.changes).toEqual([]);
    expect(await done()).toEqual(['weight-expansion#1']);
    undo(desk, book, (await verifyBook(desk, book)).entries);
    expect(await done()).toEqual(['weight-expansion#1', 'weight-expansion#2']);
  });
});

describe('an outing', () => {
  it('noted as done marks its tests as flown; a lost day changes no order', async () => {
    const { desk, book } = deskWithOuzel();
    await noteOuting(desk, book, 3, { what: 'day-lost', note: 'wind' });
    await noteOuting(desk, book, 1, { what: 'done' }, { who: 'Ines Corbeau' });
    const { state } = await openBookWithPlan(desk, book);
    expect(state.outingNotes.map((one) => [one.what, one.note])).toEqual([
      ['day-lost', 'wind'],
      ['done', ''],
    ]);
    expect(state.testStatus.find((one) => one.test === 'open-inspection')?.status).toBe('flown');
    expect((await proposeChange(desk, book, { happened: [{ kind: 'day-lost', outing: 3 }] })).changes).toEqual([]);
    await expect(noteOuting(desk, book, 999, { what: 'done' })).rejects.toMatchObject({
      problems: [{ code: 'not-found' }],
    });
  });

  it('that may not go lets the next one pass that does not wait for it', async () => {
    const { desk, book } = deskWithOuzel();
    const number = await outingOf(desk, book, 'fuel-transfer-flight');
    const made = await arrangeProgram(desk, book, { happened: [{ kind: 'no-go', outing: number }] });
    expect(made.words).toContain('can go first');
    expect(await outingOf(desk, book, 'fuel-transfer-flight')).toBe(number + 1);
    await arrangeProgram(desk, book, { afresh: true });
    expect(await outingOf(desk, book, 'fuel-transfer-flight')).toBe(number);
  });
});

describe('a test of one’s own', () => {
  it('joins the program, is changed, and is withdrawn; each can be undone', async () => {
    const { desk, book } = deskWithOuzel();
    await saveOwnTest(desk, book, own());
    expect((await programOf(desk, book)).order).toContain('own-pump-noise');
    await saveOwnTest(desk, book, own({ title: 'Pump noise, again' }));
    await withdrawOwnTest(desk, book, 'own-pump-noise');
    expect((await programOf(desk, book)).order).not.toContain('own-pump-noise');
    await takeBack(desk, book, 5);
    expect(ownTestsOf(desk, book)).toMatchObject([{ file: { title: 'Pump noise, again' } }]);
    await takeBack(desk, book, 6);
    expect(ownTestsOf(desk, book)).toEqual([]);
  });

  it.each([
    ['a circle', own({ needs: ['own-b'] }), 'own-b ← own-pump-noise ← own-b'],
    ['a missing product', own({ consumes: ['moon phase'] }), 'own-pump-noise ← moon phase ← nothing'],
    [
      'a product this airplane has no test for',
      own({ consumes: ['smoke oil flow'] }),
      '← smoke oil flow ← smoke-system-ground (It does not apply',
    ],
    [
      'a load its stage has not reached',
      own({ stage: 'first-flight', needs: [], planning: { load: 'gross' } }),
      '← weight-expansion (envelope)',
    ],
  ])('is refused for %s, with the chain shown', async (_, file, chain) => {
    const { desk, book } = deskWithOuzel();
    await saveOwnTest(desk, book, own({ id: 'own-b', needs: [] }));
    if (chain.includes('own-b')) {
      await saveOwnTest(desk, book, own({ needs: [] }));
      await saveOwnTest(desk, book, own({ id: 'own-b', needs: ['own-pump-noise'] }));
    }
    const before = ownTestsOf(desk, book);
    await expect(saveOwnTest(desk, book, file)).rejects.toMatchObject({
      problems: [{ code: 'bad-order', message: expect.stringContaining(chain) }],
    });
    expect(ownTestsOf(desk, book)).toEqual(before);
  });

  it('that another waits for cannot go', async () => {
    const { desk, book } = deskWithOuzel();
    await saveOwnTest(desk, book, own());
    await saveOwnTest(desk, book, own({ id: 'own-b', needs: ['own-pump-noise'] }));
    await expect(withdrawOwnTest(desk, book, 'own-pump-noise')).rejects.toMatchObject({
      problems: [{ code: 'bad-order' }],
    });
    await expect(takeBack(desk, book, 3)).rejects.toMatchObject({ problems: [{ code: 'bad-order' }] });
  });
});

describe('a test left out', () => {
  it('needs a reason and what stands in its place, and shows at its gate as waived', async () => {
    const { desk, book } = deskWithOuzel();
    await expect(leaveOutTest(desk, book, 'stall-power-on', { out: true })).rejects.toMatchObject({
      problems: [{ where: { field: 'reason' } }, { where: { field: 'instead' } }],
    });
    const words = { reason: 'the engine maker advises against it', instead: 'no stalls with power, placarded' };
    await leaveOutTest(desk, book, 'stall-power-on', { out: true, ...words }, { who: 'Ines Corbeau' });
    const { state, plan } = await openBookWithPlan(desk, book);
    if (!plan) throw new Error('no plan');
    expect(state.testStatus.find((one) => one.test === 'stall-power-on')).toMatchObject({
      status: 'not applicable',
      because: 'Left out: the engine maker advises against it',
    });
    const evidence = gateAnswers(plan.program, state).flatMap((gate) => gate.evidence);
    expect(evidence.find((one) => one.test === 'stall-power-on')).toMatchObject({
      outcome: 'waived',
      words: expect.stringContaining('Ines Corbeau'),
    });
    await leaveOutTest(desk, book, 'stall-power-on', { out: false });
    expect((await programOf(desk, book)).order).toContain('stall-power-on');
  });
});

describe('an exported book', () => {
  it('carries all of it', async () => {
    const { desk, book } = deskWithOuzel();
    await saveOwnTest(desk, book, own());
    await arrangeProgram(desk, book, {
      test: 'canopy-flight-check',
      to: await outingOf(desk, book, 'flap-speed-limits'),
    });
    await leaveOutTest(desk, book, 'low-g-push', { out: true, reason: 'no need', instead: 'never below 0.5 g' });
    await noteOuting(desk, book, 1, { what: 'done' });
    const { stream } = await exportBook(desk, book);
    const path = join(temporaryFolder(), 'book.zip');
    await pipeline(stream, createWriteStream(path));
    const { id } = await importBook(desk, path);
    expect(await programOf(desk, id)).toEqual(await programOf(desk, book));
    const [one, other] = [await openBookWithPlan(desk, book), await openBookWithPlan(desk, id)];
    expect(other.state.leftOut).toEqual(one.state.leftOut);
    expect(other.state.outingNotes).toEqual(one.state.outingNotes);
    expect(other.plan?.partsDone).toEqual(one.plan?.partsDone);
  });
});
