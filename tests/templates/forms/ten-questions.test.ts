import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossCheck, readAirplane } from '../../../analysis/airplane/index.ts';
import { planProgram } from '../../../analysis/program/index.ts';
import { sectionFacts } from '../../../templates/forms/airplane-facts.ts';
import { sectionForm } from '../../../templates/forms/airplane-form.ts';
import { fieldAt } from '../../../templates/forms/airplane-shape.ts';
import { QUESTIONS } from '../../../templates/forms/start-questions.ts';
import { answeredAirplane, answeredCopy, copyQuestions, tenQuestions } from '../../../templates/forms/ten-questions.ts';
import { copiedAirplane, isToConfirm, toConfirm, withConfirmed } from '../../../templates/forms/to-confirm.ts';
import { valueAt } from '../../../templates/words/json-path.ts';
import { demoJson } from '../../analysis/demo-airplanes.ts';
import { postedBy } from './posted-by.ts';
import { ANSWERS } from './start-answers.ts';

/** What a browser posts when the fields shown are filled in and the rest is left alone. */
function posted(answers: Record<string, string>) {
  const form = postedBy(tenQuestions());
  for (const [name, value] of Object.entries(answers)) form.set(name, [value]);
  return form;
}

/** Every choice there is among the questions. */
const choices = fc.record(
  Object.fromEntries(
    tenQuestions()
      .flatMap((group) => group.fields)
      .flatMap((field) => {
        const { choice } = field;
        return choice ? [[field.name, fc.constantFrom(...choice.options.map((one) => one.value))] as const] : [];
      }),
  ),
);

describe('ten questions', () => {
  it('are ten', () => {
    expect(tenQuestions()).toHaveLength(10);
    for (const path of QUESTIONS.flatMap((one) => one.paths)) expect(fieldAt(path), path).toBeDefined();
  });

  it('make a description that fits, with a program, whatever is chosen', () => {
    fc.assert(
      fc.property(choices, (chosen) => {
        const { json, problems } = answeredAirplane(posted({ ...ANSWERS, ...chosen }));
        expect(problems).toEqual([]);
        const read = readAirplane(json);
        expect(read.problems).toEqual([]);
        if (!read.airplane) return;
        expect(crossCheck(read.airplane).map((one) => one.message)).toEqual([]);
        expect(planProgram(read.airplane).order.length).toBeGreaterThan(90);
      }),
      { numRuns: 25 },
    );
  });

  it('turn each choice into what follows from it', () => {
    const { json } = answeredAirplane(
      posted({
        ...ANSWERS,
        'q.engine': 'electronic-2',
        'q.gear': 'retractable-tail',
        'q.tanks': '2',
        'q.units': 'miles',
      }),
    );
    expect(valueAt(json, 'engine')).toMatchObject({ electronicControl: true, lanes: 2 });
    expect(valueAt(json, 'gear')).toMatchObject({ retractable: true, layout: 'tail' });
    expect(valueAt(json, 'fuel')).toMatchObject({ sources: 2, tanks: [{ name: 'left' }, { name: 'right' }] });
    expect(valueAt(json, 'instruments.units')).toMatchObject({ airspeed: 'mph', mass: 'lb', fuel: 'gal' });
    expect(valueAt(json, 'speeds.stallLanding')).toMatchObject({ value: 42, status: 'estimated' });
  });

  it('fill in no limit: the only one is the one that was typed, with who typed it', () => {
    const { json } = answeredAirplane(posted(ANSWERS));
    expect(valueAt(json, 'limits')).toEqual({
      mass: { maximum: { value: 600, unit: 'kg', source: 'plans', enteredBy: 'Ada' } },
    });
  });

  it('mark every usual value, in the list and at its source, and show it so', () => {
    const { json } = answeredAirplane(posted(ANSWERS));
    for (const path of toConfirm(json)) expect(fieldAt(path), path).toBeDefined();
    expect(valueAt(json, 'plan.stallFloor.source')).toMatch(/^to be confirmed/);
    const heights = sectionFacts('plan', json).groups.flatMap((group) => group.facts);
    expect(heights.find((one) => one.name === 'Stall floor')?.basis).toContain('to be confirmed');
    const fuel = sectionFacts('fuel', json).groups.flatMap((group) => group.facts);
    expect(fuel.find((one) => one.name === 'Quantity gauge')?.basis).toBe('to be confirmed');
  });

  it('keep what was typed and say what is wrong with it', () => {
    const form = posted({ ...ANSWERS, 'limits.mass.maximum.value': 'six hundred', 'q.gear': 'fixed-tail' });
    const { json, problems } = answeredAirplane(form);
    expect(problems.map((one) => one.path)).toEqual(['limits.mass.maximum']);
    const again = tenQuestions(json, form, problems).flatMap((group) => group.fields);
    expect(again.find((one) => one.name === 'limits.mass.maximum')?.stated?.value).toBe('six hundred');
    expect(again.find((one) => one.name === 'q.gear')?.choice?.options.find((one) => one.selected)?.value).toBe(
      'fixed-tail',
    );
  });
});

describe('a copy of an invented airplane', () => {
  const form = postedBy(copyQuestions());
  for (const [name, value] of Object.entries(ANSWERS)) if (form.has(name)) form.set(name, [value]);

  it.each(['ouzel', 'wrenlet'] as const)(
    'of %s fits, is nobody’s yet, and holds nothing that is that airplane’s own',
    (name) => {
      const { json, problems } = answeredCopy(demoJson(name), form);
      expect(problems).toEqual([]);
      const { airplane, problems: wrong } = readAirplane(json);
      expect(wrong).toEqual([]);
      expect(airplane).toMatchObject({ name: 'Dipper', registration: '0X-DIP', invented: false });
      expect(airplane?.limits.operatingLimitations).toBe('');
      expect(airplane?.loading.empty).toBeUndefined();
      expect(airplane?.limits.mass.maximum).toMatchObject({ value: 600, source: 'plans', enteredBy: 'Ada' });
      const limit = name === 'ouzel' ? airplane?.limits.coolant.limit : airplane?.limits.cylinderHead.limit;
      expect(limit?.source).toMatch(/^to be confirmed: copied from the invented/);
      expect(limit?.enteredBy).toBeUndefined();
      expect(JSON.stringify(json)).not.toContain('measured');
    },
  );

  it('is confirmed section by section', () => {
    const json = copiedAirplane(demoJson('ouzel'), { name: 'Dipper' });
    expect(isToConfirm(json, 'gear.transitUp')).toBe(true);
    const looked = withConfirmed(json, 'gear');
    expect(isToConfirm(looked, 'gear.transitUp')).toBe(false);
    expect(isToConfirm(looked, 'engine.ratedPower')).toBe(true);
    expect(withConfirmed(looked, 'gear')).toBe(looked);
  });
});

describe('doubts at the fields', () => {
  it('stand at the field they concern, and at the list', () => {
    const doubts = [
      { path: 'speeds.manoeuvring', message: 'too fast' },
      { path: 'loading.stations', message: 'two alike' },
    ];
    const none = new Map<string, string[]>();
    const speeds = sectionForm('speeds', demoJson('ouzel'), none, [], doubts).flatMap((group) => group.fields);
    expect(speeds.filter((one) => one.doubt !== '').map((one) => [one.name, one.doubt])).toEqual([
      ['speeds.manoeuvring', 'too fast'],
    ]);
    const loading = sectionForm('loading', demoJson('ouzel'), none, [], doubts);
    expect(loading.filter((one) => one.doubt !== '').map((one) => one.title)).toEqual(['Station 1']);
  });
});
