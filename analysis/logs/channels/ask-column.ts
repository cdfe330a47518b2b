/** Questions and remarks about one column, in words a person can answer. */
import { type Flag, flag } from '../../remarks/index.ts';
import type { ReadQuestion } from '../read-outcome.ts';
import type { HeaderColumn } from '../text/layout.ts';
import type { UnitChoice } from './choose-unit.ts';
import type { NameMatch } from './match-name.ts';
import type { ValueSummary } from './value-summary.ts';

/**
 * What is this column?
 * @param header the column, object
 * @param match what its name may mean, object
 * @param values extent of its values, object
 * @returns the question
 */
export function askQuantity(header: HeaderColumn, match: NameMatch, values: ValueSummary): ReadQuestion {
  const [only, second] = match.quantities;
  const question =
    only !== undefined && second === undefined
      ? `Is the column "${header.column}" ${words(only)}?`
      : `What is the column "${header.column}"?`;
  return {
    id: `quantity:${header.column}`,
    question,
    choices: [...match.quantities, 'ignore'],
    because: `${match.why}; ${extent(values)}`,
    column: header.column,
    concerns: [...match.quantities],
  };
}

/**
 * In which unit is this column?
 * @param header the column, object
 * @param quantity glossary name, text
 * @param choice what was found about its unit, object
 * @param values extent of its values, object
 * @returns the question
 */
export function askUnit(
  header: HeaderColumn,
  quantity: string,
  choice: UnitChoice,
  values: ValueSummary,
): ReadQuestion {
  return {
    id: `unit:${header.column}`,
    question: `In which unit is "${header.column}" (${words(quantity)})?`,
    choices: [...choice.candidates],
    because: `${choice.why}; ${extent(values)}`,
    column: header.column,
    concerns: [quantity],
  };
}

/**
 * Remarks on how the unit of a column was found.
 * @param header the column, object
 * @param choice what was found about its unit, object
 * @returns flags
 */
export function unitFlags(header: HeaderColumn, choice: UnitChoice): Flag[] {
  const where = `Column "${header.column}": ${choice.why}.`;
  const mend = 'Set the unit, or the quantity, of this column in the channel table.';
  if (choice.doubt !== null) {
    const flags = [flag('unit-contradictory', `${where} ${mend}`)];
    const impossible = /no airplane/.test(choice.why) ? [flag('implausible-unit', `${where} ${mend}`)] : [];
    return choice.doubt === 'implausible' ? impossible : [...impossible, ...flags];
  }
  return choice.stated ? [] : [flag('unit-not-stated', where)];
}

const extent = (values: ValueSummary) => `its values run from ${short(values.low)} to ${short(values.high)}`;
const words = (name: string) => name.replace(/#\d+$/, '').replaceAll('-', ' ');
const short = (value: number) => String(Number(value.toPrecision(5)));
