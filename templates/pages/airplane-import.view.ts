/** A whole description brought in as JSON: a new revision of the airplane, with the problems beside the text. */
import * as z from 'zod';
import { fieldPart, textField } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { type ProblemPart, problemsPart } from '../parts/remarks.view.ts';
import type { PageContext } from './kept.ts';

export const airplaneImportView = z.strictObject({
  frame: framePart,
  problems: problemsPart,
  action: z.string(),
  fields: z.array(fieldPart),
  cancel: z.string(),
});
export type AirplaneImportView = z.infer<typeof airplaneImportView>;

/** The form, with what was pasted. */
export function airplaneImportPage(
  typed: { json: string; why: string; who: string },
  problems: ProblemPart[],
  { book }: PageContext,
): AirplaneImportView {
  return {
    frame: frameOf('Import a description', {
      question: 'A description exported elsewhere, or written by hand, becomes a new revision.',
      book,
      way: 'airplane',
      crumbs: [{ text: 'Airplane', href: bookPath(book.id, '/airplane') }],
      modules: ['page-file-text'],
    }),
    problems: { heading: 'Not imported. What you pasted is kept here', items: problems },
    action: bookPath(book.id, '/airplane/import'),
    fields: [
      textField({ name: 'json', label: 'Description (JSON)', required: true }, typed.json, { long: true }),
      textField({ name: 'why', label: 'Why it changes' }, typed.why),
      textField({ name: 'who', label: 'Your name' }, typed.who),
    ],
    cancel: bookPath(book.id, '/airplane'),
  };
}
