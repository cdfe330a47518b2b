/** Which column is which quantity, in which unit, how surely and why; what is not sure is asked. */
import type { Flag } from '../../remarks/index.ts';
import { type Quantity, quantityOf } from '../../units/index.ts';
import { type LogMap, mappedColumn } from '../log-map.ts';
import type { ReadQuestion } from '../read-outcome.ts';
import type { HeaderColumn } from '../text/layout.ts';
import { askQuantity, askUnit, unitFlags } from './ask-column.ts';
import { chooseUnit, type UnitChoice } from './choose-unit.ts';
import { doubtColumns } from './doubt-columns.ts';
import { type FileContext, fileContext } from './file-context.ts';
import { matchName, type NameMatch } from './match-name.ts';
import { numberColumns } from './number-columns.ts';
import { settleNames } from './settle-name.ts';
import { settleUnits } from './settle-units.ts';
import { readUnitText } from './unit-text.ts';
import { summaryOf, type ValueSummary } from './value-summary.ts';

export interface Recognised {
  quantity: string | null;
  unit: string | null;
  confidence: number;
  why: string;
  flags: Flag[];
}

/** A column and its numbers as written; null where it holds text. */
export interface ColumnValues {
  header: HeaderColumn;
  numbers: Float64Array | null;
  /** its cells are words of two states, `UP` and `DOWN` say */
  holdsStates: boolean;
}

/** A column on its way: what it may be, and what is still open about it. */
export interface Draft {
  header: HeaderColumn;
  numbers: Float64Array | null;
  values: ValueSummary | null;
  match: NameMatch;
  /** the one quantity it is taken for, or null */
  quantity: Quantity | null;
  /** name with its index where a map gave one */
  name: string | null;
  choice: UnitChoice | null;
  confirmed: boolean;
  /** what its name or its neighbours leave open, already put into words */
  question: ReadQuestion | null;
}

/** Below this a guess is a question. */
export const SURE_ENOUGH = 0.6;
/** Below this a name says too little even for a question. */
const WORTH_ASKING = 0.3;

/**
 * Recognise every column.
 * @param columns headers and values
 * @param t seconds of the rows, s
 * @param map what a person confirmed, or none
 * @returns one answer a column, and the questions
 */
export function recogniseColumns(
  columns: readonly ColumnValues[],
  t: Float64Array,
  map: LogMap | undefined,
): { channels: Recognised[]; questions: ReadQuestion[] } {
  const units = columns.map(({ header }) => readUnitText(header.unitText));
  const named = columns.map(({ header, holdsStates }, i) => {
    const match = matchName(header.name, units[i] ?? readUnitText(''));
    return holdsStates ? onlyStates(match) : match;
  });
  const values = columns.map(({ numbers }) => (numbers ? summaryOf(numbers) : null));
  const dimensionOf = (name: string) => quantityOf(name)?.dimension;
  const matches = settleNames(named, fileContext(named, units, values, dimensionOf));
  const context = fileContext(matches, units, values, dimensionOf);
  const drafts = columns.map((column, i) =>
    draft(column, matches[i] ?? matchName('', readUnitText('')), values[i] ?? null, context, map),
  );
  const names = numberColumns(drafts);
  settleUnits(drafts, t, context);
  doubtColumns(drafts, t);
  const channels = drafts.map((one, i) => outcomeOf(one, names[i] ?? null));
  return { channels, questions: drafts.flatMap(questionOf) };
}

/** `UP` and `DOWN` have no unit: what is measured is not in a column of such words, and no unit can be asked for. */
function onlyStates(match: NameMatch): NameMatch {
  const may = match.quantities.filter((name) => ['none', 'ratio'].includes(quantityOf(name)?.dimension ?? ''));
  const [first] = match.quantities;
  if (first === undefined || may.length > 0) return { ...match, quantities: may };
  const why = `its cells are words for two states, and ${first.replaceAll('-', ' ')} is a number with a unit`;
  return { ...match, quantities: [], confidence: 0, why, otherQuantity: true };
}

function draft(
  { header, numbers }: ColumnValues,
  match: NameMatch,
  values: ValueSummary | null,
  context: FileContext,
  map: LogMap | undefined,
): Draft {
  const base = { header, numbers, values, match, name: null, choice: null, question: null };
  const confirmed = mappedColumn(map, header.column);
  if (confirmed) {
    const quantity = confirmed.quantity === 'ignore' ? undefined : quantityOf(confirmed.quantity);
    if (!quantity) return { ...base, quantity: null, confirmed: true };
    const guess = chooseUnit(quantity, readUnitText(header.unitText), values, context);
    const unit = confirmed.unit;
    const choice = unit === undefined ? guess : { ...guess, unit, stated: true, doubt: null, confidence: 1 };
    return { ...base, quantity, name: confirmed.quantity, choice, confirmed: true };
  }
  const [only, second] = match.quantities;
  const quantity = only === undefined || second !== undefined || !numbers ? undefined : quantityOf(only);
  if (!quantity || match.confidence < SURE_ENOUGH) return { ...base, quantity: null, confirmed: false };
  const choice = chooseUnit(quantity, readUnitText(header.unitText), values, context);
  return { ...base, quantity, name: only ?? null, choice, confirmed: false };
}

function outcomeOf(draft: Draft, name: string | null): Recognised {
  const { header, match, choice, quantity, confirmed } = draft;
  if (confirmed && !quantity) return { quantity: null, unit: null, confidence: 0, why: 'set aside by hand', flags: [] };
  if (!quantity || !choice || name === null) {
    const confidence = match.quantities.length > 0 ? round(Math.min(match.confidence, 0.5)) : 0;
    return { quantity: null, unit: null, confidence, why: match.why, flags: [] };
  }
  const why = confirmed ? 'confirmed by hand' : `${match.why}; ${choice.why}`;
  const confidence = confirmed ? 1 : round(Math.min(match.confidence, choice.confidence));
  if (draft.question?.id.startsWith('quantity:')) {
    return { quantity: null, unit: null, confidence: Math.min(confidence, 0.5), why, flags: [] };
  }
  return { quantity: name, unit: choice.unit, confidence, why, flags: confirmed ? [] : unitFlags(header, choice) };
}

function questionOf(draft: Draft): ReadQuestion[] {
  const { match, values, numbers, choice, confirmed, quantity } = draft;
  if (draft.question) return [draft.question];
  if (!values || !numbers) return [];
  if (!quantity) {
    const worth = !confirmed && match.quantities.length > 0 && match.confidence >= WORTH_ASKING;
    return worth ? [askQuantity(draft.header, match, values)] : [];
  }
  return choice && choice.unit === null ? [askUnit(draft.header, quantity.name, choice, values)] : [];
}

const round = (value: number) => Number(value.toFixed(2));
