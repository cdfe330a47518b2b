/** One section of the airplane's description as a form. */
import * as z from 'zod';
import { type FieldProblem, sectionForm, type Typed } from '../forms/airplane-form.ts';
import { labelOf, SECTIONS } from '../forms/airplane-words.ts';
import { fieldPart, textField } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { type problemPart, problemsPart } from '../parts/remarks.view.ts';
import { editPath } from './airplane.view.ts';
import type { PageContext } from './kept.ts';

const option = z.strictObject({ value: z.string(), text: z.string() });

export const airplaneEditView = z.strictObject({
  frame: framePart,
  problems: problemsPart,
  action: z.string(),
  groups: z.array(
    z.strictObject({
      title: z.string(),
      hint: z.string(),
      doubt: z.string(),
      fields: z.array(fieldPart),
      remove: z.string(),
      add: z.strictObject({ path: z.string(), id: z.string(), text: z.string(), names: z.array(option) }).nullable(),
    }),
  ),
  by: z.array(fieldPart),
  cancel: z.string(),
});
export type AirplaneEditView = z.infer<typeof airplaneEditView>;

export interface EditedSection {
  json: unknown;
  typed?: Typed;
  problems?: readonly FieldProblem[];
  /** what stands but does not fit another figure, or is to be confirmed */
  doubts?: readonly FieldProblem[];
  /** problems of other sections, or of the whole */
  others?: z.infer<typeof problemPart>[];
}

/**
 * The form of a section.
 * @returns the view, or undefined where there is no such section
 */
export function airplaneEditPage(
  section: string,
  { json, typed = new Map(), problems = [], doubts = [], others = [] }: EditedSection,
  { book }: PageContext,
): AirplaneEditView | undefined {
  const found = SECTIONS.find((one) => one.id === section);
  if (!found) return undefined;
  const at = (name: string) => typed.get(name)?.at(-1) ?? '';
  return {
    frame: frameOf(found.title, {
      question: found.asks,
      book,
      way: 'airplane',
      crumbs: [{ text: 'Airplane', href: bookPath(book.id, '/airplane') }],
    }),
    problems: {
      heading: 'Not saved yet. What you typed is kept here',
      items: [...problems.map(({ path, message }) => ({ message, where: labelOf(path), mend: '' })), ...others],
    },
    action: editPath(book.id, section),
    groups: sectionForm(section, json, typed, problems, doubts).map((group) => ({
      ...group,
      add: group.add && { ...group.add, id: `add-${group.add.path.replaceAll('.', '-')}` },
    })),
    by: [
      textField(
        {
          name: 'why',
          label: 'Why it changes',
          hint: 'Kept with the revision. Such as “weighed again after painting”.',
        },
        at('why'),
      ),
      textField({ name: 'who', label: 'Your name', hint: 'Stands beside each limit you enter.' }, at('who')),
    ],
    cancel: bookPath(book.id, `/airplane#${section}`),
  };
}
