import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Airplane, readAirplane } from '../../../analysis/airplane/index.ts';
import { type Card, cardSchema, fillCard, fillCards, hasNumber, plainText } from '../../../analysis/cards/index.ts';
import { applicable, CATALOGUE, linesFor, testOf, testSchema } from '../../../analysis/catalogue/index.ts';

const file = (name: string) => JSON.parse(readFileSync(`sample-tests/${name}/airplane.json`, 'utf8'));

function airplane(json: unknown): Airplane {
  const { airplane: read, problems } = readAirplane(json);
  if (!read) throw new Error(problems.map((one) => one.message).join('\n'));
  return read;
}

const ouzel = airplane(file('ouzel'));
const wrenlet = airplane(file('wrenlet'));
const place = { outing: 'Flight 1', place: 'Flight 1, card 1 of 1', revision: 'rev 7', printed: '4 May 2031' };

function card(id: string, of: Airplane): Card {
  const found = testOf(id);
  if (!found) throw new Error(`no test ${id}`);
  return fillCard({ test: found, airplane: of, place });
}

const said = (one: Card) => JSON.stringify(one);

describe('a filled card', () => {
  test('of every test and both airplanes fits its schema and survives JSON', () => {
    for (const one of CATALOGUE) {
      for (const of of [ouzel, wrenlet]) {
        const filled = fillCard({ test: one, airplane: of, place });
        expect(cardSchema.parse(JSON.parse(JSON.stringify(filled)))).toEqual(filled);
        // a test that does not apply may have lost its lines
        if (!applicable(one, of).applies) continue;
        expect(filled.steps.length, one.id).toBeGreaterThan(0);
        expect(filled.steps.length).toBeLessThanOrEqual(9);
        expect(filled.stop.items.length, one.id).toBeGreaterThan(0);
      }
    }
  });

  test('asks for each reading of the test, in a table or a box', () => {
    for (const one of CATALOGUE) {
      const ready = linesFor(one, ouzel);
      const filled = fillCard({ test: one, airplane: ouzel, place });
      const boxes = filled.tables.flatMap((table) => table.columns).length + filled.boxes.length;
      if (ready.readings.length > 0) expect(boxes, one.id).toBeGreaterThan(0);
    }
  });

  test('every box has a label, and every number in a box its unit', () => {
    for (const one of CATALOGUE) {
      const filled = fillCard({ test: one, airplane: ouzel, place });
      for (const box of [...filled.tables.flatMap((table) => table.columns), ...filled.boxes, ...filled.log]) {
        expect(box.label, one.id).not.toBe('');
        if (box.write === 'number') expect(box.unit, `${one.id}: ${box.label}`).not.toBe('');
      }
    }
  });

  test('keys of boxes are its own', () => {
    for (const one of CATALOGUE) {
      const filled = fillCard({ test: one, airplane: ouzel, place });
      const keys = filled.tables.flatMap((table) =>
        table.rows.flatMap((row) => table.columns.map((column) => `${table.key}.${row.key}.${column.key}`)),
      );
      expect(new Set(keys).size, one.id).toBe(keys.length);
    }
  });
});

describe('numbers on a card', () => {
  test('stop numbers are the limits less the agreed margin', () => {
    // Ouzel: coolant caution 105 °C less 1 °C; oil caution 115 °C less nothing; from its own file
    const limits = file('ouzel').limits;
    const margin = file('ouzel').plan.stopMargin;
    const stops = card('ground-cooling-fan-hold', ouzel).stop.items.map((item) => plainText(item.line));
    expect(stops).toContain(`coolant at ${limits.coolant.caution.value - margin.coolant.value} °C`);
    expect(stops).toContain(`oil at ${limits.oil.caution.value - margin.oil.value} °C`);
  });

  test('each number of a stop line stands in an item of its own', () => {
    for (const one of CATALOGUE) {
      for (const item of fillCard({ test: one, airplane: ouzel, place }).stop.items) {
        const parted = item.line.filter((token) => token.kind === 'text' && / or /.test(token.text));
        const numbers = item.line.filter((token) => token.kind !== 'text');
        if (parted.length > 0) expect(numbers.length, `${one.id}: ${plainText(item.line)}`).toBeLessThanOrEqual(1);
      }
    }
  });

  test('an estimate prints as one', () => {
    expect(plainText(card('first-flight', ouzel).steps[1] ?? [])).toMatch(/95 KIAS est\./);
  });

  test('a number the description lacks is said to be missing, never invented', () => {
    const json = file('ouzel');
    delete json.limits.coolant.caution;
    const filled = card('ground-cooling-fan-hold', airplane(json));
    expect(filled.missing.map((one) => one.path)).toContain('limits.coolant.caution');
    expect(filled.stop.items.map((item) => plainText(item.line))).toContain('coolant at [missing] °C');
  });

  test('speeds say their scale; units are those of the airplane’s instruments', () => {
    const json = file('ouzel');
    json.instruments.units = { ...json.instruments.units, temperature: 'degF', airspeed: 'mph', fuel: 'gal' };
    const filled = card('first-flight', airplane(json));
    expect(said(filled)).not.toMatch(/"°C"|"KIAS"|"L"/);
    // 104 °C is 219.2 °F; a limit is rounded down
    expect(filled.stop.items.map((item) => plainText(item.line))).toContain('coolant at 219 °F');
    expect(filled.steps.map(plainText).join(' ')).toMatch(/mph IAS/);
  });

  test('numbers spoken in a step are numbers of the card', () => {
    const step = card('ground-cooling-fan-hold', ouzel).steps[0] ?? [];
    expect(hasNumber(step)).toBe(true);
    expect(step).toContainEqual({ kind: 'number', number: '30', unit: 'min', estimated: false });
  });
});

describe('a test of one’s own', () => {
  const own = (more: object) =>
    testSchema.parse({
      id: 'own-test',
      title: 'Own test',
      stage: 'envelope',
      system: 'engine',
      purpose: 'See that it works.',
      steps: ['Do it at {{kias speeds.climb}}.'],
      readings: [{ what: 'what was seen', unit: 'text', at: 'each try' }],
      pass: [{ text: 'it works', source: { says: 'my own rule', mark: 'practice' } }],
      stop: ['oil at {{temp limits.oil.caution}}'],
      blocks: 'once',
      ...more,
    });

  test('gets a card of the same kind, its readings laid out by when they are read', () => {
    const filled = fillCard({ test: own({}), airplane: ouzel, place });
    expect(filled.tables[0]).toMatchObject({
      head: { label: 'try' },
      columns: [{ label: 'what was seen', write: 'words' }],
    });
    expect(plainText(filled.steps[0] ?? [])).toBe('Do it at 95 KIAS est.');
  });

  test('with more than nine steps becomes several cards; readings stand on the last', () => {
    const steps = Array.from({ length: 13 }, (_, i) => `Step ${i + 1}`);
    const cards = fillCards({ test: own({ steps }), airplane: ouzel, place });
    expect(cards.map((one) => one.steps.length)).toEqual([7, 6]);
    expect(cards.map((one) => one.tables.length)).toEqual([0, 1]);
    expect(cards.map((one) => one.title)).toEqual(['Own test, 1 of 2', 'Own test, 2 of 2']);
    expect(cards.flatMap((one) => one.steps.map(plainText))).toEqual(steps);
  });

  test('with more stop words than a frame holds is refused in words', () => {
    const stop = Array.from({ length: 8 }, (_, i) => `number ${i + 1} of the things that end it, `.repeat(8));
    expect(() => fillCards({ test: own({ stop }), airplane: ouzel, place })).toThrow(/stop lines take more than half/);
  });
});

describe('what an airplane lacks is not on its card', () => {
  test('Wrenlet: no gear, flap, door or fan in any strip; cylinder heads in place of coolant', () => {
    for (const one of CATALOGUE.filter((entry) => entry.stage !== 'shop')) {
      const items = card(one.id, wrenlet).strip.map((cell) => cell.item);
      for (const lacking of ['gear', 'flap', 'door', 'cowl flap', 'fan', 'prop', 'tank']) {
        expect(items, one.id).not.toContain(lacking);
      }
    }
    const climb = card('cooling-climb-first', wrenlet);
    expect(said(climb)).not.toMatch(/coolant/);
    expect(said(climb)).toMatch(/hottest cylinder head/);
  });

  test('tables name the airplane’s own tanks', () => {
    const titles = card('fuel-quantity-calibration', ouzel).tables.map((table) => table.title);
    expect(titles).toEqual(ouzel.fuel.tanks.map((tank) => tank.name));
  });
});
