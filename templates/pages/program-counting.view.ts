/** How the program is counted: fixed hours or a list of tasks; and what the operating limitations say. */
import * as z from 'zod';
import type { Airplane } from '../../analysis/airplane/index.ts';
import type { Program } from '../../analysis/program/index.ts';
import { choiceField, fieldPart, textField } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { type ProblemPart, problemsPart } from '../parts/remarks.view.ts';
import { typedNumber } from '../words/typed-number.ts';
import type { PageContext } from './kept.ts';

export const programCountingView = z.strictObject({
  frame: framePart,
  problems: problemsPart,
  action: z.string(),
  fields: z.array(fieldPart),
  tests: z.array(z.strictObject({ id: z.string(), title: z.string() })),
});
export type ProgramCountingView = z.infer<typeof programCountingView>;

type Counting = Airplane['plan']['program'];

export type TypedCounting = Partial<Record<'kind' | 'hours' | 'tasks' | 'limitations', string>>;

const KINDS = [
  { value: '25', text: '25 hours' },
  { value: '40', text: '40 hours' },
  { value: 'own', text: 'another number of hours' },
  { value: 'tasks', text: 'a task list' },
];

/** The page, with what is in force or what was typed. */
export function programCountingPage(
  airplane: Airplane,
  program: Program,
  { book }: PageContext,
  form: { typed?: TypedCounting; problems?: ProblemPart[] } = {},
  done = '',
): ProgramCountingView {
  const typed = form.typed ?? typedOf(airplane);
  return {
    frame: frameOf('How the program is counted', {
      question: 'Hours or tasks, and what do the operating limitations say?',
      book,
      way: 'program',
      crumbs: [{ text: 'Program', href: bookPath(book.id, '/program') }],
      done,
    }),
    problems: { heading: 'This could not be saved', items: form.problems ?? [] },
    action: bookPath(book.id, '/program/hours'),
    fields: [
      choiceField(
        { name: 'kind', label: 'The program ends after', hint: 'As your operating limitations assign it.' },
        KINDS,
        typed.kind ?? '40',
      ),
      textField(
        { name: 'hours', label: 'Number of hours', hint: 'Only for another number of hours.' },
        typed.hours ?? '',
        { number: true },
      ),
      textField(
        {
          name: 'tasks',
          label: 'Your task list',
          hint: 'One task a line, pasted as you have it. Behind a task, after a bar, the tests that show it, by their names: Stalls in landing configuration | stall-landing, stall-power-on',
        },
        typed.tasks ?? '',
        { long: true },
      ),
      textField(
        {
          name: 'limitations',
          label: 'What the operating limitations of this airplane say',
          hint: 'Word for word, as issued. It is quoted at every gate, and comes before anything printed here.',
        },
        typed.limitations ?? '',
        { long: true },
      ),
      textField({ name: 'who', label: 'Your name' }, ''),
    ],
    tests: program.stages.flatMap(({ tests }) => tests.map(({ id, title }) => ({ id, title }))),
  };
}

function typedOf({ plan, limits }: Airplane): TypedCounting {
  const counting = plan.program;
  const limitations = limits.operatingLimitations;
  if (counting.kind === 'task-list') return { kind: 'tasks', tasks: tasksText(counting.tasks), limitations };
  const listed = ['25', '40'].includes(String(counting.hours));
  return { kind: listed ? String(counting.hours) : 'own', hours: listed ? '' : String(counting.hours), limitations };
}

function tasksText(tasks: Extract<Counting, { kind: 'task-list' }>['tasks']): string {
  return tasks.map(({ title, tests }) => (tests.length === 0 ? title : `${title} | ${tests.join(', ')}`)).join('\n');
}

/**
 * What was typed into the form.
 * @param at the text of a field, trimmed
 * @param program names the tests that there are
 * @returns how to count, where all of it can be read; else what is wrong; and what was typed
 */
export function readCounting(
  at: (name: string) => string,
  program: Program,
): { typed: TypedCounting; problems: ProblemPart[]; counting: Counting | undefined; limitations: string } {
  const typed = { kind: at('kind'), hours: at('hours'), tasks: at('tasks'), limitations: at('limitations') };
  const problems: ProblemPart[] = [];
  const limitations = typed.limitations;
  if (typed.kind === 'tasks') {
    const tasks = readTasks(typed.tasks, program, problems);
    return { typed, problems, limitations, counting: problems.length === 0 ? { kind: 'task-list', tasks } : undefined };
  }
  const hours = typedNumber(typed.kind === 'own' ? typed.hours : typed.kind);
  if (hours === null || hours <= 0 || hours > 500) {
    const message = `“${typed.hours}” is no number of hours between 0 and 500.`;
    problems.push({ message, where: 'Number of hours', mend: 'Write the hours your limitations assign.' });
    return { typed, problems, limitations, counting: undefined };
  }
  return { typed, problems, limitations, counting: { kind: 'fixed-hours', hours } };
}

function readTasks(text: string, program: Program, problems: ProblemPart[]): { title: string; tests: string[] }[] {
  const tests = program.stages.flatMap((stage) => stage.tests);
  const lines = text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
  if (lines.length === 0) {
    const message = 'The list holds no task.';
    problems.push({ message, where: 'Your task list', mend: 'Write one task a line.' });
  }
  return lines.map((line) => {
    const [title = '', named = ''] = line.split('|').map((part) => part.trim());
    const names = named.split(',').map((name) => name.trim());
    const ids = names.filter(Boolean).map((name) => {
      const found = tests.find((test) => test.id === name || test.title.toLowerCase() === name.toLowerCase());
      if (!found) {
        const message = `“${name}” behind “${title}” is no test of this program.`;
        problems.push({ message, where: 'Your task list', mend: 'Take a name from the list below, or leave it out.' });
      }
      return found?.id ?? name;
    });
    return { title: title.slice(0, 300), tests: ids };
  });
}
