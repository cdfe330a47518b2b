/** The airplane in the plan: whose and what it is, its figures with where they come from, what is not stated. */
import * as z from 'zod';
import type { Airplane } from '../../analysis/airplane/index.ts';
import { emergencySheet, plainText } from '../../analysis/cards/index.ts';
import { isUnit, show, unitOf } from '../../analysis/units/index.ts';
import { sectionFacts, statedInWords } from '../forms/airplane-facts.ts';
import { labelOf, SECTIONS } from '../forms/airplane-words.ts';
import { count, nameInWords, sentence } from '../words/list.ts';

const row = z.strictObject({ name: z.string(), text: z.string(), source: z.string(), enteredBy: z.string() });
const group = z.strictObject({ title: z.string(), rows: z.array(row) });

/** a fact that needs no source beside it */
export const plainRow = z.strictObject({ name: z.string(), text: z.string() });
export type PlainRow = z.infer<typeof plainRow>;

export const factTable = z.strictObject({ groups: z.array(group), unknown: z.string() });
export type FactTable = z.infer<typeof factTable>;

/** Whose and what it is, in the few lines a reader looks for first. */
export function identityRows(airplane: Airplane): PlainRow[] {
  const { engine, propeller, gear, cooling, limits, wing } = airplane;
  const plain = (name: string, text: string): PlainRow => ({ name, text });
  return [
    plain('Airplane', airplane.name),
    plain('Registration', airplane.registration),
    plain('Built by', airplane.builder || 'not stated'),
    plain('Flown by', airplane.pilot || 'not stated'),
    plain('Seats', String(airplane.cabin.seats)),
    plain(
      'Engine',
      [
        engine.ratedPower ? inItsUnit(engine.ratedPower) : 'power not stated',
        engine.ratedSpeed ? `at ${inItsUnit(engine.ratedSpeed)}` : '',
        `${engine.cylinders} cylinders`,
        `${cooling.kind}-cooled`,
        engine.carburettor ? 'carburettor' : '',
        engine.electronicControl ? `electronic control${engine.lanes ? `, ${engine.lanes} lanes` : ''}` : '',
        engine.newOrRebuilt ? 'new or rebuilt' : '',
      ]
        .filter(Boolean)
        .join(', '),
    ),
    plain(
      'Propeller',
      [
        propeller.kind === 'constant-speed' ? 'constant speed' : `${propeller.kind.replace('-', ' ')} pitch`,
        `${propeller.blades} blades`,
        propeller.diameter ? inItsUnit(propeller.diameter) : '',
        engine.reductionRatio === 1 ? 'direct drive' : `reduction ${engine.reductionRatio} to 1`,
      ]
        .filter(Boolean)
        .join(', '),
    ),
    plain('Gear', `${gear.retractable ? 'retractable' : 'fixed'}, ${gear.layout} wheel`),
    plain('Maximum mass', inItsUnit(limits.mass.maximum)),
    ...(wing.area && wing.span ? [plain('Wing', `${inItsUnit(wing.area)}, span ${inItsUnit(wing.span)}`)] : []),
  ];
}

/** The sections of the description that make up the airplane itself. */
export function systemsTable(airplane: Airplane): FactTable {
  const sections = ['engine', 'cooling', 'propeller', 'gear', 'fuel', 'electrical', 'controls', 'avionics'];
  return tableOf(airplane, sections);
}

/** Limits, each with its source and who entered it. The operating limitations are quoted apart. */
export function limitsTable(airplane: Airplane): FactTable {
  const table = tableOf(airplane, ['limits']);
  const quoted = labelOf('limits.operatingLimitations');
  return {
    ...table,
    groups: table.groups
      .map((one) => ({ ...one, rows: one.rows.filter(({ name }) => name !== quoted) }))
      .filter((one) => one.rows.length > 0),
  };
}

export function speedsTable(airplane: Airplane): FactTable {
  return tableOf(airplane, ['speeds']);
}

export function placeTable(airplane: Airplane): FactTable {
  return tableOf(airplane, ['place']);
}

export function agreedTable(airplane: Airplane): FactTable {
  return tableOf(airplane, ['plan']);
}

export function balanceTable(airplane: Airplane): FactTable {
  return tableOf(airplane, ['loading']);
}

/** How well each channel is known, and what records it. */
export function instrumentsTable(airplane: Airplane): FactTable {
  const accuracy = Object.entries(airplane.instruments.accuracy).map(([name, { u95, unit, basis }]) => ({
    name: nameInWords(name),
    text: `± ${u95} ${isUnit(unit) ? unitOf(unit).symbol : unit} (95 %)`,
    source: basis,
    enteredBy: '',
  }));
  const recorders = airplane.recorders.map(({ name, rate, channels, clock }) => ({
    name: sentence(name),
    text: [rate ? `${show(rate.si, '1/s').number} a second` : '', count(channels.length, 'channel')]
      .filter(Boolean)
      .join(', '),
    source: clock === '' ? '' : `clock: ${clock}`,
    enteredBy: '',
  }));
  return {
    groups: [
      { title: 'Known accuracy', rows: accuracy },
      { title: 'Recorders', rows: recorders },
    ].filter((one) => one.rows.length > 0),
    unknown:
      accuracy.length === 0 ? 'accuracy of the instruments: usual values are assumed, and said with each result' : '',
  };
}

/** Drills with this airplane's own numbers, as its emergency sheet prints them. */
export function drillRows(airplane: Airplane): { about: string; rows: PlainRow[] } {
  const sheet = emergencySheet(airplane, {
    registration: airplane.registration,
    airplane: airplane.name,
    invented: airplane.invented,
    place: '',
    outing: '',
    revision: '',
    printed: '',
  });
  return {
    about: sheet.aim,
    rows: sheet.blocks.flatMap((block) =>
      block.kind === 'drill' ? block.rows.map((one) => ({ name: one.name, text: plainText(one.text) })) : [],
    ),
  };
}

function tableOf(airplane: Airplane, sections: readonly string[]): FactTable {
  const told = sections.map((section) => ({ section, ...sectionFacts(section, airplane) }));
  return {
    groups: told.flatMap(({ section, groups }) =>
      groups.map(({ title, facts }) => ({
        title: sentence(title === '' && sections.length > 1 ? titleOf(section) : title),
        rows: facts.map(({ name, text, source, enteredBy }) => ({ name, text, source, enteredBy })),
      })),
    ),
    unknown: [...new Set(told.flatMap((one) => one.unknown))].join(', '),
  };
}

function titleOf(section: string): string {
  return SECTIONS.find((one) => one.id === section)?.title ?? section;
}

function inItsUnit({ value, unit, u95 }: { value: number; unit: string; u95?: number | undefined }): string {
  return statedInWords({ value, unit, ...(u95 === undefined ? {} : { u95 }) }).text;
}
