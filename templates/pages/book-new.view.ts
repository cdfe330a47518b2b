/** A new book: ten plain questions, or a copy of an invented airplane to be made one's own. */
import * as z from 'zod';
import type { FieldProblem, Typed } from '../forms/airplane-form.ts';
import { labelOf } from '../forms/airplane-words.ts';
import { copyQuestions, tenQuestions } from '../forms/ten-questions.ts';
import { fieldPart } from '../parts/field.view.ts';
import { frameOf, framePart } from '../parts/frame.view.ts';
import { type ProblemPart, problemsPart } from '../parts/remarks.view.ts';

const link = z.strictObject({ text: z.string(), href: z.string() });

export const bookNewView = z.strictObject({
  frame: framePart,
  problems: problemsPart,
  about: z.string(),
  /** other ways to start */
  ways: z.array(link),
  /** the invented airplane it is copied from, or empty */
  from: z.string(),
  groups: z.array(z.strictObject({ title: z.string(), fields: z.array(fieldPart) })),
});
export type BookNewView = z.infer<typeof bookNewView>;

/** An invented airplane whose description can be copied. */
export interface DemoToCopy {
  id: string;
  name: string;
}

export interface BookNewAnswers {
  /** the copy that was chosen */
  from?: string;
  json?: unknown;
  typed?: Typed;
  problems?: readonly FieldProblem[];
}

/** The questions, with what was typed and what is wrong with it. */
export function bookNewPage(demos: readonly DemoToCopy[], answers: BookNewAnswers = {}): BookNewView {
  const { from = '', json, typed, problems = [] } = answers;
  const copied = demos.find((one) => one.id === from);
  const items: ProblemPart[] = problems.map(({ path, message }) => ({ message, where: labelOf(path), mend: '' }));
  const others = demos.filter((one) => one !== copied);
  return {
    frame: frameOf('Start a book', {
      question: copied
        ? `Your airplane is much like the invented ${copied.name}?`
        : 'Ten questions bring a first program; the rest can wait.',
      crumbs: [
        { text: 'All airplanes', href: '/' },
        ...(copied ? [{ text: 'Ten questions', href: '/books/new' }] : []),
      ],
    }),
    problems: { heading: 'Not started yet. What you typed is kept here', items },
    about: copied
      ? `Everything else is copied from ${copied.name} and marked “to be confirmed”, section by section. Its operating limitations, its weighing and its airfield are not copied.`
      : 'What a usual airplane has is filled in and marked “to be confirmed”. No limit is filled in: limits come from their documents, with your name.',
    ways: [
      ...(copied ? [{ text: 'Answer ten questions instead', href: '/books/new' }] : []),
      ...others.map(({ id, name }) => ({
        text: `Start from a copy of ${name}`,
        href: `/books/new?from=${encodeURIComponent(id)}`,
      })),
    ],
    from: copied?.id ?? '',
    groups: copied ? copyQuestions(json, typed, problems) : tenQuestions(json, typed, problems),
  };
}
