/** A new book: the few things a description cannot do without. */
import * as z from 'zod';
import { type FieldProblem, pickedFields, type Typed } from '../forms/airplane-form.ts';
import { type ReadSection, readPicked } from '../forms/airplane-reading.ts';
import { labelOf } from '../forms/airplane-words.ts';
import { fieldPart } from '../parts/field.view.ts';
import { frameOf, framePart } from '../parts/frame.view.ts';
import { type ProblemPart, problemsPart } from '../parts/remarks.view.ts';

export const bookNewView = z.strictObject({
  frame: framePart,
  problems: problemsPart,
  groups: z.array(z.strictObject({ title: z.string(), fields: z.array(fieldPart) })),
});
export type BookNewView = z.infer<typeof bookNewView>;

const QUESTIONS: readonly { title: string; paths: readonly string[] }[] = [
  { title: 'Which airplane', paths: ['name', 'registration', 'builder', 'pilot'] },
  {
    title: 'What it has',
    paths: [
      'cooling.kind',
      'engine.electronicControl',
      'engine.newOrRebuilt',
      'propeller.kind',
      'gear.retractable',
      'gear.layout',
      'trim.electric',
    ],
  },
  { title: 'Its fuel', paths: ['fuel.kind', 'fuel.sources', 'fuel.tanks.0.name', 'fuel.tanks.0.capacity'] },
  { title: 'Its heaviest', paths: ['limits.mass.maximum'] },
  {
    title: 'Where it flies from',
    paths: ['place.name', 'place.elevation', 'place.runways.0.name', 'place.runways.0.length', 'place.utcOffset'],
  },
  {
    title: 'What its instruments show, and how phase one ends',
    paths: [
      'instruments.units.airspeed',
      'instruments.units.altitude',
      'instruments.units.temperature',
      'instruments.units.mass',
      'plan.program.hours',
    ],
  },
];

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

/** The description that the posted answers make. */
export function newAirplane(typed: Typed): ReadSection {
  return readPicked(PATHS, EMPTY, typed, typed.get('builder')?.at(-1)?.trim() ?? '');
}

/** The questions, with what was typed and what is wrong with it. */
export function bookNewPage(
  json: unknown = EMPTY,
  typed: Typed = new Map(),
  problems: readonly FieldProblem[] = [],
): BookNewView {
  const items: ProblemPart[] = problems.map(({ path, message }) => ({ message, where: labelOf(path), mend: '' }));
  return {
    frame: frameOf('Start a book', {
      question: 'What is there to be tested? A few answers bring a first program; the rest can wait.',
      crumbs: [{ text: 'All airplanes', href: '/' }],
    }),
    problems: { heading: 'Not started yet. What you typed is kept here', items },
    groups: QUESTIONS.map(({ title, paths }) => ({ title, fields: pickedFields(paths, json, typed, problems) })),
  };
}
