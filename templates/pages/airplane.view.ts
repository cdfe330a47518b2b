/** The airplane: its description section by section, its balance drawn, its revisions. */
import * as z from 'zod';
import { crossCheck } from '../../analysis/airplane/index.ts';
import type { Program } from '../../analysis/program/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { sectionFacts } from '../forms/airplane-facts.ts';
import { labelOf, SECTIONS } from '../forms/airplane-words.ts';
import { toConfirm } from '../forms/to-confirm.ts';
import { envelopeDrawing, envelopePart } from '../parts/envelope.view.ts';
import { idOf } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { problemsInWords, problemsPart } from '../parts/remarks.view.ts';
import { flightsOf, loadRow } from '../plan/plan-flights.ts';
import { momentInWords } from '../words/time.ts';
import type { KeptAirplane, PageContext } from './kept.ts';
import { loadCases } from './load-cases.ts';

const link = z.strictObject({ text: z.string(), href: z.string() });

export const airplaneView = z.strictObject({
  frame: framePart,
  problems: problemsPart,
  checks: z.array(z.strictObject({ text: z.string(), links: z.array(link) })),
  toConfirm: z.array(link),
  sections: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      edit: z.string(),
      groups: z.array(
        z.strictObject({
          title: z.string(),
          facts: z.array(
            z.strictObject({
              name: z.string(),
              text: z.string(),
              basis: z.string(),
              source: z.string(),
              enteredBy: z.string(),
            }),
          ),
        }),
      ),
      /** each figure with its source and who entered it in columns */
      isTable: z.boolean(),
      /** the operating limitations, in the authority's words */
      quoted: z.strictObject({ title: z.string(), text: z.string() }).nullable(),
      unknown: z.string(),
      drawing: envelopePart.nullable(),
      loads: z.array(loadRow),
    }),
  ),
  revisions: z.array(
    z.strictObject({
      number: z.int(),
      when: z.string(),
      utc: z.string(),
      who: z.string(),
      why: z.string(),
      href: z.string(),
    }),
  ),
  exportHref: z.string(),
  importHref: z.string(),
  revision: z.int(),
});
export type AirplaneView = z.infer<typeof airplaneView>;

const OPERATING_LIMITATIONS = labelOf('limits.operatingLimitations');

/** The Airplane page. */
export function airplanePage(
  kept: KeptAirplane,
  program: Program | null,
  context: PageContext,
  done = '',
): AirplaneView {
  const { book, zone } = context;
  const file = kept.file;
  const flights = kept.parsed && program ? flightsOf(kept.parsed, program) : null;
  return {
    frame: frameOf('Airplane', { question: 'What is this airplane?', book, way: 'airplane', done }),
    problems: { heading: 'The stored description no longer fits', items: problemsInWords(kept.problems) },
    checks: (kept.parsed ? crossCheck(kept.parsed) : []).map(({ message, paths }) => ({
      text: message,
      links: sectionsOf(paths).map(({ id, title, path }) => ({
        text: title,
        href: `${editPath(book.id, id)}#${idOf(path)}`,
      })),
    })),
    toConfirm: sectionsOf(toConfirm(file)).map(({ id, title }) => ({ text: title, href: editPath(book.id, id) })),
    sections: SECTIONS.map(({ id, title }) => {
      const { unknown, ...told } = sectionFacts(id, file);
      const quoted = told.groups.flatMap((one) => one.facts).find((one) => one.name === OPERATING_LIMITATIONS);
      const groups = told.groups
        .map((one) => ({ ...one, facts: one.facts.filter((fact) => fact !== quoted) }))
        .filter((one) => one.facts.length > 0);
      return {
        id,
        title,
        edit: editPath(book.id, id),
        groups,
        isTable: id === 'limits' || id === 'speeds',
        quoted: quoted ? { title: quoted.name, text: quoted.text } : null,
        unknown: unknown.join(', '),
        drawing: id === 'loading' ? (flights?.envelope ?? loadingDrawing(kept, context)) : null,
        loads: id === 'loading' ? (flights?.loads ?? []) : [],
      };
    }),
    revisions: [...kept.revisions].reverse().map(({ number, at, who, why }) => {
      const moment = momentInWords(at, zone);
      const href = bookPath(book.id, `/airplane/revisions/${number}`);
      return { number, when: moment.local, utc: moment.utc, who, why, href };
    }),
    exportHref: bookPath(book.id, '/airplane/airplane.json'),
    importHref: bookPath(book.id, '/airplane/import'),
    revision: kept.revision,
  };
}

/** The sections that hold some fields, each once, with the first of its fields. */
function sectionsOf(paths: readonly string[]): { id: string; title: string; path: string }[] {
  return SECTIONS.flatMap(({ id, title, keys }) => {
    const path = paths.find((one) => keys.some((key) => one === key || one.startsWith(`${key}.`)));
    return path === undefined ? [] : [{ id, title, path }];
  });
}

/** Address of a section's form. */
export function editPath(book: string, section: string): string {
  return bookPath(book, `/airplane/edit/${section}`);
}

/** The envelope with the load cases that the balance works out by itself. */
function loadingDrawing({ parsed, revision }: KeptAirplane, { units }: PageContext) {
  if (!parsed) return null;
  const result = reductionOf('weight-balance')?.reduce({ airplane: parsed, configurationRevision: revision });
  return envelopeDrawing(parsed, units, result ? loadCases(result) : []);
}
