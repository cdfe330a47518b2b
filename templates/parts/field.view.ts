/** One field of a form: its label, what to know, what was typed, and what is wrong with it. */
import * as z from 'zod';

const option = z.strictObject({ value: z.string(), text: z.string(), selected: z.boolean() });
export type OptionPart = z.infer<typeof option>;

export const fieldPart = z.strictObject({
  name: z.string(),
  id: z.string(),
  label: z.string(),
  hint: z.string(),
  wrong: z.string(),
  /** it stands as typed, but does not fit another figure, or is nobody's yet */
  doubt: z.string(),
  required: z.boolean(),
  text: z.strictObject({ value: z.string(), long: z.boolean(), number: z.boolean() }).nullable(),
  tick: z.strictObject({ checked: z.boolean() }).nullable(),
  choice: z.strictObject({ options: z.array(option) }).nullable(),
  ticks: z
    .strictObject({
      options: z.array(z.strictObject({ value: z.string(), text: z.string(), id: z.string(), checked: z.boolean() })),
    })
    .nullable(),
  stated: z
    .strictObject({
      value: z.string(),
      half: z.string(),
      source: z.string(),
      /** who entered it, or empty */
      enteredBy: z.string(),
      needsSource: z.boolean(),
      /** value and unit alone: what is stated for one run needs no source */
      brief: z.boolean(),
      units: z.array(option),
      statuses: z.array(option),
      scales: z.array(option),
    })
    .nullable(),
});
export type FieldPart = z.infer<typeof fieldPart>;

export interface FieldWords {
  name: string;
  label: string;
  hint?: string;
  wrong?: string;
  doubt?: string;
  required?: boolean;
}

function field(words: FieldWords, filled: Partial<FieldPart>): FieldPart {
  return {
    name: words.name,
    id: idOf(words.name),
    label: words.label,
    hint: words.hint ?? '',
    wrong: words.wrong ?? '',
    doubt: words.doubt ?? '',
    required: words.required ?? false,
    text: null,
    tick: null,
    choice: null,
    ticks: null,
    stated: null,
    ...filled,
  };
}

/** An id for a field name: letters, digits and dashes only. */
export function idOf(name: string): string {
  return `f-${name.replace(/[^A-Za-z0-9]+/g, '-')}`;
}

/** One or several lines of text, or a number typed as text. */
export function textField(
  words: FieldWords,
  value: string,
  more: { long?: boolean; number?: boolean } = {},
): FieldPart {
  return field(words, { text: { value, long: more.long ?? false, number: more.number ?? false } });
}

/** Yes or no. */
export function tickField(words: FieldWords, checked: boolean): FieldPart {
  return field(words, { tick: { checked } });
}

/** One of several. */
export function choiceField(
  words: FieldWords,
  options: readonly { value: string; text: string }[],
  selected: string,
): FieldPart {
  return field(words, { choice: { options: optionsOf(options, selected) } });
}

/** Any of several. */
export function ticksField(
  words: FieldWords,
  options: readonly { value: string; text: string }[],
  checked: readonly string[],
): FieldPart {
  return field(words, {
    ticks: {
      options: options.map(({ value, text }) => ({
        value,
        text,
        id: `${idOf(words.name)}-${idOf(value)}`,
        checked: checked.includes(value),
      })),
    },
  });
}

/** A number with unit, half-width, source and how far it is known. */
export function statedField(words: FieldWords, stated: NonNullable<FieldPart['stated']>): FieldPart {
  return field(words, { stated });
}

/** Options with one selected; a value the list lacks is added, so that nothing stored is lost by showing it. */
export function optionsOf(options: readonly { value: string; text: string }[], selected: string): OptionPart[] {
  const known = options.some((one) => one.value === selected);
  const all = known || selected === '' ? options : [...options, { value: selected, text: selected }];
  return all.map(({ value, text }) => ({ value, text, selected: value === selected }));
}
