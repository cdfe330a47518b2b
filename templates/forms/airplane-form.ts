/** A section of the airplane's description as a form: groups of fields, with what was typed and what is wrong with it. */
import { QUANTITIES, quantityOf } from '../../analysis/units/index.ts';
import { choiceField, type FieldPart, type FieldWords, textField, tickField, ticksField } from '../parts/field.view.ts';
import { isObject, valueAt } from '../words/json-path.ts';
import { nameInWords, sentence } from '../words/list.ts';
import { appliesTo } from './airplane-applies.ts';
import { airplaneShape, fieldAt } from './airplane-shape.ts';
import { choiceOf, hintOf, labelOf, oneOf, SECTIONS } from './airplane-words.ts';
import { type Field, type Option, type Shape, unitOptions } from './schema-shape.ts';
import { statedLeaf } from './stated-leaf.ts';

/** What was posted, by field name. */
export type Typed = ReadonlyMap<string, readonly string[]>;

export interface FieldProblem {
  path: string;
  message: string;
}

export interface FormGroup {
  title: string;
  hint: string;
  /** what does not fit in a whole list or group, or is to be confirmed */
  doubt: string;
  fields: FieldPart[];
  /** path of this entry of a list, where it can be taken out */
  remove: string;
  /** what to add to the list that ends here: path and words, with choices where the entry has a name of its own */
  add: { path: string; text: string; names: Option[] } | null;
}

interface Making {
  json: unknown;
  typed: Typed;
  problems: readonly FieldProblem[];
  doubts: readonly FieldProblem[];
  groups: FormGroup[];
  brief: boolean;
}

/**
 * The form of a section.
 * @param section id in SECTIONS, text
 * @param json the description as it stands, with what was typed so far
 * @param typed what was posted, kept as it was typed
 * @param problems what is wrong with it, by path
 * @param doubts what stands but does not fit another figure, by path
 */
export function sectionForm(
  section: string,
  json: unknown,
  typed: Typed = new Map(),
  problems: readonly FieldProblem[] = [],
  doubts: readonly FieldProblem[] = [],
): FormGroup[] {
  const keys = SECTIONS.find((one) => one.id === section)?.keys ?? [];
  const making: Making = { json, typed, problems, doubts, groups: [], brief: false };
  const plain = openGroup(making, '', '');
  for (const field of airplaneShape().filter((one) => keys.includes(one.key))) {
    const isTop = field.shape.is === 'group' && keys.length === 1;
    if (isTop && field.shape.is === 'group') addFields(field.shape.fields, field.key, plain, making);
    else addField(field, field.key, plain, making);
  }
  return making.groups.filter((one) => one.fields.length > 0 || one.add !== null);
}

/** Some fields by their paths, as one group: the few questions a new book starts with. */
export function pickedFields(
  paths: readonly string[],
  json: unknown,
  typed: Typed = new Map(),
  problems: readonly FieldProblem[] = [],
): FieldPart[] {
  const making: Making = { json, typed, problems, doubts: [], groups: [], brief: true };
  const group = openGroup(making, '', '');
  for (const path of paths) {
    const field = fieldAt(path);
    if (field) addField(field, path, group, making);
  }
  return group.fields;
}

/** The fields of any schema, as one list: options of a reduction, conditions of a prediction. */
export function shapedFields(
  fields: readonly Field[],
  prefix: string,
  json: unknown,
  typed: Typed = new Map(),
  problems: readonly FieldProblem[] = [],
): FieldPart[] {
  const making: Making = { json, typed, problems, doubts: [], groups: [], brief: true };
  addFields(fields, prefix, openGroup(making, '', ''), making);
  return making.groups.flatMap((group) => group.fields);
}

function addFields(fields: readonly Field[], path: string, group: FormGroup, making: Making): void {
  for (const field of fields) addField(field, `${path}.${field.key}`, group, making);
}

function addField(field: Field, path: string, group: FormGroup, making: Making): void {
  const { shape } = field;
  if (!appliesTo(path, (at) => valueAt(making.json, at))) return;
  if (shape.is === 'group') addFields(shape.fields, path, openGroup(making, labelOf(path), hintOf(path), path), making);
  else if (shape.is === 'fitted') addFitted(shape.fields, path, making);
  else if (shape.is === 'list') addList(shape.fields, path, making);
  else if (shape.is === 'named') addNamed(shape.fields, path, making);
  else if (shape.is === 'variants') addVariants(shape, path, making);
  else if (shape.is !== 'list-of-variants') group.fields.push(leafField(field, shape, path, making));
}

function addFitted(fields: readonly Field[], path: string, making: Making): void {
  const isFitted = isObject(valueAt(making.json, path));
  const own = openGroup(making, labelOf(path), hintOf(path), path);
  own.fields.push(tickField(wordsFor(path, making, 'Fitted'), isFitted));
  if (isFitted) addFields(fields, path, own, making);
}

function addList(fields: readonly Field[], path: string, making: Making): void {
  const value = valueAt(making.json, path);
  const count = Array.isArray(value) ? value.length : 0;
  for (let i = 0; i < count; i++) {
    const own = openGroup(
      making,
      `${sentence(oneOf(path))} ${i + 1}`,
      i === 0 ? hintOf(path) : '',
      i === 0 ? path : '',
    );
    own.remove = `${path}.${i}`;
    addFields(fields, `${path}.${i}`, own, making);
  }
  const end = openGroup(
    making,
    count === 0 ? labelOf(path) : '',
    count === 0 ? hintOf(path) : '',
    count === 0 ? path : '',
  );
  end.add = { path, text: `Add a ${oneOf(path)}`, names: [] };
}

function addNamed(fields: readonly Field[], path: string, making: Making): void {
  const value = valueAt(making.json, path);
  const names = isObject(value) ? Object.keys(value) : [];
  for (const name of names) {
    const own = openGroup(making, `${labelOf(path)}: ${nameInWords(name).toLowerCase()}`, '');
    own.remove = `${path}.${name}`;
    addFields(fields, `${path}.${name}`, own, making);
  }
  const free = QUANTITIES.filter((one) => !names.includes(one.name));
  const end = openGroup(making, labelOf(path), hintOf(path));
  end.add = {
    path,
    text: `Add a ${oneOf(path)}`,
    names: free.map((one) => ({ value: one.name, text: nameInWords(one.name) })),
  };
}

function addVariants(shape: Extract<Shape, { is: 'variants' }>, path: string, making: Making): void {
  const own = openGroup(making, labelOf(path), hintOf(path));
  const by = `${path}.${shape.by}`;
  const chosen = String(valueAt(making.json, by) ?? [...shape.variants.keys()][0] ?? '');
  const options = [...shape.variants.keys()].map((value) => ({ value, text: choiceOf(by, value, value) }));
  own.fields.push(choiceField(wordsFor(by, making), options, chosen));
  addFields(shape.variants.get(chosen) ?? [], path, own, making);
}

type Leaf = Exclude<Shape, { is: 'group' | 'fitted' | 'list' | 'list-of-variants' | 'named' | 'variants' }>;

function leafField(field: Field, shape: Leaf, path: string, making: Making): FieldPart {
  const words = wordsFor(path, making, undefined, field.required);
  const value = valueAt(making.json, path) ?? field.fallback;
  const text = typedAt(making, path) ?? (typeof value === 'string' || typeof value === 'number' ? String(value) : '');
  switch (shape.is) {
    case 'tick':
      return tickField(words, value === true);
    case 'choice':
      return choiceField(words, choices(shape, path, field), typeof value === 'string' ? value : '');
    case 'ticks':
      return ticksField(words, shape.options, Array.isArray(value) ? value.map(String) : []);
    case 'words':
      return textField(words, typedAt(making, path) ?? (Array.isArray(value) ? value.map(String).join(', ') : ''));
    case 'number':
      return textField(words, text, { number: true });
    case 'text':
      return accuracyUnits(path, words, text) ?? textField(words, text, { long: shape.long });
    case 'stated':
      return statedLeaf(words, shape, path, making);
  }
}

function choices(shape: Extract<Shape, { is: 'choice' }>, path: string, field: Field): Option[] {
  const options = shape.options.map(({ value, text }) => ({ value, text: choiceOf(path, value, text) }));
  if (shape.orNone) return [{ value: '', text: 'none' }, ...options];
  return field.required || field.fallback !== undefined ? options : [{ value: '', text: 'not stated' }, ...options];
}

/** The unit of an accuracy is one of the channel's own; a temperature's is a difference. */
function accuracyUnits(path: string, words: FieldWords, text: string): FieldPart | undefined {
  const name = /^instruments\.accuracy\.([^.]+)\.unit$/.exec(path)?.[1];
  const quantity = name === undefined ? undefined : quantityOf(name);
  if (!quantity) return undefined;
  const dimension = quantity.dimension === 'temperature' ? 'temperature-difference' : quantity.dimension;
  return choiceField(words, unitOptions([dimension]), text);
}

function wordsFor(path: string, making: Making, label = labelOf(path), required = false): FieldWords {
  const own = making.problems.filter((one) => one.path === path || one.path.startsWith(`${path}.`));
  const wrong = own.map((one) => one.message).join(' ');
  return { name: path, label, hint: hintOf(path), wrong, doubt: doubtAt(making, path), required };
}

function typedAt(making: Making, path: string): string | undefined {
  return making.typed.get(path)?.at(-1);
}

function doubtAt(making: Making, path: string): string {
  return making.doubts
    .filter((one) => one.path === path)
    .map((one) => one.message)
    .join(' ');
}

function openGroup(making: Making, title: string, hint: string, path = ''): FormGroup {
  const doubt = path === '' ? '' : doubtAt(making, path);
  const group: FormGroup = { title, hint, doubt, fields: [], remove: '', add: null };
  making.groups.push(group);
  return group;
}
