/** What quantity a column's name and stated unit speak of, with a confidence and the reason in words. */
import { baseName, QUANTITIES, quantityOf } from '../../units/index.ts';
import type { Word } from './channel-words.ts';
import { NAME_RULES, type NameRule } from './name-rules.ts';
import { type NameWords, nameWords } from './name-words.ts';
import { readUnitText, type UnitText } from './unit-text.ts';

export interface NameMatch {
  /** best first; several when the name does not tell them apart; none when it says nothing */
  quantities: readonly string[];
  confidence: number;
  why: string;
  /** which of several, from 1; null where the name has no number or side */
  number: number | null;
  /** the name speaks of a quantity near one of ours, but another: it is left unknown without a question */
  otherQuantity: boolean;
}

/** Words that say which one, not what. */
const SIDE: Partial<Record<Word, number>> = { LEFT: 1, RIGHT: 2, CENTRE: 3, AFT: 3, NOSE: 3, MAIN: 1 };
const FREE = new Set<Word>(['NEUTRAL', 'ENGINE', 'LEFT', 'RIGHT', 'CENTRE', 'AFT', 'NOSE', 'MAIN', 'GPS']);
/** Dimensions in which a state, a mark or a quality may be written. */
const COUNTED = ['none', 'count', 'ratio'];
/** `RPM x100`: the numbers are not in the unit that is named. */
const SCALED = /(^|[^\p{L}\p{N}])[x×*] ?10{1,4}(?!\p{N})/iu;
const EXTRA_WORD_COST = 0.3;
/** Words that say what kind of thing is measured: a rule that leaves one aside is about something else. */
const KINDS = new Set<Word>(['TEMP', 'VOLT', 'AMP', 'RATE', 'FLOW', 'FORCE', 'FAULT']);

const NONE: NameMatch = {
  quantities: [],
  confidence: 0,
  why: 'the name is not known',
  number: null,
  otherQuantity: false,
};

/**
 * Match a column by its name and the unit stated for it.
 * @param name header text without its unit, text
 * @param unit the stated unit as read, object
 * @returns the quantity or quantities it may be
 */
export function matchName(name: string, unit: UnitText): NameMatch {
  const read = nameWords(name);
  if (SCALED.test(name) || SCALED.test(unit.text)) {
    return { ...NONE, otherQuantity: true, why: `"${name}" is written in tens, hundreds or thousands of its unit` };
  }
  const lettered = singleLetter(name, unit) ?? letterAndNumber(name, unit) ?? bareUnit(name, read);
  if (lettered) return lettered;
  if (read.words.length === 0) return NONE;
  if (read.words.includes('OTHER') || read.words.includes('SECOND_ENGINE')) {
    return { ...NONE, otherQuantity: true, why: `"${name}" names something that no reduction uses` };
  }
  let best: { rule: NameRule; score: number } | undefined;
  for (const rule of NAME_RULES) {
    const score = fitOf(rule, read, unit);
    if (score > (best?.score ?? 0)) best = { rule, score };
  }
  if (!best) return NONE;
  const wrong = contradiction(best.rule, unit, read);
  if (wrong) return { ...NONE, otherQuantity: true, why: wrong };
  const { rule } = best;
  const extra = read.unknown.length > 0 ? `, though "${read.unknown.join(' ')}" in it is not known` : '';
  return {
    quantities: rule.quantities,
    confidence: Math.max(0.05, best.score > 1 ? rule.confidence : rule.confidence - cost(rule, read)),
    why: `the name "${name}" ${rule.quantities.length > 1 ? 'fits several quantities' : 'says so'}${extra}`,
    number: numberOf(read),
    otherQuantity: false,
  };
}

function cost(rule: NameRule, read: NameWords): number {
  const words = new Set<Word>(rule.words);
  const left = read.words.filter((word) => !words.has(word) && !FREE.has(word));
  const others = left.filter((word) => KINDS.has(word) && rule.words.length === 1).length;
  return EXTRA_WORD_COST * (left.length + others + read.unknown.length);
}

/** Rules compete by how many words they use, then by confidence; unused words count against. */
function fitOf(rule: NameRule, read: NameWords, unit: UnitText): number {
  if (!rule.words.every((word) => read.words.includes(word))) return 0;
  if (rule.dimension && !unit.units.some((one) => one.dimension === rule.dimension)) return 0;
  return Math.max(
    0.01,
    rule.confidence + 0.2 * rule.words.length + (rule.dimension ? 0.05 : 0) - cost(rule, read) - 0.2,
  );
}

/** The stated unit may show that the name means something else. */
function contradiction(rule: NameRule, unit: UnitText, read: NameWords): string | null {
  const [quantity = ''] = rule.quantities;
  if (quantity === 'track-true' && (unit.qualifier === 'magnetic' || read.words.includes('MAGNETIC'))) {
    return 'it is measured from magnetic north, and the glossary has the true track only';
  }
  if (quantity === 'heading-magnetic' && (unit.qualifier === 'true' || read.words.includes('TRUE'))) {
    return 'it is measured from true north, and the glossary has the magnetic heading only';
  }
  if (quantity === 'vertical-speed' && read.words.includes('GPS')) {
    return 'it comes from satellites, not from the instrument';
  }
  if (unit.qualifier === 'ground' && quantity.endsWith('altitude')) return 'it is measured from the ground below';
  const dimension = quantityOf(baseName(quantity))?.dimension;
  if (rule.quantities.length === 1 && unit.units.length > 0 && dimension && dimension !== 'none') {
    if (!unit.units.some((one) => one.dimension === dimension || isRatioOf(dimension, one.dimension))) {
      return `its unit "${unit.text}" does not measure ${quantity.replaceAll('-', ' ')}`;
    }
  }
  const isState = rule.quantities.length === 1 && dimension === 'none' && unit.units.length > 0;
  if (isState && !unit.units.some((one) => COUNTED.includes(one.dimension))) {
    return `its unit "${unit.text}" measures something, and ${quantity.replaceAll('-', ' ')} has no unit`;
  }
  return null;
}

function isRatioOf(dimension: string, stated: string): boolean {
  return dimension === 'ratio' && (stated === 'none' || stated === 'count');
}

function numberOf(read: NameWords): number | null {
  const [first] = read.numbers;
  if (first !== undefined && first >= 1 && first <= 24) return first;
  for (const word of read.words) {
    const side = SIDE[word];
    if (side !== undefined) return side;
  }
  return null;
}

/** A column named by its unit alone: one of what that unit measures. */
function bareUnit(name: string, read: NameWords): NameMatch | null {
  const [unit] = readUnitText(name).units;
  if (!unit || read.words.some((word) => word !== 'TEMP')) return null;
  const quantities = QUANTITIES.filter((one) => one.dimension === unit.dimension && one.dimension !== 'none');
  if (quantities.length < 2) return null;
  const why = `"${name}" is a unit and names nothing`;
  return { quantities: quantities.map((one) => one.name), confidence: 0.4, why, number: null, otherQuantity: false };
}

/** `E1`, `C3`: exhaust and head of a cylinder on many displays, yet the letter alone is no proof. */
function letterAndNumber(name: string, unit: UnitText): NameMatch | null {
  const m = /^([EC])[ _-]?(\d)$/i.exec(name.trim());
  if (!m || unit.units.some((one) => one.dimension !== 'temperature')) return null;
  const quantity = m[1]?.toUpperCase() === 'E' ? 'exhaust-gas-temperature' : 'cylinder-head-temperature';
  const why = `"${name}" may be the ${quantity.replaceAll('-', ' ')} of a cylinder, and may be something else`;
  return { quantities: [quantity], confidence: 0.45, why, number: Number(m[2]), otherQuantity: false };
}

/** `Q`, `P`, `R` are rates about the axes only where the unit says so; `G` may be the load factor. */
function singleLetter(name: string, unit: UnitText): NameMatch | null {
  const letter = name.trim().toUpperCase();
  if (/^G'?S?$/.test(letter) && letter !== 'GS' && unit.units.every((one) => one.dimension === 'acceleration')) {
    const why = `"${name}" may be the load factor, and says no more`;
    return { quantities: ['normal-acceleration'], confidence: 0.45, why, number: null, otherQuantity: false };
  }
  if (!['P', 'Q', 'R'].includes(letter) || !unit.units.some((one) => one.dimension === 'angle-rate')) return null;
  const quantity = { P: 'roll-rate', Q: 'pitch-rate', R: 'yaw-rate' }[letter] ?? 'pitch-rate';
  return {
    quantities: [quantity],
    confidence: 0.88,
    why: `"${letter}" with a rate of turn as its unit`,
    number: null,
    otherQuantity: false,
  };
}
