/** What is ticked before start-up: the conditions of the test, its setup, and what every run of its kind needs. */
import type { Airplane } from '../airplane/index.ts';
import type { CatalogueTest, PreparedTest } from '../catalogue/index.ts';
import { type Line, plainText, words } from './line.ts';
import { lineOf } from './prepared-line.ts';
import { spokenNumbers } from './spoken-numbers.ts';

/** conditions that ask for nothing */
const NOTHING = /^(not critical|any$|ground$|as the setup says|n\/a)/;

/** the condition's name stands before words that would not say what they are about */
const NAMES: Readonly<Record<string, { name: string; said: RegExp }>> = {
  wind: { name: 'Wind', said: /^(nose )?into wind|smooth air|shear|^crosswind/i },
  weight: { name: 'Weight', said: /weight|load|gross/i },
  cg: { name: 'CG', said: /\bCG\b|limit/i },
  fuel: { name: 'Fuel', said: /fuel|tank|reserve full|empty/i },
  altitude: { name: 'Height', said: /ground|field|altitude|runway|pass/i },
};

const FLOWN = new Set(['first-flight', 'envelope', 'systems-flight', 'performance', 'handling']);
const IN_THE_AIR = ['Loose articles stowed', 'Ground crew told, emergency cover in place'];

/**
 * The gates of a card.
 * @param test the test of the catalogue, object
 * @param ready the test made ready for the airplane, object
 * @param airplane the description, object
 * @returns lines to tick
 */
export function gatesFor(test: CatalogueTest, ready: PreparedTest, airplane: Airplane): Line[] {
  const conditions = conditionLines(ready);
  const setup = ready.setup.map((line) => spokenNumbers(lineOf(line)));
  const flown = FLOWN.has(test.stage) && test.flightMinutes > 0;
  const logged = airplane.recorders.length > 0 && test.channels.length > 0;
  return [
    ...conditions,
    ...setup,
    ...(flown ? IN_THE_AIR.map(words) : []),
    ...(logged ? [words('Recorders on, clock noted')] : []),
  ].map(capital);
}

/**
 * The conditions of a test that ask for something, each said in full.
 * @param ready the test made ready for the airplane, object
 * @param kinds which conditions; all where it is left out
 * @returns lines to tick
 */
export function conditionLines(ready: PreparedTest, kinds?: readonly string[]): Line[] {
  return ready.conditions
    .filter(({ what, line }) => (!kinds || kinds.includes(what)) && !NOTHING.test(line.text))
    .map(({ what, line }) => capital(named(what, spokenNumbers(lineOf(line)))));
}

function named(what: string, line: Line): Line {
  const rule = NAMES[what];
  if (!rule || rule.said.test(plainText(line))) return line;
  return [...words(`${rule.name} `), ...line];
}

function capital(line: Line): Line {
  const [first, ...rest] = line;
  if (first?.kind !== 'text') return line;
  return [{ kind: 'text', text: first.text.charAt(0).toUpperCase() + first.text.slice(1) }, ...rest];
}
