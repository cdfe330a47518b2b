/**
 * The whole plan as one document, for an inspector, an insurer or a friend who signs: which airplane, inside which
 * limits, what is done in which order and why, what stops it, and who decides.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod';
import { crossCheck } from '../../analysis/airplane/index.ts';
import { labelOf } from '../forms/airplane-words.ts';
import { toConfirm } from '../forms/to-confirm.ts';
import { envelopePart } from '../parts/envelope.view.ts';
import { render } from '../render.ts';
import { cardFonts } from '../style/card-fonts.ts';
import { count } from '../words/list.ts';
import {
  agreedTable,
  balanceTable,
  drillRows,
  factTable,
  identityRows,
  instrumentsTable,
  limitsTable,
  placeTable,
  plainRow,
  speedsTable,
  systemsTable,
} from './plan-airplane.ts';
import { flightsOf, flightsPart } from './plan-flights.ts';
import { gatePart, gateParts } from './plan-gates.ts';
import type { PlanInput } from './plan-input.ts';
import type { PlanPaper } from './plan-options.ts';
import {
  missingRows,
  plannedTests,
  sharedConditions,
  sharedStops,
  sourceGroups,
  stagePart,
  stageParts,
  withoutPaths,
} from './plan-program.ts';
import { BY_HAND, CONTENTS } from './plan-words.ts';

export const planView = z.strictObject({
  title: z.string(),
  /** the style sheet with its fonts, put in last: it is no text */
  style: z.string(),
  airplane: z.string(),
  registration: z.string(),
  description: z.string(),
  invented: z.boolean(),
  about: z.string(),
  identity: z.array(plainRow),
  contents: z.array(z.strictObject({ id: z.string(), text: z.string() })),
  standing: z.string(),
  systems: factTable,
  instruments: factTable,
  limits: factTable,
  speeds: factTable,
  /** figures of the description that do not fit each other */
  doubts: z.array(z.string()),
  limitations: z.array(z.string()),
  place: factTable,
  agreed: factTable,
  people: z.array(z.strictObject({ role: z.string(), name: z.string() })),
  /** lines that are filled in by hand */
  byHand: z.array(z.strictObject({ title: z.string(), lines: z.array(z.string()) })),
  balance: factTable,
  loads: flightsPart.shape.loads,
  envelope: envelopePart.nullable(),
  flights: flightsPart.shape.flights,
  stops: z.array(z.strictObject({ text: z.string(), tests: z.string() })),
  conditions: z.array(z.strictObject({ text: z.string(), tests: z.string() })),
  drills: z.strictObject({ about: z.string(), rows: z.array(plainRow) }),
  hours: z.strictObject({
    words: z.string(),
    rows: z.array(plainRow),
    tasks: z.array(z.strictObject({ title: z.string(), tests: z.string() })),
  }),
  gates: z.array(gatePart),
  stages: z.array(stagePart),
  notApplicable: z.array(z.strictObject({ title: z.string(), reason: z.string() })),
  /** fields filled in with usual or copied values, nobody's yet */
  toConfirm: z.array(z.string()),
  missing: z.array(z.strictObject({ what: z.string(), tests: z.string() })),
  sources: z.array(z.strictObject({ title: z.string(), says: z.array(z.string()) })),
  signatures: z.array(z.string()),
});
export type PlanView = z.infer<typeof planView>;

export interface PlanDocument {
  html: string;
}

const PLAN_CSS = join(import.meta.dirname, '..', 'style', 'plan.css');

/**
 * The document of a plan.
 * @param input airplane, program, revision and day
 * @param paper letter or a4
 * @returns HTML that needs nothing from outside
 */
export function planDocument(input: PlanInput, paper: PlanPaper): PlanDocument {
  const view = planView.parse(planOf(input));
  const body = render('plan/plan', view);
  const style = `${cardFonts(body)}\n${pageRule(input, paper)}\n${readFileSync(PLAN_CSS, 'utf8')}`;
  return { html: body.replace('/*style*/', () => style) };
}

/** The view of the document. */
export function planOf(input: PlanInput): PlanView {
  const { airplane, program, printed } = input;
  const tests = plannedTests(input);
  const { flights, loads, envelope } = flightsOf(airplane, program);
  const { hours } = program;
  const positions = new Map(tests.map(({ planned }) => [planned.id, planned.position]));
  return {
    title: `${airplane.registration} ${airplane.name}: flight-test plan, ${revisionWords(input)}`,
    style: '/*style*/',
    airplane: airplane.name,
    registration: airplane.registration,
    description: airplane.description,
    invented: airplane.invented,
    about: `${count(tests.length, 'test')} in ${count(program.outings.length, 'outing')}, ${count(hours.flights, 'flight')} among them. Made from ${revisionWords(input)} of the airplane’s description, printed ${printed}.`,
    identity: identityRows(airplane),
    contents: [...CONTENTS],
    standing: standingWords(input, tests.length),
    systems: systemsTable(airplane),
    instruments: instrumentsTable(airplane),
    limits: limitsTable(airplane),
    speeds: speedsTable(airplane),
    doubts: crossCheck(airplane).map((one) => one.message),
    limitations: program.operatingLimitations
      .split(/\n+/)
      .map((one) => one.trim())
      .filter((one) => one !== ''),
    place: placeTable(airplane),
    agreed: agreedTable(airplane),
    people: [
      { role: 'Pilot', name: airplane.pilot },
      { role: 'Builder', name: airplane.builder },
      ...[
        'Second person: reads the card, signs closings',
        'On the ground: radio, watch',
        'Fire extinguisher and rescue',
        'Told of each flight; raises the alarm',
        'Mechanic or inspector',
      ].map((role) => ({ role, name: '' })),
    ],
    byHand: BY_HAND.map(({ title, lines }) => ({ title, lines: [...lines] })),
    balance: balanceTable(airplane),
    loads,
    envelope,
    flights,
    stops: sharedStops(tests),
    conditions: sharedConditions(tests),
    drills: drillRows(airplane),
    hours: {
      words: hours.words,
      rows: hourRows(input),
      tasks: hours.tasks.map(({ title, tests: ids }) => ({
        title,
        tests:
          ids.map((id) => positions.get(id) ?? `${id}, which this airplane’s program lacks`).join(', ') ||
          'no test named',
      })),
    },
    gates: gateParts(input),
    stages: stageParts(input, tests),
    notApplicable: program.notApplicable.map(({ title, reason, paths }) => ({
      title,
      reason: withoutPaths(reason, paths),
    })),
    toConfirm: toConfirm(airplane).map(labelOf),
    missing: missingRows(tests),
    sources: sourceGroups(tests),
    signatures: [
      'Builder: the description and this plan are mine',
      'Pilot: I have read it and will fly by it',
      'Second person: read and discussed',
      'Inspector, adviser or insurer: received and read',
    ],
  };
}

function hourRows({ program: { hours } }: PlanInput) {
  const row = (name: string, text: string) => ({ name, text });
  return [
    row(
      'Kind of program',
      hours.kind === 'fixed-hours' ? 'hours assigned by the operating limitations' : 'list of tasks',
    ),
    ...(hours.assigned === null ? [] : [row('Assigned', `${hours.assigned} h`)]),
    row(
      'Planned in flight',
      `${hours.planned} h in ${count(hours.flights, 'flight')}, climb, transit and reserve of time included`,
    ),
    row('Of it on condition', `${hours.onCondition} h`),
    row('On the ground and in the shop', `${hours.ground} h`),
  ];
}

function standingWords({ status, program }: PlanInput, all: number): string {
  const accepted = program.order.filter((id) => status?.get(id) === 'accepted').length;
  return accepted === 0 ? '' : `On the day of printing ${accepted} of ${all} tests were accepted; they are marked.`;
}

function revisionWords({ revision }: PlanInput): string {
  return revision === null ? 'no revision' : `revision ${revision}`;
}

/** Paper, margins, and what stands round every page: whose plan, of which day and revision, page n of m. */
function pageRule(input: PlanInput, paper: PlanPaper): string {
  const { airplane, printed } = input;
  const whose = `${airplane.registration} ${airplane.name}, flight-test plan${airplane.invented ? ' (invented airplane)' : ''}`;
  return `@page{size:${paper};
@top-left{content:${quoted(whose)}}
@top-right{content:${quoted(`${revisionWords(input)}, printed ${printed}`)}}
@bottom-left{content:"Gives way to operating limitations, designer’s limits, authority and licensed persons."}
@bottom-right{content:"page " counter(page) " of " counter(pages)}}`;
}

/** A text as CSS takes it: quotes, backslashes, angle brackets and line ends as code points. */
function quoted(text: string): string {
  return `"${text.replace(/["\\<>\n\r\f]/g, (letter) => `\\${letter.charCodeAt(0).toString(16)} `)}"`;
}
