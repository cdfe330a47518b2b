/**
 * Ten plain questions that make a description. What follows from an answer is filled in; what a usual airplane has is
 * filled in too and marked to be confirmed, field by field. No limit is ever filled in: it comes from its document.
 */
import { choiceField, type FieldPart } from '../parts/field.view.ts';
import { valueAt, withValue } from '../words/json-path.ts';
import { type FieldProblem, pickedFields, type Typed } from './airplane-form.ts';
import { type ReadSection, readPicked } from './airplane-reading.ts';
import { COPY_QUESTIONS, QUESTIONS, type Question } from './start-questions.ts';
import { copiedAirplane } from './to-confirm.ts';

const PATHS = QUESTIONS.flatMap((one) => one.paths);

/** What every description must hold, empty: nothing in it is a figure of any airplane. */
const EMPTY = {
  format: 'proveout-airplane-1',
  engine: {},
  cooling: {},
  propeller: {},
  gear: {},
  fuel: { tanks: [{}], sources: 1 },
  electrical: { batteries: [] },
  trim: {},
  avionics: {},
  cabin: {},
  loading: {},
  limits: { mass: {} },
  speeds: {},
  instruments: {},
  place: { runways: [{}] },
  plan: { program: { kind: 'fixed-hours' } },
};

const usual = (value: number, unit: string, says: string) => ({
  value,
  unit,
  source: `to be confirmed: ${says}`,
  status: 'estimated',
});

/** What a usual airplane has and a person agrees on: starting values, no limits. Common practice, no source. */
const USUAL: readonly [string, unknown][] = [
  ['electrical.batteries', [{ name: 'battery', capacity: usual(17, 'Ah', 'read it off the battery') }]],
  ['electrical.generator', { rating: usual(40, 'A', 'read it off the generator') }],
  ['avionics.radios', 1],
  ['avionics.elt', true],
  ['cabin.seats', 2],
  ['fuel.quantityGauge', true],
  ['fuel.reserve', usual(30, 'min', 'common practice by day, your rules may ask for more')],
  ['plan.bailOut', usual(3000, 'ft', 'common practice, no source')],
  ['plan.stallFloor', usual(4000, 'ft', 'common practice, no source')],
  ['plan.speedFloor', usual(5000, 'ft', 'common practice, no source')],
];

export interface AskedGroup {
  title: string;
  fields: FieldPart[];
}

/** The questions, with what was typed and what is wrong with it. */
export function tenQuestions(
  json: unknown = EMPTY,
  typed: Typed = new Map(),
  problems: readonly FieldProblem[] = [],
): AskedGroup[] {
  return asked(QUESTIONS, json, typed, problems);
}

/** What is asked of a copy: whose it is, what it may weigh, where it flies from, how many hours. */
export function copyQuestions(
  json: unknown = EMPTY,
  typed: Typed = new Map(),
  problems: readonly FieldProblem[] = [],
): AskedGroup[] {
  return asked(COPY_QUESTIONS, json, typed, problems);
}

function asked(
  questions: readonly Question[],
  json: unknown,
  typed: Typed,
  problems: readonly FieldProblem[],
): AskedGroup[] {
  return questions.map(({ title, paths, own }) => ({
    title,
    fields: [
      ...(own ? [choiceField({ name: own.name, label: own.label }, own.options, chosenOf(own, typed))] : []),
      ...pickedFields(paths, json, typed, problems),
    ],
  }));
}

/** A copy of an invented airplane's description, made the person's own where they answered. */
export function answeredCopy(demo: unknown, typed: Typed): ReadSection {
  const paths = COPY_QUESTIONS.flatMap((one) => one.paths);
  const who = typed.get('builder')?.at(-1)?.trim() ?? '';
  const read = readPicked(paths, EMPTY, typed, who);
  const own = ['name', 'registration', 'builder', 'pilot', 'limits.mass.maximum', 'place', 'plan.program'];
  const answers = Object.fromEntries(own.map((path) => [path, valueAt(read.json, path)]));
  return { json: copiedAirplane(demo, answers), problems: read.problems };
}

/** The description the posted answers make. */
export function answeredAirplane(typed: Typed): ReadSection {
  const who = typed.get('builder')?.at(-1)?.trim() ?? '';
  const read = readPicked(PATHS, EMPTY, typed, who);
  let { json } = read;
  for (const { own } of QUESTIONS) {
    const gives = own?.options.find((one) => one.value === chosenOf(own, typed))?.gives ?? {};
    for (const [path, value] of Object.entries(gives)) json = withValue(json, path, value);
  }
  json = withTanks(json, Number(typed.get('q.tanks')?.at(-1) ?? '1'));
  const stall = valueAt(json, 'speeds.stallLanding');
  if (typeof stall === 'object') json = withValue(json, 'speeds.stallLanding', { ...stall, status: 'estimated' });
  for (const [path, value] of USUAL) json = withValue(json, path, value);
  const followed = ['fuel.sources', ...(valueAt(json, 'flaps') === undefined ? [] : ['flaps.settings'])];
  json = withValue(json, 'toConfirm', [...USUAL.map(([path]) => path), ...followed]);
  return { json, problems: read.problems };
}

function chosenOf(own: NonNullable<Question['own']>, typed: Typed): string {
  return typed.get(own.name)?.at(-1) ?? own.options[0]?.value ?? '';
}

const NAMES: Readonly<Record<number, readonly string[]>> = {
  1: ['main'],
  2: ['left', 'right'],
  3: ['left', 'right', 'centre'],
  4: ['left inner', 'left outer', 'right inner', 'right outer'],
};

/** Tanks alike, each a feed of its own. */
function withTanks(json: unknown, count: number): unknown {
  const names = NAMES[count] ?? ['main'];
  const capacity = valueAt(json, 'fuel.tanks.0.capacity');
  const tanks = names.map((name) => ({ name, ...(capacity === undefined ? {} : { capacity }) }));
  return withValue(withValue(json, 'fuel.tanks', tanks), 'fuel.sources', names.length);
}
