/** A result from figures written on a card: kept as a proposal, decided, made stale by what touches it, and undone. */
import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { handShiftsFor, keepShift } from '../../../server/actions/compare-logs.ts';
import { createBook } from '../../../server/actions/create-book.ts';
import { decideResult } from '../../../server/actions/decide-result.ts';
import { journalOf } from '../../../server/actions/journal-of.ts';
import { openBook } from '../../../server/actions/open-book.ts';
import { predict } from '../../../server/actions/predict.ts';
import { putAway } from '../../../server/actions/put-away.ts';
import { receiveLog } from '../../../server/actions/receive-log.ts';
import { reduce, reduceUnstored } from '../../../server/actions/reduce.ts';
import { resultOf } from '../../../server/actions/result-of.ts';
import { saveAirplane } from '../../../server/actions/save-airplane.ts';
import { undo } from '../../../server/actions/undo.ts';
import { verifyBook } from '../../../server/actions/verify-book.ts';
import { changed, emptyDesk, WRENLET } from '../desk-for-tests.ts';
import { plainReader } from '../plain-reader.ts';

/** Four legs of one speed in a steady wind from the west; what matters here is only that they reduce. */
const LEGS = [
  { track: 0, ground: 80.6 },
  { track: 90, ground: 90 },
  { track: 180, ground: 80.6 },
  { track: 270, ground: 70 },
].map(({ track, ground }) => ({
  'indicated-airspeed': { value: 78, unit: 'kt' },
  'pressure-altitude': { value: 3000, unit: 'ft' },
  'outside-air-temperature': { value: 9, unit: 'degC' },
  'ground-speed': { value: ground, unit: 'kt' },
  'track-true': { value: track, unit: 'deg' },
}));
const POINTS = { kind: 'airspeed', points: LEGS };
const TEST = 'airspeed-calibration-first';
const REQUEST = { kind: 'airspeed', logs: [], points: POINTS, tests: [TEST] };
const INES = { who: 'Ines Corbeau' };

/** A path of the description that is not among these. */
const UNREAD = 'place.name';

async function bookWithResult() {
  const desk = emptyDesk();
  const book = createBook(desk, { airplane: WRENLET });
  const answer = await reduce(desk, book, REQUEST, INES);
  if (answer.answer !== 'stored') throw new Error('a result was wanted');
  return { desk, book, stored: answer.stored };
}

describe('a reduction of written figures', () => {
  it('is kept whole, as a proposal, with what it was made of', async () => {
    const { desk, book, stored } = await bookWithResult();
    expect(stored).toMatchObject({ number: 1, kind: 'airspeed', status: 'proposed', stale: [], who: 'Ines Corbeau' });
    expect(stored.result).toMatchObject({ status: 'reduced', provenance: { configurationRevision: 1 } });
    expect(stored.input).toEqual({ logs: [], points: POINTS, tests: [TEST] });
    const { reduced } = await reduceUnstored(desk, book, REQUEST);
    expect(reduced).toMatchObject({ answer: 'result', result: stored.result });
    const { testStatus } = await openBook(desk, book);
    expect(testStatus.find((one) => one.test === TEST)).toMatchObject({ status: 'reduced', result: 1 });
    expect((await verifyBook(desk, book)).broken).toEqual([]);
  });

  it('is accepted, taken back and decided again, each with who and why', async () => {
    const { desk, book } = await bookWithResult();
    const accepted = await decideResult(desk, book, 1, { decision: 'accepted', note: 'agrees with the card' }, INES);
    expect(accepted).toMatchObject({ status: 'accepted', note: 'agrees with the card', decidedBy: 'Ines Corbeau' });
    expect(() => putAway(desk, book, { what: 'result', id: 1 })).toThrow('take that back first');
    const state = await openBook(desk, book);
    expect(state.testStatus.find((one) => one.test === TEST)?.status).toBe('accepted');
    undo(desk, book, state.journal[0]?.seq ?? 0);
    expect(await resultOf(desk, book, 1)).toMatchObject({ status: 'proposed', note: '' });
    await decideResult(desk, book, 1, { decision: 'repeat', note: 'gusts' });
    expect((await openBook(desk, book)).testStatus.find((one) => one.test === TEST)?.status).toBe('repeat');
    undo(desk, book, 3);
    expect((await openBook(desk, book)).results).toEqual([]);
  });

  it('goes stale by a change of what it read, not of what it did not, and stands again when that is undone', async () => {
    const { desk, book } = await bookWithResult();
    await decideResult(desk, book, 1, { decision: 'accepted' });
    saveAirplane(desk, book, changed(WRENLET, UNREAD, 'Another Field'));
    expect((await resultOf(desk, book, 1)).status).toBe('accepted');
    const recovery = changed(WRENLET, 'instruments.probeRecovery', 0.9);
    saveAirplane(desk, book, recovery);
    const stale = await resultOf(desk, book, 1);
    expect(stale).toMatchObject({ status: 'stale', decision: 'accepted' });
    expect(stale.stale.join(' ')).toContain('instruments.probeRecovery has changed since revision 1');
    expect((await openBook(desk, book)).testStatus.find((one) => one.test === TEST)?.status).toBe('stale');
    saveAirplane(desk, book, WRENLET);
    expect((await resultOf(desk, book, 1)).status).toBe('accepted');
  });

  it('is refused as a problem where the figures do not fit, and nothing is kept', async () => {
    const { desk, book } = await bookWithResult();
    const bad = reduce(desk, book, { ...REQUEST, points: { kind: 'airspeed', points: [{ nonsense: 1 }] } });
    await expect(bad).rejects.toMatchObject({
      problems: expect.arrayContaining([expect.objectContaining({ code: 'bad-points' })]),
    });
    await expect(reduce(desk, book, { ...REQUEST, kind: 'witchcraft' })).rejects.toThrow('There is no reduction');
    expect((await openBook(desk, book)).results).toHaveLength(1);
  });

  it('that is refused by its method is kept with its reason, and cannot be accepted', async () => {
    const desk = emptyDesk();
    const book = createBook(desk, { airplane: WRENLET });
    const two = { kind: 'airspeed', points: LEGS.slice(0, 2) };
    const answer = await reduce(desk, book, { ...REQUEST, points: two });
    expect(answer).toMatchObject({ answer: 'stored', stored: { result: { status: 'refused' } } });
    await expect(decideResult(desk, book, 1, { decision: 'accepted' })).rejects.toThrow('nothing in it to accept');
    await decideResult(desk, book, 1, { decision: 'repeat' });
  });
});

describe('an accepted calibration', () => {
  it('predicts from what was kept', async () => {
    const { desk, book } = await bookWithResult();
    const conditions = { 'indicated-airspeed': { value: 78, unit: 'kt' } };
    expect(await predict(desk, book, 1, conditions)).toMatchObject({ kind: 'airspeed', status: 'predicted' });
    await expect(predict(desk, book, 1, {})).rejects.toMatchObject({ problems: [{ code: 'bad-request' }] });
  });
});

describe('a reduction of logs', () => {
  async function withLogs(...texts: string[]) {
    const desk = emptyDesk({ readLog: plainReader().read });
    const book = createBook(desk, { airplane: WRENLET });
    const logs: string[] = [];
    for (const [i, text] of texts.entries()) {
      logs.push((await receiveLog(desk, book, Readable.from([Buffer.from(text)]), `log-${i + 1}.csv`)).log.id);
    }
    return { desk, book, logs };
  }
  const LOG = 'Time,Coolant\n0,80\n1,81\n';

  it('asks first what it would have to guess, and only that', async () => {
    const speed = await withLogs('Time,Speed\n0,80\n1,81\n');
    const asked = await reduce(speed.desk, speed.book, { kind: 'airspeed', logs: speed.logs });
    expect(asked).toMatchObject({ answer: 'questions', questions: [{ id: 'unit:Speed', file: 'log-1.csv' }] });
    const { desk, book, logs } = await withLogs(LOG, 'Time,Coolant\n0,70\n1,71\n');
    const shift = await reduce(desk, book, { kind: 'airspeed', logs });
    expect(shift).toMatchObject({ answer: 'questions', questions: [{ id: 'alignment:log-2.csv', file: 'log-2.csv' }] });
    expect((await openBook(desk, book)).results).toEqual([]);
    const [, second = ''] = logs;
    const set = await reduce(desk, book, { kind: 'airspeed', logs, shifts: { [second]: 12.5 } });
    expect(set).toMatchObject({ answer: 'stored', stored: { input: { shifts: { [second]: 12.5 } } } });
    expect(set).toMatchObject({ stored: { logNames: ['log-1.csv', 'log-2.csv'] } });
  });

  it('uses the shift that a person kept for two logs, whichever sets the clock, until it is taken back', async () => {
    const { desk, book, logs } = await withLogs(LOG, 'Time,Coolant\n0,70\n1,71\n');
    const [first = '', second = ''] = logs;
    const asked = await reduce(desk, book, { kind: 'airspeed', logs });
    expect(asked).toMatchObject({ answer: 'questions', apart: second });
    keepShift(desk, book, { first, other: second }, 12.5);
    const kept = await reduce(desk, book, { kind: 'airspeed', logs });
    expect(kept).toMatchObject({ answer: 'stored', stored: { input: { shifts: { [second]: 12.5 } } } });
    expect(kept).toMatchObject({ stored: { result: { alignment: [{ shiftSeconds: 12.5, by: 'set by hand' }] } } });
    const turned = await reduce(desk, book, { kind: 'airspeed', logs: [second, first] });
    expect(turned).toMatchObject({ stored: { result: { alignment: [{ file: 'log-1.csv', shiftSeconds: -12.5 }] } } });
    const now = await reduce(desk, book, { kind: 'airspeed', logs, shifts: { [second]: 3 } });
    expect(now).toMatchObject({ stored: { result: { alignment: [{ shiftSeconds: 3 }] } } });
    keepShift(desk, book, { first, other: second }, 20);
    expect(handShiftsFor(desk, book, logs)).toEqual({ [second]: 20 });
    undo(desk, book, journalOf(desk, book, 1)[0]?.seq ?? 0);
    expect(handShiftsFor(desk, book, logs)).toEqual({ [second]: 12.5 });
    keepShift(desk, book, { first, other: second }, null);
    expect(handShiftsFor(desk, book, logs)).toEqual({});
    expect(await reduce(desk, book, { kind: 'airspeed', logs })).toMatchObject({ answer: 'questions' });
  });

  it('says which log cannot be read', async () => {
    const { desk, book, logs } = await withLogs(LOG, 'no table here\n');
    await expect(reduce(desk, book, { kind: 'airspeed', logs })).rejects.toMatchObject({
      problems: [{ code: 'not-a-log', where: { file: 'log-2.csv' } }],
    });
    await expect(reduce(desk, book, { kind: 'airspeed', logs: ['0'.repeat(64)] })).rejects.toThrow('no such log');
  });
});
