/** One calibration in force: what accepting it, another, or taking it back does to the results that went by it. */
import { describe, expect, it } from 'vitest';
import { airspeedCalibrationOf, calibrate } from '../../../analysis/models/index.ts';
import { fromSi, toSi } from '../../../analysis/units/index.ts';
import { consequencesOf } from '../../../server/actions/consequences-of.ts';
import { createBook } from '../../../server/actions/create-book.ts';
import { decideResult } from '../../../server/actions/decide-result.ts';
import { openBook } from '../../../server/actions/open-book.ts';
import { type ReduceRequest, reduce } from '../../../server/actions/reduce.ts';
import { resultOf } from '../../../server/actions/result-of.ts';
import { saveAirplane } from '../../../server/actions/save-airplane.ts';
import { undo } from '../../../server/actions/undo.ts';
import type { Decision } from '../../../server/book/entry.ts';
import { climbs, legs, steadyPoints } from '../calibrated-cards.ts';
import { changed, emptyDesk, WRENLET } from '../desk-for-tests.ts';

async function bookWith(...requests: ReduceRequest[]) {
  const desk = emptyDesk();
  const book = createBook(desk, { airplane: WRENLET });
  const made = async (request: ReduceRequest) => {
    const answer = await reduce(desk, book, request);
    if (answer.answer !== 'stored') throw new Error('a result was wanted');
    expect(answer.stored.result.status).toBe('reduced');
    return answer.stored;
  };
  for (const request of requests) await made(request);
  const decide = (number: number, decision: Decision) => decideResult(desk, book, number, { decision });
  const of = (number: number) => resultOf(desk, book, number);
  const cas = async (number: number) => {
    const table = (await of(number)).result.tables.find((one) => one.name === 'climbs');
    const column = table?.columns.findIndex((one) => one.name === 'calibrated-airspeed') ?? -1;
    return fromSi(Number(table?.rows[0]?.[column]), 'kt');
  };
  return { desk, book, made, decide, of, cas, told: (number: number) => consequencesOf(desk, book, number) };
}

describe('accepting an airspeed calibration', () => {
  it('makes it what later reductions go by, its doubt with it', async () => {
    const { made, decide, of, cas } = await bookWith(legs(), climbs());
    expect((await of(2)).input.calibration).toBeUndefined();
    expect(await cas(2)).toBeCloseTo(78, 6);
    await decide(1, 'accepted');
    await made(climbs());
    await made(steadyPoints());
    expect((await of(3)).input.calibration).toBe(1);
    const own = airspeedCalibrationOf((await of(1)).result.model);
    const at = own && calibrate(own, toSi(78, 'kt'), { mass: undefined });
    if (!at) throw new Error('no calibration');
    expect(await cas(3)).toBeCloseTo(fromSi(at.cas, 'kt'), 1);
    expect(Math.abs((await cas(3)) - 78)).toBeGreaterThan(0.5);
    // the fit of the steady points was made again with the calibration moved by its own standard uncertainty
    const model = JSON.stringify((await of(4)).result.model);
    const u = Number(/"sensor":"airspeed","u":([\d.]+)/.exec(model)?.[1]);
    expect(u).toBeCloseTo(at.u95 / 2, 6);
  });

  it('tells before which results will go stale, and then they do, with that reason', async () => {
    const { desk, book, decide, of, told } = await bookWith(legs(), climbs(), steadyPoints());
    const before = await told(1);
    expect(before).toMatchObject({ inForce: null, takingBack: null, accepting: { inForce: 1, standAgain: [] } });
    expect(before.accepting?.stale.map((one) => [one.number, one.kind])).toEqual([
      [2, 'climb'],
      [3, 'cooling-flight'],
    ]);
    expect((await of(2)).status).toBe('proposed');
    await decide(2, 'accepted');
    await decide(1, 'accepted');
    for (const number of [2, 3]) {
      const reason = 'It was reduced without an airspeed calibration; result 1 is the accepted one now.';
      expect(await of(number)).toMatchObject({ status: 'stale', stale: [reason] });
      expect(before.accepting?.stale.find((one) => one.number === number)?.because).toBe(reason);
    }
    expect((await openBook(desk, book)).results.map((one) => one.status)).toEqual(['accepted', 'stale', 'stale']);
    expect((await told(1)).accepting).toBeNull();
  });

  it('of another takes the place of the first; undone, the first is in force again', async () => {
    const { desk, book, made, decide, of, told } = await bookWith(legs());
    await decide(1, 'accepted');
    await made(climbs());
    await made(legs(4));
    const before = await told(3);
    expect(before).toMatchObject({ inForce: 1, accepting: { inForce: 3, stale: [{ number: 2, kind: 'climb' }] } });
    await decide(3, 'accepted');
    expect((await of(2)).stale).toEqual([
      'It rests on result 1 as its airspeed calibration; result 3 is the accepted one now.',
    ]);
    expect((await of(1)).status).toBe('accepted');
    await made(climbs());
    expect((await of(4)).input.calibration).toBe(3);

    // the first one accepted again goes before the second, and says so
    expect((await told(1)).accepting).toMatchObject({ stale: [{ number: 4 }], standAgain: [{ number: 2 }] });
    await decide(1, 'accepted');
    expect([(await of(2)).status, (await of(4)).status]).toEqual(['proposed', 'stale']);
    const [last] = (await openBook(desk, book)).journal;
    undo(desk, book, last?.seq ?? 0);
    expect((await told(1)).inForce).not.toBeNull();
  });

  it('taken back leaves what rests on it stale, told before; the one accepted before it comes into force', async () => {
    const { made, decide, of, told } = await bookWith(legs());
    await decide(1, 'accepted');
    await made(climbs());
    expect(await told(1)).toMatchObject({ inForce: 1, takingBack: { inForce: null, stale: [{ number: 2 }] } });
    await made(legs(4));
    await decide(3, 'accepted');
    expect(await told(3)).toMatchObject({ takingBack: { inForce: 1, stale: [], standAgain: [{ number: 2 }] } });
    await decide(3, 'repeat');
    expect((await of(2)).status).toBe('proposed');
    await decide(1, 'repeat');
    expect((await of(2)).stale).toEqual(['Result 1, the airspeed calibration under it, is not accepted any more.']);
  });

  it('undo of the acceptance makes the results stand again', async () => {
    const { desk, book, decide, of } = await bookWith(legs(), climbs());
    await decide(1, 'accepted');
    expect((await of(2)).status).toBe('stale');
    const [last] = (await openBook(desk, book)).journal;
    undo(desk, book, last?.seq ?? 0);
    expect((await of(2)).status).toBe('proposed');
  });

  it('a calibration that went stale itself is no longer gone by', async () => {
    const { desk, book, made, decide, of, told } = await bookWith(legs());
    await decide(1, 'accepted');
    saveAirplane(desk, book, changed(WRENLET, 'instruments.probeRecovery', 0.9));
    expect((await of(1)).status).toBe('stale');
    await made(climbs());
    expect((await of(2)).input.calibration).toBeUndefined();
    expect(await told(1)).toMatchObject({ inForce: null, accepting: null, takingBack: null });
  });
});

describe('a reduction that names its calibration', () => {
  it('none at all stays none: a later one does not touch it', async () => {
    const { made, decide, of, told } = await bookWith(legs());
    await made({ ...climbs(), calibration: null });
    expect((await of(2)).input.calibration).toBeNull();
    expect((await told(1)).accepting?.stale).toEqual([]);
    await decide(1, 'accepted');
    expect((await of(2)).status).toBe('proposed');
  });

  it('one that is no calibration is a problem with the field named', async () => {
    const { desk, book } = await bookWith(legs(), climbs());
    await expect(reduce(desk, book, { ...climbs(), calibration: 2 })).rejects.toMatchObject({
      problems: [{ code: 'bad-request', where: { field: 'calibration' } }],
    });
    await expect(reduce(desk, book, { ...climbs(), calibration: 9 })).rejects.toThrow('no result 9');
  });

  it('a kind that needs none is not touched by any', async () => {
    const { desk, book, decide, of, told } = await bookWith(legs());
    await decide(1, 'accepted');
    await reduce(desk, book, { kind: 'weight-balance', logs: [], tests: [] });
    expect((await of(2)).input.calibration).toBeUndefined();
    await decide(1, 'repeat');
    expect((await of(2)).stale).toEqual([]);
    expect(await told(2)).toMatchObject({ accepting: null, takingBack: null });
  });
});
