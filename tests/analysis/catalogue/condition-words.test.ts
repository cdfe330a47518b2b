/** Conditions judged: truth tables, words, and the paths that decide. */
import { describe, expect, it } from 'vitest';
import { type Condition, conditionSchema, factsFor, holds, judge, pathsOf } from '../../../analysis/catalogue/index.ts';
import { demo } from '../demo-airplanes.ts';

const ouzel = factsFor(demo('ouzel'));
const wrenlet = factsFor(demo('wrenlet'));
const fan: Condition = { fact: 'cooling.groundFan' };
const smoke: Condition = { fact: 'smoke' };

describe('a condition', () => {
  it('holds as its parts do', () => {
    expect(holds(undefined, ouzel)).toBe(true);
    expect(holds({ all: [fan, smoke] }, ouzel)).toBe(false);
    expect(holds({ any: [fan, smoke] }, ouzel)).toBe(true);
    expect(holds({ not: smoke }, ouzel)).toBe(true);
    expect(holds({ fact: 'propeller', is: 'fixed' }, wrenlet)).toBe(true);
    expect(holds({ fact: 'batteries', atLeast: 2 }, ouzel)).toBe(true);
    expect(holds({ fact: 'batteries', atLeast: 2 }, wrenlet)).toBe(false);
    expect(holds({ fact: 'no such fact' }, ouzel)).toBe(false);
  });

  it('gives its reason in words, with the path', () => {
    expect(judge({ fact: 'cooling.kind', is: 'liquid' }, wrenlet)).toEqual({
      holds: false,
      words: 'is air-cooled (cooling.kind)',
      paths: ['cooling.kind'],
    });
    expect(judge({ fact: 'batteries', atLeast: 2 }, ouzel).words).toBe('has 2 batteries (electrical.batteries)');
    expect(judge({ fact: 'batteries', atLeast: 2 }, wrenlet).words).toBe('has one battery (electrical.batteries)');
    expect(judge({ not: smoke }, ouzel).words).toBe('has no smoke system (cabin.smoke)');
  });

  it('names only the parts that decide', () => {
    const both = judge({ all: [fan, smoke] }, ouzel);
    expect(both).toMatchObject({ holds: false, words: 'has no smoke system (cabin.smoke)', paths: ['cabin.smoke'] });
    const either = judge({ any: [fan, smoke] }, ouzel);
    expect(either).toMatchObject({ holds: true, words: 'has a ground cooling fan (cooling.groundFan)' });
    expect(pathsOf({ any: [fan, { not: smoke }] })).toEqual(['cooling.groundFan', 'cabin.smoke']);
  });

  it('is refused with a fact that no airplane has', () => {
    expect(conditionSchema.safeParse({ fact: 'wings' }).success).toBe(false);
    expect(conditionSchema.safeParse({ all: [] }).success).toBe(false);
    expect(conditionSchema.safeParse({ any: [fan, { not: { fact: 'flaps' } }] }).success).toBe(true);
  });
});
