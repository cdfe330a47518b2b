/** Acceptance of a calibration as a script and as a person sees it: told before, marked after. */
import { describe, expect, it } from 'vitest';
import { type AppForTests, appWithOuzel } from '../app-for-tests.ts';
import { climbs, legs } from '../calibrated-cards.ts';

const send = async (app: AppForTests, url: string, payload: Record<string, unknown>) => {
  const answer = await app.ask({ method: 'POST', url, payload });
  expect(answer.statusCode, answer.body).toBe(200);
  return answer.json();
};
const page = async (app: AppForTests, url: string) => (await app.ask({ method: 'GET', url })).body;

async function appWithResults() {
  const app = await appWithOuzel();
  const api = `/api/books/${app.book}/results`;
  await send(app, api, legs());
  await send(app, api, climbs());
  return { app, api, pages: `/books/${app.book}` };
}

describe('an airspeed calibration', () => {
  it('by the API: consequences first, then the default of later reductions', async () => {
    const { app, api } = await appWithResults();
    const told = (await app.ask({ method: 'GET', url: `${api}/1/consequences` })).json();
    expect(told).toMatchObject({ inForce: null, accepting: { stale: [{ number: 2, kind: 'climb' }] } });
    await send(app, `${api}/1/decision`, { decision: 'accepted' });
    const again = await send(app, api, climbs());
    expect(again.stored.input.calibration).toBe(1);
    const none = await send(app, api, { ...climbs(), calibration: null });
    expect(none.stored.input.calibration).toBeNull();
    const trial = await send(app, `${api}/trial`, climbs());
    expect(trial.result.tables[0].rows).toEqual(again.stored.result.tables[0].rows);
    expect((await app.ask({ method: 'GET', url: `${api}/2` })).json().status).toBe('stale');
    expect((await app.ask({ method: 'GET', url: `${api}/9/consequences` })).statusCode).toBe(404);
  });

  it('on the page: named and linked before it is accepted, marked with the reason on every page after', async () => {
    const { app, pages } = await appWithResults();
    const before = await page(app, `${pages}/results/1`);
    expect(before).toContain('makes this the airspeed calibration that later results go by');
    expect(before).toMatch(/no longer stand[^<]*<\/p><ul[^>]*><li><a href="[^"]*\/results\/2">2\. Climb<\/a>/);
    const decided = await app.ask({
      method: 'POST',
      url: `${pages}/results/1/decide`,
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      payload: 'decision=accepted&note=&who=Ines',
    });
    expect(decided.statusCode).toBe(303);
    const reason = 'reduced without an airspeed calibration; result 1 is the accepted one now';
    for (const url of ['', '/results', '/results/2']) expect(await page(app, `${pages}${url}`), url).toContain(reason);
    const after = await page(app, `${pages}/results/1`);
    expect(after).toContain('Later results go by this calibration');
    expect(await page(app, `${pages}/results/2`)).toContain('none was accepted');
  });
});
