import { describe, expect, it } from 'vitest';
import { sectionForm } from '../../../templates/forms/airplane-form.ts';
import { postedBy } from '../../templates/forms/posted-by.ts';
import { type AppForTests, appWithOuzel } from '../app-for-tests.ts';
import { OUZEL } from '../desk-for-tests.ts';

type Fields = Iterable<readonly [string, string]>;

const post = (app: AppForTests, url: string, fields: Fields) =>
  app.ask({
    method: 'POST',
    url,
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
    payload: new URLSearchParams([...fields].map(([name, value]): [string, string] => [name, value])).toString(),
  });

const page = (app: AppForTests, url: string) => app.ask({ method: 'GET', url });

const NEW_BOOK: [string, string][] = [
  ['name', 'Dipper'],
  ['registration', '0X-DIP'],
  ['builder', 'Ada'],
  ['cooling.kind', 'air'],
  ['propeller.kind', 'fixed'],
  ['q.engine', 'carburettor'],
  ['q.gear', 'fixed-tail'],
  ['q.flaps', 'none'],
  ['q.tanks', '2'],
  ['q.units', 'knots'],
  ['fuel.tanks.0.capacity.value', '70'],
  ['fuel.tanks.0.capacity.unit', 'L'],
  ['limits.mass.maximum.value', '600'],
  ['limits.mass.maximum.unit', 'kg'],
  ['limits.mass.maximum.source', 'plans'],
  ['speeds.stallLanding.value', '42'],
  ['speeds.stallLanding.unit', 'kt'],
  ['speeds.stallLanding.scale', 'IAS'],
  ['place.name', 'Fennick Field'],
  ['place.elevation.value', '740'],
  ['place.elevation.unit', 'ft'],
  ['place.runways.0.name', '08/26'],
  ['place.runways.0.length.value', '1180'],
  ['place.runways.0.length.unit', 'm'],
  ['plan.program.kind', 'fixed-hours'],
  ['plan.program.hours', '25'],
];

describe('a new book', () => {
  it('starts from ten answers, has a program, and marks what nobody has confirmed', async () => {
    const app = await appWithOuzel();
    const started = await post(app, '/books/new', NEW_BOOK);
    expect(started.statusCode).toBe(303);
    const place = String(started.headers.location).replace(/\?.*/, '');
    const airplane = (await page(app, place)).body;
    expect(airplane).toContain('<td>Ada</td>');
    expect(airplane).toContain('To be confirmed');
    const electrical = await page(app, `${place}/edit/electrical`);
    expect(electrical.body).toContain('To be confirmed: a usual or copied value.');
    expect((await page(app, place.replace('/airplane', '/program'))).body).toMatch(/\d+ tests in \d+ outings/);
  });

  it('starts from a copy of an invented airplane, whose limitations and airfield are not copied', async () => {
    const app = await appWithOuzel();
    const shown = await page(app, '/books/new?from=ouzel');
    expect(shown.body).toContain('Its operating limitations, its weighing and its airfield are not copied.');
    const started = await post(app, '/books/new', [['from', 'ouzel'], ...NEW_BOOK]);
    expect(started.statusCode).toBe(303);
    const place = String(started.headers.location).replace(/\?.*/, '');
    const json = (await page(app, `${place}/airplane.json`)).json();
    expect(json).toMatchObject({
      name: 'Dipper',
      place: { name: 'Fennick Field' },
      limits: { mass: { maximum: { value: 600 } } },
    });
    expect(json.limits.operatingLimitations).toBeUndefined();
    expect(json.loading.empty).toBeUndefined();
    expect(json.limits.coolant.limit).toMatchObject({
      value: 112,
      source: 'to be confirmed: copied from the invented Ouzel',
    });
    expect(json.limits.coolant.limit.enteredBy).toBeUndefined();
  });

  it('that lacks an answer is not started, and keeps what was typed', async () => {
    const app = await appWithOuzel();
    const answer = await post(
      app,
      '/books/new',
      NEW_BOOK.filter(([name]) => name !== 'limits.mass.maximum.value'),
    );
    expect(answer.statusCode).toBe(422);
    expect(answer.body).toContain('value="Dipper"');
    expect(answer.body).toContain('This is needed.');
  });
});

describe('a section of the airplane', () => {
  it('with a unit of another kind is refused at its field; nothing stored changes', async () => {
    const app = await appWithOuzel();
    const form = postedBy(sectionForm('limits', OUZEL));
    form.set('limits.coolant.limit.unit', ['bar']);
    const answer = await post(
      app,
      `/books/${app.book}/airplane/edit/limits`,
      [...form].flatMap(([name, all]) => all.map((one) => [name, one] as const)),
    );
    expect(answer.statusCode).toBe(422);
    expect(answer.body).toMatch(/aria-invalid="true"[\s\S]*unit must be one of/);
    expect((await page(app, `/books/${app.book}/airplane`)).body).toContain('This is revision 1');
  });

  it('saved says of its fields that they hold: they are no longer to be confirmed', async () => {
    const app = await appWithOuzel();
    const started = await post(app, '/books/new', NEW_BOOK);
    const place = String(started.headers.location).replace(/\?.*/, '');
    const before = (await page(app, `${place}/airplane.json`)).json();
    expect(before.toConfirm).toContain('electrical.batteries');
    const form = postedBy(sectionForm('electrical', before));
    await post(
      app,
      `${place}/edit/electrical`,
      [...form].flatMap(([name, all]) => all.map((one) => [name, one] as const)),
    );
    const after = (await page(app, `${place}/airplane.json`)).json();
    expect(after.toConfirm).not.toContain('electrical.batteries');
    expect(after.toConfirm).toContain('fuel.reserve');
  });

  it('tells at the field what does not fit another figure', async () => {
    const app = await appWithOuzel();
    const speeds = (await page(app, `/books/${app.book}/airplane/edit/speeds`)).body;
    expect(speeds).toMatch(/id="f-speeds-manoeuvring-doubt">The manoeuvring speed, 128 kt, is above/);
    expect(speeds).toMatch(/aria-describedby="f-speeds-manoeuvring-doubt"/);
    expect((await page(app, `/books/${app.book}/airplane`)).body).toContain(
      '/airplane/edit/speeds#f-speeds-manoeuvring',
    );
  });

  it('gets another entry of a list without losing what was typed', async () => {
    const app = await appWithOuzel();
    const form = postedBy(sectionForm('fuel', OUZEL));
    form.set('fuel.kind', ['unleaded']);
    form.set('add', ['fuel.tanks']);
    const answer = await post(
      app,
      `/books/${app.book}/airplane/edit/fuel`,
      [...form].flatMap(([name, all]) => all.map((one) => [name, one] as const)),
    );
    expect(answer.body).toContain('name="fuel.tanks.3.name"');
    expect(answer.body).toContain('value="unleaded"');
  });

  it('goes out as JSON and comes back the same; text that is none is told and kept', async () => {
    const app = await appWithOuzel();
    const out = await page(app, `/books/${app.book}/airplane/airplane.json`);
    expect(out.json()).toEqual(OUZEL);
    const same = await post(app, `/books/${app.book}/airplane/import`, [['json', out.body]]);
    expect(same.headers.location).toContain('done=unchanged');
    const wrong = await post(app, `/books/${app.book}/airplane/import`, [['json', '{ "name": <b>']]);
    expect(wrong.statusCode).toBe(422);
    expect(wrong.body).toContain('{ &quot;name&quot;: &lt;b&gt;</textarea>');
  });
});

describe('what a person writes down', () => {
  it('hours are read with decimals, and refused where they cannot be', async () => {
    const app = await appWithOuzel();
    const fields: [string, string][] = [
      ['date', '2031-05-04'],
      ['flight', '0,8'],
      ['engine', '1.1'],
      ['landings', '2'],
    ];
    expect((await post(app, `/books/${app.book}/hours`, fields)).statusCode).toBe(303);
    expect((await page(app, `/books/${app.book}/outings`)).body).toContain(
      '0.8 h flown, 1.1 h with the engine running, 2 landings',
    );
    const odd = await post(app, `/books/${app.book}/hours`, [
      ['date', '4 May'],
      ['flight', '2'],
      ['engine', '1'],
      ['landings', '1.5'],
    ]);
    expect(odd.statusCode).toBe(422);
    expect(odd.body.match(/<li>/g)?.length).toBeGreaterThanOrEqual(3);
    expect(odd.body).toContain('value="4 May"');
  });

  it('a squawk is written, settled and the settling undone', async () => {
    const app = await appWithOuzel();
    await post(app, `/books/${app.book}/squawks`, [['text', 'soft brake']]);
    await post(app, `/books/${app.book}/squawks/1/settle`, [
      ['how', 'bled'],
      ['who', 'Ada'],
    ]);
    expect((await page(app, `/books/${app.book}`)).body).not.toContain('soft brake');
    const undo = /action="([^"]*\/undo)"/.exec((await page(app, `/books/${app.book}/record`)).body)?.[1] ?? '';
    expect((await post(app, undo, [])).statusCode).toBe(303);
    expect((await page(app, `/books/${app.book}`)).body).toContain('soft brake');
  });

  it('a test is marked, and the gate that asks for it shows it', async () => {
    const app = await appWithOuzel();
    await post(app, `/books/${app.book}/program/ground-run-inspection/mark`, [
      ['mark', 'accepted'],
      ['note', 'no metal'],
      ['who', 'Ada'],
    ]);
    expect((await page(app, `/books/${app.book}/gates/B`)).body).toContain('1 of 18 pieces');
    const odd = await post(app, `/books/${app.book}/program/ground-run-inspection/mark`, [['mark', 'perfect']]);
    expect(odd.statusCode).toBe(400);
  });
});

describe('written figures', () => {
  const rows: [string, string][] = [70, 80, 90, 100, 110].flatMap((kt, row): [string, string][] => [
    [`p.0.${row}.indicated-airspeed`, String(kt)],
    [`p.0.${row}.bottom`, '3000'],
    [`p.0.${row}.top`, '4000'],
    [`p.0.${row}.time`, String(80 + (kt - 88) ** 2 / 20)],
    [`p.0.${row}.outside-air-temperature`, '10'],
  ]);
  const units: [string, string][] = [
    ['u.0.indicated-airspeed', 'kt'],
    ['u.0.bottom', 'ft'],
    ['u.0.top', 'ft'],
    ['u.0.time', 's'],
    ['u.0.outside-air-temperature', 'degC'],
  ];

  it('are reduced like a log, and the tables come as CSV', async () => {
    const app = await appWithOuzel();
    const made = await post(app, `/books/${app.book}/results/new/climb`, [...rows, ...units, ['who', 'Ada']]);
    expect(made.headers.location).toContain('/results/1?done=reduced');
    const result = await page(app, `/books/${app.book}/results/1`);
    expect(result.body).toContain('from written figures');
    const csv = await page(app, `/books/${app.book}/results/1/tables/0.csv`);
    expect(csv.headers['content-type']).toContain('text/csv');
    expect(csv.body.split('\r\n')[0]).toContain('calibrated-airspeed [kt]');
  });

  it('with a mistake come back with it marked, and all that was typed', async () => {
    const app = await appWithOuzel();
    const typed = rows.map(([name, value]): [string, string] => [name, name === 'p.0.1.time' ? '1:20' : value]);
    const answer = await post(app, `/books/${app.book}/results/new/climb`, [...typed, ...units]);
    expect(answer.statusCode).toBe(422);
    expect(answer.body).toMatch(/name="p\.0\.1\.time"[^>]*value="1:20"[^>]*aria-invalid="true"/);
    const upside = rows.map(([name, value]): [string, string] => [name, name === 'p.0.2.top' ? '2000' : value]);
    const refused = await post(app, `/books/${app.book}/results/new/climb`, [...upside, ...units]);
    expect(refused.body).toMatch(/name="p\.0\.2\.top"[^>]*aria-invalid="true"/);
  });

  it('get more rows', async () => {
    const app = await appWithOuzel();
    const answer = await post(app, `/books/${app.book}/results/new/climb`, [...rows, ['more', 'Points']]);
    expect(answer.body).toContain('name="p.0.11.time"');
    expect(answer.body).toContain(
      'name="p.0.4.indicated-airspeed" aria-label="Indicated airspeed, row 5" type="text" autocomplete="off" value="110"',
    );
  });
});

describe('pages', () => {
  it('carry the policy that lets nothing inline and nothing from outside in', async () => {
    const app = await appWithOuzel();
    const answer = await page(app, `/books/${app.book}`);
    const policy = String(answer.headers['content-security-policy']);
    expect(policy).toContain("default-src 'self'");
    expect(policy).not.toContain('unsafe');
    expect(answer.body).not.toMatch(/<script(?![^>]*src=)|<style|\son\w+=|style="/);
    expect(answer.headers['cache-control']).toBe('no-store');
  });

  it('show the cards as paper, in a frame with its own policy', async () => {
    const app = await appWithOuzel();
    expect((await page(app, `/books/${app.book}/cards?test=heat-soak&paper=a5`)).body).toContain('One test: Heat soak');
    const sheet = await page(app, `/books/${app.book}/cards/preview?test=heat-soak&paper=a5`);
    expect(String(sheet.headers['content-security-policy'])).toContain("default-src 'none'");
  });

  it('answer an address that leads nowhere as a page, and the API as JSON', async () => {
    const app = await appWithOuzel();
    const lost = await page(app, '/books/ouzel/nowhere');
    expect([lost.statusCode, lost.headers['content-type']]).toEqual([404, 'text/html; charset=utf-8']);
    const api = await page(app, '/api/nowhere');
    expect([api.statusCode, api.json().problems[0].code]).toEqual([404, 'not-found']);
  });

  it('serve their style and modules with a tag that spares a second fetch', async () => {
    const app = await appWithOuzel();
    const style = await page(app, '/assets/screen.css');
    expect(style.headers['content-type']).toContain('text/css');
    const again = await app.ask({
      method: 'GET',
      url: '/assets/screen.css',
      headers: { 'if-none-match': String(style.headers.etag) },
    });
    expect(again.statusCode).toBe(304);
    expect((await page(app, '/assets/nothing.js')).statusCode).toBe(404);
  });
});
