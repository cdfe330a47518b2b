/** Which column is which quantity, in which unit, how surely and why; what is not sure is asked. */
import { type Flag, flag } from '../../remarks/index.ts';
import { baseName, quantityOf, toSi } from '../../units/index.ts';
import { type LogMap, mappedColumn } from '../log-map.ts';
import type { ReadQuestion } from '../read-outcome.ts';
import type { HeaderColumn } from '../text/layout.ts';
import { chooseUnit, type FileFacts, type UnitChoice } from './choose-unit.ts';
import { matchName, type NameMatch } from './match-name.ts';
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
}

/** Below this a guess is a question. */
export const SURE_ENOUGH = 0.6;
/** Below this a name says too little even for a question. */
const WORTH_ASKING = 0.3;

/**
 * Recognise every column.
 * @param columns headers and values
 * @param map what a person confirmed, or none
 * @returns one answer a column, and the questions
 */
export function recogniseColumns(
  columns: readonly ColumnValues[],
  map: LogMap | undefined,
): { channels: Recognised[]; questions: ReadQuestion[] } {
  const matches = columns.map(({ header }) => matchName(header.name, readUnitText(header.unitText)));
  const summaries = columns.map(({ numbers }) => (numbers ? summaryOf(numbers) : null));
  const facts = factsOf(columns, matches, summaries);
  const questions: ReadQuestion[] = [];
  const channels = columns.map((column, i) => {
    const match = matches[i];
    const confirmed = mappedColumn(map, column.header.column);
    if (confirmed) return fromMap(column, confirmed, summaries[i] ?? null, facts);
    if (!match || !column.numbers) return unknown(match?.why ?? 'it holds text');
    return recogniseOne(column, match, summaries[i] ?? null, facts, questions);
  });
  numberThem(columns, matches, channels);
  return { channels, questions };
}

const unknown = (why: string): Recognised => ({ quantity: null, unit: null, confidence: 0, why, flags: [] });

function fromMap(
  { header }: ColumnValues,
  confirmed: { quantity: string; unit?: string | undefined },
  values: ValueSummary | null,
  facts: FileFacts,
): Recognised {
  if (confirmed.quantity === 'ignore') return unknown('set aside by hand');
  const quantity = quantityOf(confirmed.quantity);
  if (!quantity) return unknown('the map names no quantity of the glossary');
  const unit = confirmed.unit ?? chooseUnit(quantity, readUnitText(header.unitText), values, facts).unit;
  return { quantity: confirmed.quantity, unit, confidence: 1, why: 'confirmed by hand', flags: [] };
}

function recogniseOne(
  { header }: ColumnValues,
  match: NameMatch,
  values: ValueSummary | null,
  facts: FileFacts,
  questions: ReadQuestion[],
): Recognised {
  const [only] = match.quantities;
  if (match.quantities.length > 1 && match.confidence >= WORTH_ASKING && values) {
    questions.push({
      id: `quantity:${header.column}`,
      question: `What is the column "${header.column}"?`,
      choices: [...match.quantities, 'ignore'],
      because: `${match.why}; its values run from ${short(values.low)} to ${short(values.high)}`,
      column: header.column,
      concerns: [...match.quantities],
    });
    return { ...unknown(match.why), confidence: match.confidence };
  }
  if (only === undefined || match.confidence < WORTH_ASKING) return unknown(match.why);
  const entry = quantityOf(only);
  if (!entry) return unknown(match.why);
  const choice = chooseUnit(entry, readUnitText(header.unitText), values, facts);
  const confidence = Number(Math.min(match.confidence, choice.confidence).toFixed(2));
  const why = `${match.why}; ${choice.why}`;
  const flags = unitFlags(header, choice);
  if (values && match.confidence < SURE_ENOUGH) {
    questions.push({
      id: `quantity:${header.column}`,
      question: `Is the column "${header.column}" ${only.replaceAll('-', ' ')}?`,
      choices: [only, 'ignore'],
      because: match.why,
      column: header.column,
      concerns: [only],
    });
    return { quantity: null, unit: null, confidence, why, flags };
  }
  if (choice.unit === null && values) {
    questions.push({
      id: `unit:${header.column}`,
      question: `In which unit is "${header.column}" (${only.replaceAll('-', ' ')})?`,
      choices: choice.ask,
      because: `${choice.why}; values run from ${short(values.low)} to ${short(values.high)}`,
      column: header.column,
      concerns: [only],
    });
  }
  return { quantity: only, unit: choice.unit, confidence, why, flags };
}

function unitFlags(header: HeaderColumn, choice: UnitChoice): Flag[] {
  if (choice.contradictory) return [flag('unit-contradictory', `column "${header.column}": ${choice.why}`)];
  if (!choice.stated) return [flag('unit-not-stated', `column "${header.column}": ${choice.why}`)];
  return [];
}

function factsOf(
  columns: readonly ColumnValues[],
  matches: readonly NameMatch[],
  values: readonly (ValueSummary | null)[],
): FileFacts {
  const temperatureUnits = new Set<string>();
  let engineRan = false;
  columns.forEach(({ header }, i) => {
    const unit = readUnitText(header.unitText).units.find((one) => one.dimension === 'temperature');
    if (unit) temperatureUnits.add(unit.id);
    const speed = matches[i]?.quantities[0] === 'engine-speed' ? values[i] : null;
    if (speed && toSi(speed.middle, 'rpm') > 15) engineRan = true;
  });
  return { engineRan, temperatureUnits };
}

/** Several columns of one indexed quantity get numbers; of one that is not indexed the surest is kept. */
function numberThem(columns: readonly ColumnValues[], matches: readonly NameMatch[], channels: Recognised[]): void {
  const groups = new Map<string, number[]>();
  channels.forEach((channel, i) => {
    if (channel.quantity === null || channel.quantity.includes('#') || channel.why === 'confirmed by hand') return;
    groups.set(channel.quantity, [...(groups.get(channel.quantity) ?? []), i]);
  });
  for (const [name, members] of groups) {
    if (quantityOf(baseName(name))?.indexed) {
      giveNumbers(name, members, matches, channels);
      continue;
    }
    const best = members.reduce((a, b) => ((channels[b]?.confidence ?? 0) > (channels[a]?.confidence ?? 0) ? b : a));
    for (const i of members) {
      const channel = channels[i];
      if (i === best || !channel) continue;
      channel.why = `${channel.why}; "${columns[best]?.header.column}" is already ${name.replaceAll('-', ' ')}`;
      channel.quantity = null;
      channel.confidence = 0.2;
    }
  }
}

function giveNumbers(
  name: string,
  members: readonly number[],
  matches: readonly NameMatch[],
  channels: Recognised[],
): void {
  const numbers = members.map((i) => matches[i]?.number ?? null);
  const distinct = new Set(numbers).size === numbers.length && !numbers.includes(null);
  members.forEach((i, k) => {
    const channel = channels[i];
    if (!channel) return;
    const number = distinct ? numbers[k] : members.length === 1 ? (numbers[k] ?? null) : k + 1;
    channel.quantity = number === null ? `${name}#1` : `${name}#${number}`;
  });
}

const short = (value: number) => String(Number(value.toPrecision(5)));
