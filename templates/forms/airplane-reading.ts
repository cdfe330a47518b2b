/** What was typed into a section, put into the description. What the form did not show is left as it was. */
import { isObject, type Json, valueAt, withValue } from '../words/json-path.ts';
import { typedNumber } from '../words/typed-number.ts';
import { appliesTo } from './airplane-applies.ts';
import type { FieldProblem, Typed } from './airplane-form.ts';
import { airplaneShape, fieldAt } from './airplane-shape.ts';
import { SECTIONS } from './airplane-words.ts';
import type { Field, Shape, StatedShape } from './schema-shape.ts';

export interface ReadSection {
  json: unknown;
  problems: FieldProblem[];
}

interface Reading {
  json: unknown;
  typed: Typed;
  who: string;
  problems: FieldProblem[];
}

/**
 * Put a posted section into a description.
 * @param section id in SECTIONS, text
 * @param json the description as stored
 * @param typed what was posted
 * @param who enters it; named on each limit that changes, text
 * @returns a changed copy, and what could not be read; that is left out of the copy
 */
export function readSection(section: string, json: unknown, typed: Typed, who: string): ReadSection {
  const keys = SECTIONS.find((one) => one.id === section)?.keys ?? [];
  const reading: Reading = { json, typed, who, problems: [] };
  for (const field of airplaneShape().filter((one) => keys.includes(one.key))) readField(field, field.key, reading);
  return { json: reading.json, problems: reading.problems };
}

/** Put some posted fields into a description, by their paths. */
export function readPicked(paths: readonly string[], json: unknown, typed: Typed, who: string): ReadSection {
  const reading: Reading = { json, typed, who, problems: [] };
  for (const path of paths) {
    const field = fieldAt(path);
    if (field) readField(field, path, reading);
  }
  return { json: reading.json, problems: reading.problems };
}

/** Posted fields of any schema, as JSON under their prefix. */
export function readShaped(fields: readonly Field[], prefix: string, typed: Typed): ReadSection {
  const reading: Reading = { json: {}, typed, who: '', problems: [] };
  readFields(fields, prefix, reading);
  return { json: valueAt(reading.json, prefix) ?? {}, problems: reading.problems };
}

/** Add an empty entry to a list, or a named one to a record. */
export function addEntry(json: unknown, path: string, name: string): unknown {
  const value = valueAt(json, path);
  if (name !== '') return withValue(json, `${path}.${name}`, {});
  return withValue(json, path, [...(Array.isArray(value) ? value : []), {}]);
}

/** Take an entry out of a list or a record. */
export function removeEntry(json: unknown, path: string): unknown {
  return withValue(json, path, undefined);
}

function readField(field: Field, path: string, reading: Reading): void {
  const { shape } = field;
  if (!appliesTo(path, (at) => valueAt(reading.json, at))) return;
  if (shape.is === 'group') {
    readFields(shape.fields, path, reading);
    dropIfEmpty(field, path, reading);
  } else if (shape.is === 'fitted') readFitted(shape.fields, path, reading);
  else if (shape.is === 'variants') readVariants(shape, path, reading);
  else if (shape.is === 'list' || shape.is === 'named') readEntries(shape, path, reading);
  else if (shape.is === 'stated') readStated(shape, path, reading);
  else if (shape.is !== 'list-of-variants') readLeaf(shape, path, reading);
}

function readFields(fields: readonly Field[], path: string, reading: Reading): void {
  for (const inner of fields) readField(inner, `${path}.${inner.key}`, reading);
}

function readFitted(fields: readonly Field[], path: string, reading: Reading): void {
  if (!reading.typed.has(path)) return;
  const before = valueAt(reading.json, path);
  const isFitted = isTicked(reading, path);
  put(reading, path, isFitted && (isObject(before) ? before : {}));
  if (isFitted) readFields(fields, path, reading);
}

function readVariants(shape: Extract<Shape, { is: 'variants' }>, path: string, reading: Reading): void {
  const chosen = textAt(reading, `${path}.${shape.by}`);
  if (chosen === undefined) return;
  const before = valueAt(reading.json, path);
  const isSame = isObject(before) && before[shape.by] === chosen;
  put(reading, path, isSame ? before : { [shape.by]: chosen });
  readFields(shape.variants.get(chosen) ?? [], path, reading);
}

function readEntries(shape: Extract<Shape, { is: 'list' | 'named' }>, path: string, reading: Reading): void {
  const entries = new Set<string>();
  for (const name of reading.typed.keys()) {
    if (name.startsWith(`${path}.`)) entries.add(name.slice(path.length + 1).split('.')[0] ?? '');
  }
  for (const entry of entries) {
    if (shape.is === 'list' && !/^\d{1,3}$/.test(entry)) continue;
    if (valueAt(reading.json, path) === undefined) put(reading, path, shape.is === 'list' ? [] : {});
    if (!isObject(valueAt(reading.json, `${path}.${entry}`))) put(reading, `${path}.${entry}`, {});
    readFields(shape.fields, `${path}.${entry}`, reading);
  }
}

type Leaf = Exclude<Shape, { is: 'group' | 'fitted' | 'list' | 'list-of-variants' | 'named' | 'variants' | 'stated' }>;

function readLeaf(shape: Leaf, path: string, reading: Reading): void {
  const text = textAt(reading, path);
  if (text !== undefined) put(reading, path, leafValue(shape, path, text, reading));
}

function leafValue(shape: Leaf, path: string, text: string, reading: Reading): unknown {
  switch (shape.is) {
    case 'tick':
      return isTicked(reading, path);
    case 'ticks':
      return (reading.typed.get(path) ?? []).filter((one) => one !== '');
    case 'words':
      return text
        .split(',')
        .map((one) => one.trim())
        .filter((one) => one !== '');
    case 'choice':
      return text === '' ? (shape.orNone ? false : undefined) : text;
    case 'text':
      return text === '' ? undefined : text;
    case 'number':
      return text === '' ? undefined : numberAt(reading, path, text);
  }
}

function readStated(shape: StatedShape, path: string, reading: Reading): void {
  if (reading.typed.has(`${path}.value`)) put(reading, path, statedValue(shape, path, reading));
}

function statedValue(shape: StatedShape, path: string, reading: Reading): Json | undefined {
  const at = (key: string) => textAt(reading, `${path}.${key}`) ?? '';
  const before = valueAt(reading.json, path);
  if (at('value') === '') {
    if (at('source') !== '' && at('source') !== valueAt(before, 'source')) {
      reading.problems.push({ path, message: 'The source is given but no value. Write the value, or clear both.' });
    }
    return undefined;
  }
  const stated: Json = {
    value: numberAt(reading, path, at('value')),
    unit: at('unit'),
    ...(shape.hasScale ? { scale: at('scale') } : {}),
    ...(at('source') === '' ? {} : { source: at('source') }),
    ...(at('status') === '' ? {} : { status: at('status') }),
    ...(at('u95') === '' ? {} : { u95: numberAt(reading, path, at('u95')) }),
  };
  const isSame = ['value', 'unit', 'source'].every((key) => valueAt(before, key) === stated[key]);
  const isSigned = shape.needsSource && reading.who !== '';
  const enteredBy = isSame ? valueAt(before, 'enteredBy') : isSigned ? reading.who : undefined;
  return { ...stated, ...(enteredBy === undefined ? {} : { enteredBy }) };
}

function numberAt(reading: Reading, path: string, text: string): number | undefined {
  const number = typedNumber(text);
  if (number !== null) return number;
  reading.problems.push({
    path,
    message: `“${text}” is not a number. Write the number alone; the unit stands beside it.`,
  });
  return undefined;
}

function dropIfEmpty(field: Field, path: string, reading: Reading): void {
  const value = valueAt(reading.json, path);
  if (!field.required && isObject(value) && Object.keys(value).length === 0) put(reading, path, undefined);
}

function textAt(reading: Reading, path: string): string | undefined {
  return reading.typed.get(path)?.at(-1)?.trim();
}

function isTicked(reading: Reading, path: string): boolean {
  return reading.typed.get(path)?.includes('yes') ?? false;
}

function put(reading: Reading, path: string, value: unknown): void {
  if (value === undefined && valueAt(reading.json, path) === undefined) return;
  reading.json = withValue(reading.json, path, value);
}
