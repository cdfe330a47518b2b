/** After the flight: the flown card from hand and log, the return sheet into the record, prints that no longer hold. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { previewBookCards } from '../../../server/actions/print-book-cards.ts';
import { readerFor } from '../../../server/log-reader.ts';
import { type AppForTests, appWithOuzel, fileBody } from '../app-for-tests.ts';

const HOLD = 'ground-cooling-fan-hold';

async function withGroundRun(): Promise<AppForTests> {
  const app = await appWithOuzel({ readLog: readerFor({ workerAboveBytes: Number.MAX_SAFE_INTEGER }) });
  const { payload, headers } = fileBody('ground-run-2.csv', readFileSync('sample-tests/ouzel/logs/ground-run-2.csv'));
  const sent = await app.ask({ method: 'POST', url: `/api/books/${app.book}/logs`, payload, headers });
  const log = sent.json().log.id;
  const reduced = await app.ask({
    method: 'POST',
    url: `/api/books/${app.book}/results`,
    payload: { kind: 'cooling-ground', logs: [log], tests: [HOLD] },
  });
  expect(reduced.json().stored.result.status).toBe('reduced');
  return app;
}

const accept = (app: AppForTests) =>
  app.ask({ method: 'POST', url: `/api/books/${app.book}/results/1/decision`, payload: { decision: 'accepted' } });

describe('a flown card', { timeout: 120_000 }, () => {
  it('has the hand’s figures first and the log’s beside them, each with its source, and says what left its band', async () => {
    const app = await withGroundRun();
    await accept(app);
    const boxes = { 't1.2-3.coolant-out': '108.5', 't1.1-0.battery-amps': '-2' };
    const payload = { test: HOLD, boxes, who: 'Ines Corbeau' };
    await app.ask({ method: 'POST', url: `/api/books/${app.book}/written`, payload });
    const selection = { kind: 'card', id: HOLD } as const;
    const { cards, html } = await previewBookCards(app.desk, app.book, {
      selection,
      paper: 'a5',
      flown: { written: 1 },
    });
    const [card] = cards;
    const cells = card?.tables[0]?.rows.slice(0, 2).map((row) => row.cells);
    // the log reads 94.5 °C where the hand left the box empty
    expect(cells?.[0]?.['coolant-out']?.measured).toMatchObject({ text: '94.5', source: 2 });
    expect(cells?.[0]?.['battery-amps']?.measured).toMatchObject({ text: '-2', source: 1 });
    expect(cells?.[1]?.['coolant-out']?.measured).toMatchObject({ text: '108.5', outside: 'above', source: 1 });
    expect(card?.sources[0]).toMatch(/^written by hand by Ines Corbeau, \d{4}-\d\d-\d\d$/);
    expect(card?.sources[1]).toBe('ground-run-2.csv, from 20:38 after its first record');
    expect(card?.exceeded[0]?.text).toMatch(/^fan on, 3 min: coolant out 108\.5 °C is above \d+ to \d+ °C$/);
    expect(html).toContain('▲');
    // a record of what was done is no new paper
    const state = (await app.ask({ url: `/api/books/${app.book}` })).json();
    expect(state.printed).toEqual([]);
  });

  it('of a result alone is filled from its logs; of a result that is not there, not found', async () => {
    const app = await withGroundRun();
    const preview = (flown: object) =>
      app.ask({
        method: 'POST',
        url: `/api/books/${app.book}/cards/preview`,
        payload: { selection: { kind: 'card', id: HOLD }, paper: 'a5', flown },
      });
    const answer = await preview({ result: 1 });
    expect(answer.statusCode).toBe(200);
    expect(answer.body).toContain('ground-run-2.csv, from 20:38 after its first record');
    expect((await preview({ result: 9 })).statusCode).toBe(404);
    expect((await preview({ written: 9 })).statusCode).toBe(404);
  });
});

describe('a printed card', { timeout: 120_000 }, () => {
  it('is marked on its outing where its prediction has changed', async () => {
    const app = await withGroundRun();
    const payload = { selection: { kind: 'card', id: HOLD }, paper: 'a5' };
    await app.ask({ method: 'POST', url: `/api/books/${app.book}/cards`, payload });
    const program = (await app.ask({ url: `/api/books/${app.book}/program` })).json();
    const outing = program.outings.find((one: { tests: string[] }) => one.tests.includes(HOLD)).number;
    const page = async () => (await app.ask({ url: `/books/${app.book}/outings/${outing}` })).body;
    expect(await page()).toMatch(/Printed \d+ \w+ \d+, rev 1, a5\./);
    expect(await page()).not.toContain('Print it again');
    await accept(app);
    // the day's new result changes what the next run is expected to read; the outing may stand elsewhere in the order
    expect(await page()).toMatch(/Print it again: the prediction has changed/);
  });
});

describe('a return sheet', () => {
  const BOXES = {
    'engine-start': '23:50',
    takeoff: '23:58',
    landing: '00:40',
    'engine-stop': '00:46',
    landings: '2',
    'fuel-at-start': '95',
    't1.1.squawk': 'left brake soft, not before it is cleared',
  };

  async function written(app: AppForTests, boxes: Record<string, string>) {
    const program = (await app.ask({ url: `/api/books/${app.book}/program` })).json();
    const flight = program.outings.find((one: { kind: string }) => one.kind === 'flight').number;
    const payload = { test: `return-${flight}`, boxes };
    expect((await app.ask({ method: 'POST', url: `/api/books/${app.book}/written`, payload })).statusCode).toBe(200);
    return (date: string) =>
      app.ask({ method: 'POST', url: `/api/books/${app.book}/written/1/return`, payload: { date } });
  }

  it('writes down hours and squawks once, past midnight too', async () => {
    const app = await appWithOuzel();
    const file = await written(app, BOXES);
    expect((await file('2031-05-04')).json()).toMatchObject({ hours: 1, squawks: [1] });
    const state = (await app.ask({ url: `/api/books/${app.book}` })).json();
    expect(state.hours.entries[0]).toMatchObject({
      flightSeconds: 42 * 60,
      engineSeconds: 56 * 60,
      landings: 2,
      outing: 'Flight 1',
      note: 'Return sheet 1: fuel at start 95 L',
    });
    expect(state.squawks[0]).toMatchObject({ text: BOXES['t1.1.squawk'], open: true });
    expect((await file('2031-05-04')).json().problems[0].message).toMatch(/stand in the record already/);
  });

  it('is told what it lacks, at its boxes', async () => {
    const app = await appWithOuzel();
    const file = await written(app, { ...BOXES, landing: 'noon', landings: '' });
    const { problems } = (await file('2031-05-04')).json();
    expect(problems.map((one: { where: { field: string } }) => one.where.field)).toEqual(['landing', 'landings']);
  });
});
