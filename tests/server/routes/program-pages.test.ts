/** The program by its pages alone: forms as a browser without script posts them. */
import { describe, expect, it } from 'vitest';
import { openBook } from '../../../server/actions/open-book.ts';
import { ownTestsOf } from '../../../server/actions/own-tests.ts';
import { programOf } from '../../../server/actions/program-of.ts';
import { airplaneOf } from '../../../server/book/read-state.ts';
import { type AppForTests, appWithOuzel } from '../app-for-tests.ts';

const post = (app: AppForTests, path: string, fields: Record<string, string>) =>
  app.ask({
    method: 'POST',
    url: `/books/${app.book}${path}`,
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
    payload: new URLSearchParams(fields).toString(),
  });

const page = (app: AppForTests, path: string) => app.ask({ method: 'GET', url: `/books/${app.book}${path}` });

async function outingOf(app: AppForTests, test: string): Promise<number> {
  const { outings } = await programOf(app.desk, app.book);
  return outings.find((outing) => outing.tests.includes(test))?.number ?? 0;
}

const OWN = {
  title: 'Pump noise',
  purpose: 'Know the sound of a healthy pump.',
  stage: 'systems-flight',
  system: 'gear',
  flightMinutes: '10',
  groundMinutes: '',
  load: 'any',
  needs: 'First gear retraction in flight',
  steps: 'One gear cycle overhead',
  readings: 'sound level | dBA | each cycle',
  pass: 'Same sound each time',
  stop: 'any new sound',
};

const OWN_FILE = {
  title: 'Noise',
  stage: 'systems-flight',
  system: 'cabin',
  purpose: 'Know the noise.',
  pass: [{ text: 'Written down', source: { says: 'own choice', mark: 'practice' } }],
  stop: ['pain'],
  flightMinutes: 5,
  blocks: 'once',
};

describe('moving by hand', () => {
  it('goes through at once where no printed sheet is touched', async () => {
    const app = await appWithOuzel();
    const to = await outingOf(app, 'flap-speed-limits');
    expect((await page(app, '/program/canopy-flight-check')).body).toContain(`value="join-${to}"`);
    const answer = await post(app, '/program/arrange', {
      what: 'move',
      test: 'canopy-flight-check',
      part: '1',
      to: `join-${to}`,
    });
    expect(answer.statusCode).toBe(303);
    expect(answer.headers.location).toContain(`#outing-${to}`);
    expect(await outingOf(app, 'canopy-flight-check')).toBe(to);
    expect((await page(app, '/program/arrange?stage=envelope')).body).toContain('Back to the order as worked out');
    expect((await page(app, '/program')).body).toContain('Arranged by hand on 2031-05-04');
  });

  it('shows first what it makes of sheets that are printed', async () => {
    const app = await appWithOuzel();
    const to = await outingOf(app, 'flap-speed-limits');
    const outing = (await programOf(app.desk, app.book)).outings[to - 1];
    if (!outing) throw new Error('no outing');
    const parts = outing.parts.map(({ test, part }) => ({ test, part }));
    app.desk.shelf.open(app.book).record({ kind: 'outings-printed', outings: [{ title: outing.title, parts }] });
    const move = { what: 'move', test: 'canopy-flight-check', part: '1', to: `join-${to}` };
    const answer = await post(app, '/program/arrange', move);
    expect(answer.headers.location).toContain('/program/replan?');
    const shown = await app.ask({ method: 'GET', url: String(answer.headers.location) });
    expect(shown.body).toContain('These printed sheets would no longer hold');
    expect(shown.body).toContain(`${outing.title}`);
    expect(await outingOf(app, 'canopy-flight-check')).not.toBe(to);
    expect((await post(app, '/program/replan', { ...move, who: 'Ines' })).statusCode).toBe(303);
    expect(await outingOf(app, 'canopy-flight-check')).toBe(to);
    expect((await page(app, '')).body).toContain('Printed sheets that no longer hold');
  });

  it('is refused with the reason in titles', async () => {
    const app = await appWithOuzel();
    const to = await outingOf(app, 'airspeed-calibration-first');
    const answer = await post(app, '/program/arrange', {
      what: 'move',
      test: 'stall-clean',
      part: '1',
      to: `join-${to}`,
    });
    expect(answer.statusCode).toBe(409);
    expect(answer.body).toContain('needs “Slow flight and approach to stall”');
    expect((await post(app, '/program/arrange', { what: 'nonsense' })).statusCode).toBe(400);
  });
});

describe('what came of an outing', () => {
  it('moves Home on to the next one of the arrangement', async () => {
    const app = await appWithOuzel();
    expect((await page(app, '')).body).toContain('Next: Shop day 1');
    await post(app, '/outings/1/notes', { what: 'done', note: 'all zones', who: 'Ines Corbeau' });
    expect((await page(app, '')).body).toContain('Next: Shop day 2');
    expect((await page(app, '/outings/1')).body).toContain('Ines Corbeau');
    expect((await page(app, '/outings/1')).body).toContain('It is on record as done');
  });

  it('leads from a no-go to the plan that could go instead, and from a repeat to the plan with it back', async () => {
    const app = await appWithOuzel();
    const number = await outingOf(app, 'fuel-transfer-flight');
    const answer = await post(app, `/outings/${number}/notes`, { what: 'no-go', note: 'valve weeps' });
    const shown = await app.ask({ method: 'GET', url: String(answer.headers.location) });
    expect(shown.body).toContain('can go first');

    await post(app, '/outings/1/notes', { what: 'done' });
    await post(app, '/outings/2/notes', { what: 'done' });
    await post(app, '/outings/3/notes', { what: 'done' });
    await post(app, '/program/ground-supply-plug/mark', { mark: 'repeat', note: 'an arc' });
    const home = (await page(app, '')).body;
    expect(home).toContain('“External ground supply plug” is to be done again');
    const plan = /href="([^"]*program\/replan[^"]*)"/.exec((await page(app, '/program')).body)?.[1] ?? '';
    const proposed = await app.ask({ method: 'GET', url: plan.replaceAll('&amp;', '&').replaceAll('&#x3D;', '=') });
    expect(proposed.body).toContain('Put this plan in force');
    await post(app, '/program/replan', { repeat: 'ground-supply-plug*1', why: 'an arc', who: 'Ines' });
    expect(await outingOf(app, 'ground-supply-plug')).toBeGreaterThan(3);
    expect((await page(app, '')).body).not.toContain('is to be done again');
  });
});

describe('a test of one’s own by its form', () => {
  it('joins the program, is shown with its typed words, changed and withdrawn', async () => {
    const app = await appWithOuzel();
    const answer = await post(app, '/program/own', { ...OWN, id: '' });
    expect(answer.headers.location).toContain('/program/own-pump-noise?done=own');
    expect(ownTestsOf(app.desk, app.book)).toMatchObject([
      {
        file: {
          needs: ['gear-first-retraction'],
          readings: [{ what: 'sound level', unit: 'dBA', at: 'each cycle' }],
          steps: ['One gear cycle overhead'],
        },
      },
    ]);
    expect((await page(app, '/program')).body).toContain('your own');
    expect((await page(app, '/cards?test=own-pump-noise')).statusCode).toBe(200);
    const form = (await page(app, '/program/own/own-pump-noise')).body;
    expect(form).toContain('value="Pump noise"');
    expect(form).toContain('sound level | dBA | each cycle');
    await post(app, '/program/own/own-pump-noise', { ...OWN, id: 'own-pump-noise', title: 'Pump noise again' });
    expect((await page(app, '/program/own-pump-noise')).body).toContain('Pump noise again');
    await post(app, '/program/own/own-pump-noise/withdraw', {});
    expect((await page(app, '/program/own-pump-noise')).statusCode).toBe(404);
  });

  it('is refused with the chain in titles, and keeps what was typed', async () => {
    const app = await appWithOuzel();
    const late = await post(app, '/program/own', { ...OWN, id: '', stage: 'taxi' });
    expect(late.statusCode).toBe(422);
    expect(late.body).toContain('a test waits for one of a later stage');
    expect(late.body).toContain('“First gear retraction in flight” (envelope)');
    expect(late.body).toContain('One gear cycle overhead');
    const unmade = await post(app, '/program/own', { ...OWN, id: '', consumes: 'moon phase' });
    expect(unmade.body).toContain('moon phase ← nothing');
    const empty = await post(app, '/program/own', { ...OWN, id: '', title: '', flightMinutes: 'ten' });
    expect(empty.body).toContain('“ten” is no number of minutes');
    const bare = await post(app, '/program/own', { ...OWN, id: '', stop: '', pass: '', steps: 'x'.repeat(401) });
    expect(bare.body).toContain('It has no stop.');
    expect(bare.body).toContain('It does not say when it is passed.');
    expect(bare.body).toContain('A line is longer than 400 letters');
    const number = await post(app, '/program/own', { ...OWN, id: '', steps: 'Fly at {{kias speeds.warp}}.' });
    expect(number.body).toContain('speeds.warp');
    expect(ownTestsOf(app.desk, app.book)).toEqual([]);
  });
});

describe('leaving a test out', () => {
  it('says what that means, asks for a reason, and takes it in again', async () => {
    const app = await appWithOuzel();
    expect((await page(app, '/program/stall-power-on')).body).toContain('would show it as waived by you');
    expect((await post(app, '/program/stall-power-on/left-out', { reason: '', instead: '' })).statusCode).toBe(400);
    await post(app, '/program/stall-power-on/left-out', {
      reason: 'Advised against.',
      instead: 'No stalls with power.',
    });
    expect((await page(app, '/program')).body).toContain('In its place: No stalls with power.');
    expect((await page(app, '/gates/E')).body).toContain('waived by the builder: Advised against.');
    await post(app, '/program/stall-power-on/left-out', { out: 'no' });
    expect((await page(app, '/program')).body).not.toContain('Left out by you');
  });
});

describe('how the program is counted', () => {
  it('is another number of hours, or a pasted task list held against the tests', async () => {
    const app = await appWithOuzel();
    const limitations = 'Day, visual, pilot only.';
    await post(app, '/program/hours', { kind: 'own', hours: '33', tasks: '', limitations });
    expect((await programOf(app.desk, app.book)).hours.assigned).toBe(33);
    expect((await page(app, '/gates/C')).body).toContain(limitations);

    const tasks = 'Stalls | Stalls with power, stall-landing\nFly the pattern';
    await post(app, '/program/hours', { kind: 'tasks', hours: '', tasks, limitations });
    const { hours } = await programOf(app.desk, app.book);
    expect(hours.tasks).toEqual([
      { title: 'Stalls', tests: ['stall-power-on', 'stall-landing'], missing: [] },
      { title: 'Fly the pattern', tests: [], missing: [] },
    ]);
    const { body } = await page(app, '/program');
    expect(body).toContain('No test is named for it yet.');
    expect(body).toContain('the program ends when each task is shown, not by hours');
    expect(airplaneOf(app.desk.shelf.open(app.book)).revision).toBe(3);
  });

  it('is refused where a task names no test, with what was typed', async () => {
    const app = await appWithOuzel();
    const answer = await post(app, '/program/hours', {
      kind: 'tasks',
      tasks: 'Loops | looping',
      hours: '',
      limitations: '',
    });
    expect(answer.statusCode).toBe(422);
    expect(answer.body).toContain('“looping” behind “Loops” is no test of this program');
    expect(answer.body).toContain('Loops | looping');
    expect((await openBook(app.desk, app.book)).airplane.revision).toBe(1);
  });
});

describe('by the API', () => {
  it('a move is tried, then made; an own test is kept, listed and withdrawn; a test is left out', async () => {
    const app = await appWithOuzel();
    const api = (method: 'GET' | 'POST' | 'PUT' | 'DELETE', path: string, payload?: object) =>
      app.ask({ method, url: `/api/books/${app.book}${path}`, ...(payload ? { payload } : {}) });
    const from = await outingOf(app, 'canopy-flight-check');
    const to = await outingOf(app, 'flap-speed-limits');
    const tried = await api('POST', '/program/moves', { test: 'canopy-flight-check', to, trial: true });
    expect(tried.json()).toMatchObject({ changes: [{ what: 'changed' }, { what: 'changed' }], printAgain: [] });
    expect(await outingOf(app, 'canopy-flight-check')).toBe(from);
    const refused = await api('POST', '/program/moves', { outing: to, to: 1 });
    expect([refused.statusCode, refused.json().problems[0].code]).toEqual([409, 'not-movable']);
    await api('POST', '/program/moves', { test: 'canopy-flight-check', to, who: 'Ines' });
    expect((await api('GET', '/program')).json().outings[to - 1].tests).toContain('canopy-flight-check');
    expect((await api('POST', '/program/replans', { happened: [] })).json().words).toContain('as worked out');
    expect(await outingOf(app, 'canopy-flight-check')).toBe(from);

    const file = { ...OWN_FILE, id: 'another' };
    expect((await api('PUT', '/own-tests/own-noise', { file })).json()).toEqual({ test: 'own-noise' });
    expect((await api('GET', '/own-tests')).json().tests).toMatchObject([{ test: 'own-noise' }]);
    expect((await api('DELETE', '/own-tests/own-noise')).statusCode).toBe(204);
    expect((await api('DELETE', '/own-tests/own-noise')).statusCode).toBe(404);

    const left = { out: true, reason: 'no', instead: 'never' };
    expect((await api('PUT', '/tests/low-g-push/left-out', left)).statusCode).toBe(204);
    expect((await api('GET', '')).json().leftOut).toMatchObject([{ test: 'low-g-push', instead: 'never' }]);
    expect((await api('POST', '/outings/1/notes', { what: 'day-lost', note: 'fog' })).json()).toEqual({ number: 1 });
  });
});
