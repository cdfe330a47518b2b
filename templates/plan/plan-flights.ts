/** Flights and loads in the plan: minutes, fuel, mass and balance of each, the loads drawn in the envelope. */
import * as z from 'zod';
import type { Airplane } from '../../analysis/airplane/index.ts';
import { type Measure, shows } from '../../analysis/catalogue/index.ts';
import type { LoadPoint, Outing, OutingLoad, Program } from '../../analysis/program/index.ts';
import { show } from '../../analysis/units/index.ts';
import { type EnvelopePart, envelopeDrawing, envelopePart } from '../parts/envelope.view.ts';
import { listInWords, sentence } from '../words/list.ts';
import { minutesInWords } from '../words/time.ts';
import { rangesInWords } from './plan-program.ts';

const flightRow = z.strictObject({
  flight: z.int(),
  tests: z.string(),
  opens: z.string(),
  time: z.string(),
  height: z.string(),
  fuel: z.string(),
  takeoff: z.string(),
  landing: z.string(),
  load: z.string(),
  remarks: z.array(z.string()),
});
export const loadRow = z.strictObject({
  letter: z.string(),
  words: z.string(),
  added: z.string(),
  takeoff: z.string(),
  landing: z.string(),
  inside: z.string(),
  flights: z.string(),
});
export const flightsPart = z.strictObject({
  flights: z.array(flightRow),
  loads: z.array(loadRow),
  envelope: envelopePart.nullable(),
});
export type FlightsPart = z.infer<typeof flightsPart>;

interface LoadGroup {
  letter: string;
  load: OutingLoad;
  outing: Outing;
  flights: number[];
}

/** All flights with their loads. */
export function flightsOf(airplane: Airplane, program: Program): FlightsPart {
  const flights = program.outings.filter((one) => one.kind === 'flight');
  const groups = loadGroups(flights);
  const said = (si: number, measure: Measure, u95?: number) => shownIn(si, measure, airplane, u95);
  return {
    flights: flights.map((one) => flightRowOf(one, program, groups, airplane)),
    loads: groups.map(({ letter, load, flights: numbers }) => ({
      letter,
      words: sentence(load.words),
      added: listInWords(load.added.map((one) => `${one.name} ${said(one.mass, 'mass')}`)),
      takeoff: pointWords(load.takeoff, said),
      landing: pointWords(load.landing, said),
      inside:
        load.inside === null
          ? 'not worked out'
          : load.inside
            ? 'inside, uncertainty included'
            : 'NOT inside with its uncertainty',
      flights: rangesInWords(numbers),
    })),
    envelope: drawn(airplane, groups),
  };
}

type Said = (si: number, measure: Measure, u95?: number) => string;

function flightRowOf(
  one: Outing,
  program: Program,
  groups: readonly LoadGroup[],
  airplane: Airplane,
): FlightsPart['flights'][number] {
  const said: Said = (si, measure, u95) => shownIn(si, measure, airplane, u95);
  const titles = new Map(program.stages.flatMap((stage) => stage.tests).map((test) => [test.id, test]));
  const { fuel, loading } = one;
  return {
    flight: one.flight ?? 0,
    tests: one.parts
      .map(({ test, part, of }) => {
        const found = titles.get(test);
        return `${found?.position ?? ''}. ${found?.title ?? test}${of > 1 ? ` (part ${part} of ${of})` : ''}`;
      })
      .join('; '),
    opens: one.opens ?? '',
    time: `${minutesInWords(one.minutesTotal)} (${Math.round(one.minutesOnCondition)} on condition)`,
    height: one.height === null ? '' : `up to ${said(one.height, 'height')} above ground`,
    fuel: fuel
      ? `${said(loading?.fuel ?? fuel.takeoff, 'fuel')}, of it ${said(fuel.burn, 'fuel')} burnt, ${said(fuel.reserve, 'fuel')} kept`
      : 'not worked out',
    takeoff: shortWords(loading?.takeoff ?? null, airplane),
    landing: shortWords(loading?.landing ?? null, airplane),
    load: groups.find((group) => group.flights.includes(one.flight ?? 0))?.letter ?? '',
    remarks: one.remarks,
  };
}

/** Flights whose load is put aboard alike; the heaviest at take-off stands for its group. */
function loadGroups(flights: readonly Outing[]): LoadGroup[] {
  const groups = new Map<string, LoadGroup>();
  for (const outing of flights) {
    const { loading } = outing;
    if (!loading) continue;
    const key = JSON.stringify([loading.words, loading.added, loading.inside]);
    const group = groups.get(key);
    const flight = outing.flight ?? 0;
    if (!group) groups.set(key, { letter: letterOf(groups.size), load: loading, outing, flights: [flight] });
    else {
      group.flights.push(flight);
      if ((loading.takeoff?.mass ?? 0) > (group.load.takeoff?.mass ?? 0)) group.load = loading;
    }
  }
  return [...groups.values()];
}

function letterOf(i: number): string {
  const letter = String.fromCharCode('A'.charCodeAt(0) + (i % 26));
  return i < 26 ? letter : `${letterOf(Math.floor(i / 26) - 1)}${letter}`;
}

/** Points nearer to each other than this share of the envelope share one label. */
const NEAR = 0.04;

function drawn(airplane: Airplane, groups: readonly LoadGroup[]): EnvelopePart | null {
  const { envelope } = airplane.loading;
  const span = (list: readonly number[]) => Math.max(...list) - Math.min(...list);
  const arms = span(envelope.map((corner) => corner.arm.si));
  const masses = span(envelope.map((corner) => corner.mass.si));
  const near = (one: LoadPoint, other: LoadPoint) =>
    Math.abs(one.arm - other.arm) < NEAR * arms && Math.abs(one.mass - other.mass) < NEAR * masses;
  const points: (LoadPoint & { label: string })[] = [];
  const labelled: (LoadPoint & { label: string })[] = [];
  for (const { letter, load } of groups) {
    if (!load.takeoff) continue;
    const point = { ...load.takeoff, label: '' };
    points.push(point);
    const neighbour = labelled.find((one) => near(one, point));
    if (neighbour) neighbour.label += ` ${letter}`;
    else {
      point.label = letter;
      labelled.push(point);
    }
  }
  const drawing = envelopeDrawing(
    airplane,
    airplane.instruments.units,
    points.map(({ label, mass, massU95, arm, armU95 }) => ({ label, mass, massU95, arm, armU95 })),
  );
  return (
    drawing && {
      ...drawing,
      summary: `The envelope with the loads of the program at take-off, by the letters of the table below; bars are their uncertainty (95 %).`,
    }
  );
}

/** Mass and place in the range; the arm where there is no chord to speak of. */
function shortWords(point: LoadPoint | null, airplane: Airplane): string {
  if (!point) return 'not worked out';
  const { mac } = airplane.loading;
  const where =
    point.chord === null || !mac
      ? `at ${shownIn(point.arm, 'arm', airplane, point.armU95)}`
      : `${show(point.chord, '%', { u95: point.armU95 / mac.length.si }).text} MAC`;
  return `${shownIn(point.mass, 'mass', airplane, point.massU95)}, ${where}`;
}

function pointWords(point: LoadPoint | null, said: Said): string {
  if (!point) return 'not worked out';
  const chord = point.chord === null ? '' : `, ${show(point.chord, '%', { decimals: 1 }).text} MAC`;
  return `${said(point.mass, 'mass', point.massU95)} at ${said(point.arm, 'arm', point.armU95)}${chord}`;
}

function shownIn(si: number, measure: Measure, airplane: Airplane, u95?: number): string {
  const { unit, symbol, decimals } = shows(measure, airplane);
  const shown = show(si, unit, u95 === undefined || u95 === 0 ? { decimals } : { u95 });
  const number = shown.half === undefined ? shown.number : `${shown.number} ± ${shown.half}`;
  return symbol === '' ? number : `${number} ${symbol}`;
}
