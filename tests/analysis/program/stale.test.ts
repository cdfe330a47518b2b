/** What a change touches: taking the ground fan out removes exactly what needs it, and marks the results it touches. */
import { describe, expect, it } from 'vitest';
import { applicable, CATALOGUE, pathsOf } from '../../../analysis/catalogue/index.ts';
import { planProgram, touchedBy } from '../../../analysis/program/index.ts';
import { demo } from '../demo-airplanes.ts';

const before = demo('ouzel');
const after = demo('ouzel', { cooling: { groundFan: false } });

describe('the ground fan taken out of Ouzel', () => {
  const touched = touchedBy(before, after, [
    { id: 'map', tests: ['ground-cooling-door-map'] },
    { id: 'hold', tests: ['ground-cooling-fan-hold'] },
    { id: 'airspeed', tests: ['airspeed-calibration-first'] },
    { id: 'swing', tests: ['gear-swing-normal'] },
  ]);

  it('is one change of one field', () => {
    expect(touched.changes.map((one) => one.words)).toEqual(['cooling.groundFan: yes, now no']);
    expect(touched.facts).toEqual([
      {
        name: 'cooling.groundFan',
        path: 'cooling.groundFan',
        before: true,
        after: false,
        was: 'has a ground cooling fan',
        is: 'has no ground cooling fan',
      },
    ]);
  });

  it('removes exactly the tests whose condition reads the fan and no longer holds', () => {
    const expected = CATALOGUE.filter((test) => pathsOf(test.applies).includes('cooling.groundFan'))
      .filter((test) => !applicable(test, after).applies)
      .map((test) => test.id);
    expect(expected).toEqual(['ground-cooling-fan-hold']);
    expect(touched.removed.map((one) => one.test)).toEqual(expected);
    expect(touched.added).toEqual([]);
    const [was, is] = [planProgram(before), planProgram(after)];
    expect(was.order.filter((id) => !is.order.includes(id))).toEqual(expected);
    expect(is.order.filter((id) => !was.order.includes(id))).toEqual([]);
  });

  it('removes every line that speaks of the fan, and no other', () => {
    const fan = /\bfan\b|air speed|air-speed/i;
    for (const card of touched.cards) {
      for (const line of card.lost) {
        const replaced = card.gained.length > 0 && !fan.test(line);
        expect(fan.test(line) || replaced, `${card.test}: ${line}`).toBe(true);
      }
      for (const line of card.gained) expect(line, card.test).not.toMatch(/\bfan\b/i);
    }
    const untouched = CATALOGUE.filter((test) => applicable(test, after).applies)
      .map((test) => test.id)
      .filter((id) => !touched.cards.some((card) => card.test === id));
    expect(untouched).toContain('airspeed-calibration-first');
    expect(untouched).toContain('gear-swing-normal');
  });

  it('asks for the cooling tests again and marks the results they gave', () => {
    expect(touched.rows).toEqual([{ id: 'cooling', changed: 'radiator, duct, door, fan, cowl' }]);
    expect(touched.repeat.map((one) => one.test)).toContain('ground-cooling-door-map');
    expect(touched.repeat.map((one) => one.test)).not.toContain('ground-cooling-fan-hold');
    expect(touched.stale.map((one) => one.id)).toEqual(['map', 'hold']);
  });
});

describe('other changes', () => {
  it('a new limit changes its stop lines and nothing else', () => {
    const cooler = demo('ouzel', { limits: { coolant: { caution: { value: 103 } } } });
    const { removed, added, cards, repeat } = touchedBy(before, cooler);
    expect([removed, added, repeat]).toEqual([[], [], []]);
    const lines = new Set(cards.flatMap((card) => [...card.lost, ...card.gained]));
    expect([...lines]).toEqual(['coolant at 104 °C', 'coolant at 102 °C']);
  });

  it('the same description touches nothing', () => {
    const { changes, cards, repeat } = touchedBy(before, demo('ouzel'));
    expect([changes, cards, repeat]).toEqual([[], [], []]);
  });

  it('a smoke system brings its tests in', () => {
    const smoking = touchedBy(before, demo('ouzel', { cabin: { smoke: true } }));
    expect(smoking.added.map((one) => one.test)).toEqual(['smoke-system-ground', 'smoke-system-flight']);
  });
});
