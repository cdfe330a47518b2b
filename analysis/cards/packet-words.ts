/** Lines of the packet's pages: numbers of the airplane in its own units, or the place where one is missing. */
import type { Airplane } from '../airplane/index.ts';
import { type Known, type Measure, resolveReference, shows } from '../catalogue/index.ts';
import { fromSi, show } from '../units/index.ts';
import type { Box } from './card.ts';
import { type Line, words } from './line.ts';
import { tokenOf } from './prepared-line.ts';

/**
 * A number of the airplane by its reference, as the cards print it.
 * @param path reference of the catalogue, text
 * @param airplane the description, object
 * @param known accepted results, object
 * @returns a line of one token
 */
export function numberOf(path: string, airplane: Airplane, known: Known = {}): Line {
  return [tokenOf(resolveReference(path, airplane, known))];
}

/** An SI value with its unit as the airplane's instruments show it. */
export function shownValue(si: number, measure: Measure, airplane: Airplane, u95?: number): Line {
  const { unit, symbol, decimals } = shows(measure, airplane);
  const shown = show(si, unit, u95 === undefined ? { decimals } : { u95 });
  const number = shown.half === undefined ? shown.number : `${shown.number} ± ${shown.half}`;
  return symbol === '' ? words(number) : [{ kind: 'number', number, unit: symbol, estimated: false }];
}

/** An SI value in the airplane's unit, bare. */
export function bareValue(si: number, measure: Measure, airplane: Airplane): number {
  return fromSi(si, shows(measure, airplane).unit);
}

/** Lines one after the other. */
export function joined(...parts: (Line | string)[]): Line {
  return parts.flatMap((part) => (typeof part === 'string' ? words(part) : part));
}

/** An empty box to write in. */
export function emptyBox(label: string, write: Box['write'], unit = '', digits = 3): Box {
  const key = label.toLowerCase().replace(/[^a-z0-9]+/g, '-');
  return { key, label, unit, unitId: null, quantity: null, write, digits, expect: null, measured: null };
}
