/** The briefing sheet of a flight: aim, order, loading in its envelope, fuel, weather, runway, people, what would stop us. */
import type { Airplane } from '../airplane/index.ts';
import type { CatalogueTest, Known, PreparedTest } from '../catalogue/index.ts';
import { linesFor, shows } from '../catalogue/index.ts';
import type { LoadPoint, Outing, Program } from '../program/index.ts';
import type { Card } from './card.ts';
import { conditionLines } from './gates.ts';
import { hasNumber, type Line, plainText, words } from './line.ts';
import type { EnvelopeFigure, PacketBlock, PacketPage } from './packet-page.ts';
import { bareValue, emptyBox, joined, numberOf, shownValue } from './packet-words.ts';
import { lineOf } from './prepared-line.ts';

export interface BriefingInput {
  airplane: Airplane;
  program: Program;
  outing: Outing;
  /** the outing's tests, in its order */
  tests: readonly CatalogueTest[];
  /** the outing's cards, in the same order */
  cards: readonly Card[];
  identity: Card['identity'];
  known?: Known;
}

/**
 * The briefing of an outing.
 * @param input airplane, outing, its tests and cards
 * @returns the page, plain JSON
 */
export function briefingOf(input: BriefingInput): PacketPage {
  const { airplane, outing, tests, cards, identity, known = {} } = input;
  const ready = tests.map((test) => linesFor(test, airplane, known));
  const flown = outing.kind === 'flight';
  const blocks: PacketBlock[] = [
    { kind: 'facts', label: 'Aim and order', rows: orderRows(outing, cards) },
    ...missingBlock(cards),
    { kind: 'ticks', label: 'Weather and surroundings: tick what holds', items: surroundings(ready) },
    ...(flown ? loadingBlocks(outing, airplane) : []),
    ...(flown ? [{ kind: 'facts' as const, label: 'Fuel', rows: fuelRows(outing, airplane) }] : []),
    ...(flown || outing.stage === 'taxi'
      ? [{ kind: 'facts' as const, label: 'Runway and ways back', rows: runwayRows(airplane) }]
      : []),
    { kind: 'list', label: 'What would make us stop', items: stops(cards) },
    { kind: 'facts', label: 'Watch for', rows: hazardRows(ready) },
    { kind: 'list', label: 'Counts as shown', items: passes(ready) },
    { kind: 'boxes', label: 'Who', boxes: people(flown) },
    ...(outing.remarks.length > 0
      ? [{ kind: 'list' as const, label: 'Look at before going', items: outing.remarks.map(words) }]
      : []),
    { kind: 'boxes', label: 'Go or no-go, each person signs', boxes: signatures(flown) },
  ];
  return {
    kind: 'briefing',
    title: `Briefing, ${identity.outing.charAt(0).toLowerCase()}${identity.outing.slice(1)}`,
    aim: outing.why,
    identity,
    blocks,
  };
}

function orderRows(outing: Outing, cards: readonly Card[]) {
  const opens = outing.opens === null ? [] : [{ name: 'New today', text: words(outing.opens) }];
  const minutes = `${Math.round(outing.minutesOnCondition)} min on condition, ${Math.round(outing.minutesTotal)} min in all`;
  return [
    ...cards.map((card, i) => ({
      name: `Card ${i + 1}`,
      text: joined(card.title, card.aim === '' ? '' : `. ${card.aim}`),
    })),
    ...opens,
    { name: 'Time', text: words(minutes) },
  ];
}

function missingBlock(cards: readonly Card[]): PacketBlock[] {
  const meanings = unique(cards.flatMap((card) => card.missing.map((one) => one.meaning)));
  return meanings.length === 0
    ? []
    : [{ kind: 'list', label: 'Missing before these cards can be flown', items: meanings.map(words) }];
}

/** Conditions of all cards; where two say the same it stands once. */
function surroundings(ready: readonly PreparedTest[]): Line[] {
  return once(ready.flatMap((test) => conditionLines(test, ['wind', 'weather', 'altitude', 'crew'])));
}

function loadingBlocks(outing: Outing, airplane: Airplane): PacketBlock[] {
  const { loading } = outing;
  if (!loading) return [];
  const rows = [
    { name: 'Load', text: words(loading.words) },
    ...(loading.takeoff ? [{ name: 'Takeoff', text: pointWords(loading.takeoff, airplane) }] : []),
    ...(loading.landing ? [{ name: 'Landing', text: pointWords(loading.landing, airplane) }] : []),
    ...loading.added.map((one) => ({
      name: one.name,
      text: joined(shownValue(one.mass, 'mass', airplane), ' at ', shownValue(one.arm, 'arm', airplane)),
    })),
    { name: 'Envelope', text: words(insideWords(loading.inside)) },
  ];
  const figure = envelopeFigure(outing, airplane);
  return [
    { kind: 'facts', label: 'Weight and balance', rows },
    ...(figure ? [{ kind: 'envelope' as const, label: '', figure }] : []),
  ];
}

function pointWords(point: LoadPoint, airplane: Airplane): Line {
  const chord = point.chord === null ? '' : `, ${(point.chord * 100).toFixed(1)} % MAC`;
  return joined(
    shownValue(point.mass, 'mass', airplane, point.massU95),
    ' at ',
    shownValue(point.arm, 'arm', airplane, point.armU95),
    chord,
  );
}

function insideWords(inside: boolean | null): string {
  if (inside === null) return 'not worked out: figures are missing. Work it out by hand before going.';
  return inside
    ? 'takeoff and landing lie inside, uncertainty included'
    : 'NOT inside with its uncertainty: change the load before going';
}

function envelopeFigure(outing: Outing, airplane: Airplane): EnvelopeFigure | null {
  const corners = airplane.loading.envelope;
  const { takeoff = null, landing = null } = outing.loading ?? {};
  if (corners.length < 3 || !takeoff) return null;
  const point = (name: string, one: LoadPoint) => ({
    name,
    mass: bareValue(one.mass, 'mass', airplane),
    massU95: bareValue(one.massU95, 'mass', airplane),
    arm: bareValue(one.arm, 'arm', airplane),
    armU95: bareValue(one.armU95, 'arm', airplane),
  });
  return {
    massUnit: shows('mass', airplane).symbol,
    armUnit: shows('arm', airplane).symbol,
    corners: corners.map((corner) => ({
      mass: bareValue(corner.mass.si, 'mass', airplane),
      arm: bareValue(corner.arm.si, 'arm', airplane),
    })),
    points: [point('takeoff', takeoff), ...(landing ? [point('landing', landing)] : [])],
  };
}

function fuelRows(outing: Outing, airplane: Airplane) {
  const { fuel } = outing;
  const bingo = { name: 'Bingo', text: joined('turn for the field at ', numberOf('plan.turnBackFuel', airplane)) };
  if (!fuel) return [{ name: 'Plan', text: words('not worked out: the burn or the tanks are not described') }, bingo];
  const aboard = outing.loading?.fuel ?? fuel.takeoff;
  return [
    {
      name: 'At takeoff',
      text: joined(shownValue(aboard, 'fuel', airplane), ' of ', shownValue(fuel.usable, 'fuel', airplane), ' usable'),
    },
    { name: 'Burn', text: shownValue(fuel.burn, 'fuel', airplane) },
    { name: 'At landing', text: joined('at least ', shownValue(fuel.reserve, 'fuel', airplane)) },
    bingo,
    { name: 'How', text: words(fuel.words) },
  ];
}

function runwayRows(airplane: Airplane) {
  const { place } = airplane;
  const runways = place.runways.map((runway) => ({
    name: `Runway ${runway.name}`,
    text: joined(
      shownValue(runway.length.si, 'distance', airplane),
      runway.width ? joined(' x ', shownValue(runway.width.si, 'distance', airplane)) : '',
      `, ${runway.surface}`,
    ),
  }));
  return [
    ...runways,
    {
      name: 'Field',
      text: joined(place.name, ', ', shownValue(place.elevation.si, 'altitude', airplane), ' above sea level'),
    },
    ...(place.practiceArea === '' ? [] : [{ name: 'Area', text: words(place.practiceArea) }]),
    ...(place.alternate === '' ? [] : [{ name: 'Alternate', text: words(place.alternate) }]),
    { name: 'Best glide', text: numberOf('speeds.bestGlide', airplane) },
    { name: 'Engine fails', text: words('on the roll ______   low ______   in the pattern ______') },
  ];
}

/** What stops every card: words and numbers, once each. */
function stops(cards: readonly Card[]): Line[] {
  const lines = cards.flatMap((card) => card.stop.items.map((item) => item.line));
  return once(lines).sort((a, b) => Number(hasNumber(b)) - Number(hasNumber(a)));
}

function hazardRows(ready: readonly PreparedTest[]) {
  const rows = ready.flatMap((test) =>
    test.hazards.map(({ hazard, mitigation }) => ({ name: plainText(lineOf(hazard)), text: lineOf(mitigation) })),
  );
  return rows.filter((row, i) => rows.findIndex((other) => other.name === row.name) === i);
}

function passes(ready: readonly PreparedTest[]): Line[] {
  return once(ready.flatMap((test) => test.pass.map(({ line }) => lineOf(line))));
}

function people(flown: boolean) {
  const roles = flown
    ? ['pilot', 'observer or chase', 'ground, radio', 'extinguisher, rescue', 'told of the flight', 'search starts at']
    : ['at the controls', 'outside', 'extinguisher', 'told of the run'];
  return roles.map((role) => emptyBox(role, 'words'));
}

function signatures(flown: boolean) {
  return ['pilot: go / no-go', 'second person: go / no-go', ...(flown ? ['frequencies, calls'] : [])].map((label) =>
    emptyBox(label, 'words'),
  );
}

function once(lines: readonly Line[]): Line[] {
  const seen = new Set<string>();
  return lines.filter((line) => {
    const text = plainText(line).toLowerCase();
    if (seen.has(text)) return false;
    seen.add(text);
    return true;
  });
}

function unique(texts: readonly string[]): string[] {
  return [...new Set(texts)];
}
