/** An airplane's description as facts to read: each figure with its source and who entered it, what is unknown named. */
import { isUnit, unitOf } from '../../analysis/units/index.ts';
import { isObject, valueAt } from '../words/json-path.ts';
import { nameInWords, sentence } from '../words/list.ts';
import { appliesTo } from './airplane-applies.ts';
import { airplaneShape } from './airplane-shape.ts';
import { choiceOf, labelOf, oneOf, SECTIONS } from './airplane-words.ts';
import type { Field, Shape } from './schema-shape.ts';
import { isToConfirm } from './to-confirm.ts';

export interface AirplaneFact {
  name: string;
  text: string;
  /** source, how far known, who entered it */
  basis: string;
  /** the same apart: how far known and from where, and who entered it */
  source: string;
  enteredBy: string;
}

export interface FactGroup {
  title: string;
  facts: AirplaneFact[];
}

export interface SectionFacts {
  groups: FactGroup[];
  /** labels of what is not stated */
  unknown: string[];
}

interface Telling extends SectionFacts {
  json: unknown;
}

/**
 * The facts of a section.
 * @param section id in SECTIONS, text
 * @param json the description as stored
 */
export function sectionFacts(section: string, json: unknown): SectionFacts {
  const keys = SECTIONS.find((one) => one.id === section)?.keys ?? [];
  const telling: Telling = { json, groups: [], unknown: [] };
  const plain = open(telling, '');
  for (const field of airplaneShape().filter((one) => keys.includes(one.key)))
    tell(field, field.key, plain, telling, keys);
  return { groups: telling.groups.filter((one) => one.facts.length > 0), unknown: telling.unknown };
}

function tell(field: Field, path: string, group: FactGroup, telling: Telling, keys: readonly string[] = []): void {
  const { shape } = field;
  if (!appliesTo(path, (at) => valueAt(telling.json, at))) return;
  const value = valueAt(telling.json, path) ?? (shape.is === 'group' ? undefined : field.fallback);
  if (shape.is === 'group') {
    const own = keys.length === 1 ? group : open(telling, labelOf(path));
    for (const inner of shape.fields) tell(inner, `${path}.${inner.key}`, own, telling);
  } else if (shape.is === 'fitted') {
    const own = open(telling, labelOf(path));
    if (!isObject(value)) own.facts.push(plainFact(labelOf(path), 'none'));
    else for (const inner of shape.fields) tell(inner, `${path}.${inner.key}`, own, telling);
  } else if (shape.is === 'list' || shape.is === 'named') tellEntries(shape, path, value, telling);
  else if (shape.is === 'variants') {
    const chosen = String(valueAt(telling.json, `${path}.${shape.by}`) ?? '');
    group.facts.push(plainFact(labelOf(path), choiceOf(`${path}.${shape.by}`, chosen, chosen)));
    for (const inner of shape.variants.get(chosen) ?? []) tell(inner, `${path}.${inner.key}`, group, telling);
  } else if (shape.is !== 'list-of-variants') {
    const fact = leafFact(shape, path, value);
    if (fact) group.facts.push(isToConfirm(telling.json, path) ? unconfirmed(fact) : fact);
    else telling.unknown.push(group.title === '' ? labelOf(path) : `${group.title}: ${labelOf(path).toLowerCase()}`);
  }
}

function tellEntries(
  shape: Extract<Shape, { is: 'list' | 'named' }>,
  path: string,
  value: unknown,
  telling: Telling,
): void {
  const entries = Array.isArray(value) ? value.map((_, i) => String(i)) : isObject(value) ? Object.keys(value) : [];
  if (entries.length === 0) telling.unknown.push(labelOf(path));
  for (const entry of entries) {
    const name = valueAt(telling.json, `${path}.${entry}.name`);
    const title = shape.is === 'named' ? nameInWords(entry) : `${sentence(oneOf(path))} ${name ?? Number(entry) + 1}`;
    const own = open(telling, title);
    for (const inner of shape.fields.filter((one) => one.key !== 'name')) {
      tell(inner, `${path}.${entry}.${inner.key}`, own, telling);
    }
  }
}

type Leaf = Exclude<Shape, { is: 'group' | 'fitted' | 'list' | 'list-of-variants' | 'named' | 'variants' }>;

function leafFact(shape: Leaf, path: string, value: unknown): AirplaneFact | undefined {
  const name = labelOf(path);
  if (shape.is === 'stated') return isObject(value) ? { name, ...statedInWords(value) } : undefined;
  if (shape.is === 'tick') return plainFact(name, value === true ? 'yes' : 'no');
  if (value === false) return plainFact(name, 'none');
  if (Array.isArray(value)) return value.length === 0 ? undefined : plainFact(name, value.map(String).join(', '));
  if (value === undefined || value === '') return undefined;
  const text = String(value);
  if (shape.is !== 'choice') return plainFact(name, text);
  const known = shape.options.find((one) => one.value === text)?.text ?? text;
  return plainFact(name, choiceOf(path, text, known));
}

function plainFact(name: string, text: string): AirplaneFact {
  return { name, text, basis: '', source: '', enteredBy: '' };
}

function unconfirmed(fact: AirplaneFact): AirplaneFact {
  if (fact.source.includes('to be confirmed')) return fact;
  const mark = (text: string) => ['to be confirmed', text].filter(Boolean).join(' · ');
  return { ...fact, basis: mark(fact.basis), source: mark(fact.source) };
}

const STATUS: Record<string, string> = {
  estimated: 'estimated',
  designer: 'designer’s or maker’s figure',
  measured: 'measured in this airplane',
};

/** A stated number with its unit, as entered, and what it rests on. */
export function statedInWords(stated: Record<string, unknown>): Omit<AirplaneFact, 'name'> {
  const unit = String(stated.unit ?? '');
  const symbol = isUnit(unit) ? unitOf(unit).symbol : unit;
  const scale = typeof stated.scale === 'string' ? ` ${stated.scale}` : '';
  const half = stated.u95 === undefined ? '' : ` ± ${String(stated.u95)}`;
  const space = symbol === '' || symbol === '°' ? '' : ' ';
  const number = String(stated.value).replace('-', '−');
  const enteredBy = typeof stated.enteredBy === 'string' ? stated.enteredBy : '';
  const source = [STATUS[String(stated.status)] ?? '', typeof stated.source === 'string' ? stated.source : '']
    .filter(Boolean)
    .join(' · ');
  return {
    text: `${number}${half}${space}${symbol}${scale}`,
    basis: [source, enteredBy === '' ? '' : `entered by ${enteredBy}`].filter(Boolean).join(' · '),
    source,
    enteredBy,
  };
}

function open(telling: Telling, title: string): FactGroup {
  const group: FactGroup = { title, facts: [] };
  telling.groups.push(group);
  return group;
}
