/** A test of one's own between its form and its data: what is typed, one line a step, and the test it makes. */
import type { TestData } from '../../analysis/catalogue/index.ts';
import type { ProblemPart } from '../parts/remarks.view.ts';
import { sentence } from '../words/list.ts';
import { typedNumber } from '../words/typed-number.ts';

export const OWN_FIELDS = [
  'id',
  'title',
  'purpose',
  'stage',
  'system',
  'flightMinutes',
  'groundMinutes',
  'load',
  'opens',
  'needs',
  'consumes',
  'produces',
  'setup',
  'steps',
  'readings',
  'pass',
  'source',
  'stop',
] as const;

export type TypedTest = Partial<Record<(typeof OWN_FIELDS)[number], string>>;

/** what a test cannot be without */
const NEEDED = [
  { name: 'title', where: 'Name', message: 'The test has no name.', mend: 'Give it one.' },
  {
    name: 'purpose',
    where: 'What it is to show',
    message: 'It does not say what it is to show.',
    mend: 'Say it in one sentence.',
  },
  {
    name: 'pass',
    where: 'Passed when',
    message: 'It does not say when it is passed.',
    mend: 'Write what has to be seen.',
  },
  { name: 'stop', where: 'Stop if', message: 'It has no stop.', mend: 'Write at least one thing that ends it.' },
] as const;

/** longest line a card takes */
const LONGEST_LINE = 400;

const lines = (text: string) =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

const listed = (text: string) =>
  text
    .split(/[\n,]/)
    .map((one) => one.trim())
    .filter((one) => one !== '');

/**
 * What was typed into the form.
 * @param at the text of a field, trimmed
 * @param names ids of tests by their lower-case title
 * @returns the test as data, unread still; what was typed; and what cannot be read at all
 */
export function readOwnTest(
  at: (name: string) => string,
  names: ReadonlyMap<string, string>,
): { typed: TypedTest; file: Record<string, unknown>; problems: ProblemPart[] } {
  const typed: TypedTest = Object.fromEntries(OWN_FIELDS.map((name) => [name, at(name)]));
  const problems: ProblemPart[] = [];
  const minutes = (name: 'flightMinutes' | 'groundMinutes', where: string) => {
    const text = at(name) === '' ? '0' : at(name);
    const value = typedNumber(text);
    if (value === null || value < 0 || value > 1000) {
      problems.push({ message: `“${text}” is no number of minutes.`, where, mend: 'Write minutes, 0 to 1000.' });
    }
    return value ?? 0;
  };
  const flightMinutes = minutes('flightMinutes', 'Minutes in flight');
  const groundMinutes = minutes('groundMinutes', 'Minutes on the ground');
  for (const { name, where, message, mend } of NEEDED) if (at(name) === '') problems.push({ message, where, mend });
  for (const name of OWN_FIELDS) {
    const longest = lines(at(name)).find((line) => line.length > LONGEST_LINE);
    if (longest !== undefined) {
      const message = `A line is longer than ${LONGEST_LINE} letters: “${longest.slice(0, 40)}…”`;
      problems.push({ message, where: sentence(name), mend: 'Make two lines of it.' });
    }
  }
  if (flightMinutes + groundMinutes === 0) {
    problems.push({ message: 'It takes no time at all.', where: 'Minutes', mend: 'Say how long it takes.' });
  }
  const source = at('source') === '' ? 'own choice' : at('source');
  const file = {
    id: at('id') === '' ? idOfTitle(at('title')) : at('id'),
    title: at('title'),
    stage: at('stage'),
    system: at('system'),
    purpose: at('purpose'),
    needs: listed(at('needs')).map((name) => names.get(name.toLowerCase()) ?? name),
    consumes: listed(at('consumes')),
    produces: listed(at('produces')),
    setup: lines(at('setup')),
    steps: lines(at('steps')),
    readings: lines(at('readings')).map(readingOf),
    pass: lines(at('pass')).map((text) => ({ text, source: { says: source, mark: 'practice' } })),
    stop: lines(at('stop')),
    flightMinutes,
    groundMinutes,
    blocks: 'once',
    planning: { load: at('load') || 'any', ...(at('opens') === '' ? {} : { opens: at('opens') }) },
  };
  return { typed, file, problems };
}

/** A reading as one line: what, unit, when; yes or no where no unit is written. */
function readingOf(line: string): { what: string; unit: string; at: string } {
  const [what = '', unit = '', when = ''] = line.split('|').map((part) => part.trim());
  return { what, unit: unit || 'yes / no', at: when || 'once' };
}

/** A name for a test, from its title; own tests are told from the catalogue's by their beginning. */
export function idOfTitle(title: string): string {
  const plain = title
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return `own-${plain === '' ? 'test' : plain}`.slice(0, 60).replace(/-+$/, '');
}

/** A stored test as its form shows it. */
export function typedOwnTest(test: TestData): TypedTest {
  const text = (value: unknown) => (typeof value === 'string' ? value : JSON.stringify(value));
  const each = (list: readonly unknown[] | undefined) => (list ?? []).map(text).join('\n');
  const says = test.pass[0]?.source;
  return {
    id: test.id,
    title: text(test.title),
    purpose: text(test.purpose),
    stage: test.stage,
    system: test.system,
    flightMinutes: String(test.flightMinutes ?? 0),
    groundMinutes: String(test.groundMinutes ?? 0),
    load: test.planning?.load ?? 'any',
    opens: test.planning?.opens ?? '',
    needs: (test.needs ?? []).join('\n'),
    consumes: (test.consumes ?? []).join('\n'),
    produces: (test.produces ?? []).join('\n'),
    setup: each(test.setup),
    steps: each(test.steps),
    readings: (test.readings ?? [])
      .map(({ what, unit, measure, at: when }) => `${text(what)} | ${unit ?? measure ?? ''} | ${when}`)
      .join('\n'),
    pass: test.pass.map((one) => text(one.text)).join('\n'),
    source: typeof says === 'object' ? says.says : '',
    stop: each(test.stop),
  };
}
