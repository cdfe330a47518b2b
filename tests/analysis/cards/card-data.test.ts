/** The data behind the cards: every entry names a test, its readings, and items that exist. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readAirplane } from '../../../analysis/airplane/index.ts';
import { AIMS } from '../../../analysis/cards/aims.ts';
import { SHEETS, TYPE_SCALES, textWidth } from '../../../analysis/cards/index.ts';
import { ROW_PLANS } from '../../../analysis/cards/row-plans/index.ts';
import { stripItems } from '../../../analysis/cards/strip.ts';
import { STRIPS } from '../../../analysis/cards/strips.ts';
import { CATALOGUE, testOf, wordsFor } from '../../../analysis/catalogue/index.ts';

const ouzel = readAirplane(JSON.parse(readFileSync('sample-tests/ouzel/airplane.json', 'utf8'))).airplane;

describe('reading tables', () => {
  test.each(Object.keys(ROW_PLANS))('%s: every plan takes readings of the test', (id) => {
    const moments = new Set(testOf(id)?.readings.map((reading) => reading.at));
    for (const plan of ROW_PLANS[id] ?? []) {
      for (const at of plan.at) expect(moments, at).toContain(at);
    }
  });
});

describe('configuration strips', () => {
  test.each(Object.entries(STRIPS))('%s', (id, strip) => {
    expect(testOf(id)).toBeDefined();
    for (const part of strip.split(';')) expect(stripItems()).toContain(part.trim().split(' ')[0]);
  });

  test('every test done with the engine running or in the air has one', () => {
    const paper = /readiness|inspection|consumption|-airspeed-|^handbook/;
    for (const one of CATALOGUE.filter((entry) => entry.flightMinutes > 0)) {
      if (!paper.test(one.id)) expect(STRIPS, one.id).toHaveProperty(one.id);
    }
  });
});

describe('aims', () => {
  test('each names a test and is shorter than its purpose', () => {
    for (const [id, aim] of Object.entries(AIMS)) {
      const found = testOf(id);
      expect(found, id).toBeDefined();
      if (found && ouzel) expect(aim.length, id).toBeLessThan(wordsFor(found.purpose, ouzel).length);
    }
  });

  test('every aim of the catalogue stands on one line of the narrowest sheet', () => {
    const narrowest = Math.min(...Object.values(SHEETS).map((size) => size.content));
    for (const one of CATALOGUE) {
      const aim = AIMS[one.id] ?? (ouzel ? wordsFor(one.purpose, ouzel) : '');
      expect(textWidth(aim, TYPE_SCALES.normal.note), `${one.id}: ${aim}`).toBeLessThanOrEqual(narrowest);
    }
  });
});
