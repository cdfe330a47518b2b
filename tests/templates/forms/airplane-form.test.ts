import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readAirplane } from '../../../analysis/airplane/index.ts';
import { RULED_PATHS } from '../../../templates/forms/airplane-applies.ts';
import { sectionForm } from '../../../templates/forms/airplane-form.ts';
import { addEntry, readSection, removeEntry } from '../../../templates/forms/airplane-reading.ts';
import { airplaneShape, fieldAt } from '../../../templates/forms/airplane-shape.ts';
import { SECTIONS, WORDED_PATHS } from '../../../templates/forms/airplane-words.ts';
import { valueAt } from '../../../templates/words/json-path.ts';
import { postedBy } from './posted-by.ts';

const file = (name: string): unknown => JSON.parse(readFileSync(`sample-tests/${name}/airplane.json`, 'utf8'));
const OUZEL = file('ouzel');

describe('sections of the airplane page', () => {
  it('hold every top-level field of the schema once', () => {
    const keys = SECTIONS.flatMap((section) => section.keys);
    expect([...keys].sort()).toEqual(
      airplaneShape()
        .map((field) => field.key)
        .sort(),
    );
  });

  it.each(['ouzel', 'wrenlet'])('posted back as shown leave %s as it was', (name) => {
    const before = readAirplane(file(name)).airplane;
    let json = file(name);
    for (const { id } of SECTIONS) {
      const read = readSection(id, json, postedBy(sectionForm(id, json)), 'Somebody');
      expect(read.problems, id).toEqual([]);
      json = read.json;
    }
    expect(readAirplane(json).airplane).toEqual(before);
  });

  it('show the fields of things fitted, and no others', () => {
    const names = (section: string, json: unknown) =>
      sectionForm(section, json).flatMap((group) => group.fields.map((field) => field.name));
    expect(names('limits', OUZEL)).toContain('limits.coolant.caution');
    expect(names('limits', OUZEL)).not.toContain('limits.cylinderHead.limit');
    expect(names('limits', file('wrenlet'))).toContain('limits.cylinderHead.limit');
    expect(names('gear', file('wrenlet'))).not.toContain('gear.transitUp');
    expect(names('gear', OUZEL)).toContain('gear.transitUp');
  });
});

describe('what is typed', () => {
  const changed = (path: string, text: string, who = 'Ines Corbeau') => {
    const form = postedBy(sectionForm('limits', OUZEL));
    form.set(path, [text]);
    return { form, read: readSection('limits', OUZEL, form, who) };
  };

  it('becomes a limit with the name of who entered it', () => {
    const { read } = changed('limits.coolant.caution.value', '103,5', 'Ada');
    expect(valueAt(read.json, 'limits.coolant.caution')).toMatchObject({
      value: 103.5,
      unit: 'degC',
      enteredBy: 'Ada',
    });
    expect(valueAt(read.json, 'limits.coolant.limit')).toMatchObject({ enteredBy: 'Ines Corbeau' });
  });

  it('that is no number is refused at its field and kept as typed', () => {
    const { form, read } = changed('limits.coolant.caution.value', '105 or so');
    expect(read.problems).toEqual([expect.objectContaining({ path: 'limits.coolant.caution' })]);
    const fields = sectionForm('limits', read.json, form, read.problems).flatMap((group) => group.fields);
    const field = fields.find((one) => one.name === 'limits.coolant.caution');
    expect(field?.stated?.value).toBe('105 or so');
    expect(field?.wrong).toContain('105 or so');
  });

  it('emptied takes the figure away', () => {
    const form = postedBy(sectionForm('limits', OUZEL));
    for (const key of ['value', 'source']) form.set(`limits.coolant.hotRestart.${key}`, ['']);
    const read = readSection('limits', OUZEL, form, '');
    expect(valueAt(read.json, 'limits.coolant.hotRestart')).toBeUndefined();
    expect(read.problems).toEqual([]);
  });

  it('in fields the form did not show changes nothing', () => {
    const form = new Map([
      ['limits.mass.maximum.value', ['1']],
      ['__proto__.polluted', ['yes']],
    ]);
    expect(readSection('fuel', OUZEL, form, '').json).toEqual(OUZEL);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it('adds and takes out entries of a list', () => {
    const more = addEntry(OUZEL, 'fuel.tanks', '');
    expect(valueAt(more, 'fuel.tanks.3')).toEqual({});
    expect(valueAt(removeEntry(more, 'fuel.tanks.0'), 'fuel.tanks.0.name')).toBe('right');
    expect(
      valueAt(addEntry(OUZEL, 'instruments.accuracy', 'ground-speed'), 'instruments.accuracy.ground-speed'),
    ).toEqual({});
  });
});

describe('words and rules', () => {
  const exists = (path: string) => fieldAt(path.replaceAll('.*', '')) !== undefined;
  it.each([...WORDED_PATHS, ...RULED_PATHS])('%s is a field of the schema', (path) => {
    const isVariantKey = path === 'plan.program.kind';
    expect(isVariantKey || exists(path)).toBe(true);
  });
});
