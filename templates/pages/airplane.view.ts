/** The airplane: its description section by section, its balance drawn, its revisions. */
import * as z from 'zod';
import { crossCheck } from '../../analysis/airplane/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { sectionFacts } from '../forms/airplane-facts.ts';
import { SECTIONS } from '../forms/airplane-words.ts';
import { envelopeDrawing, envelopePart } from '../parts/envelope.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { problemsInWords, problemsPart } from '../parts/remarks.view.ts';
import { momentInWords } from '../words/time.ts';
import type { KeptAirplane, PageContext } from './kept.ts';
import { loadCases } from './load-cases.ts';

export const airplaneView = z.strictObject({
  frame: framePart,
  problems: problemsPart,
  checks: z.array(z.string()),
  sections: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      edit: z.string(),
      groups: z.array(
        z.strictObject({
          title: z.string(),
          facts: z.array(z.strictObject({ name: z.string(), text: z.string(), basis: z.string() })),
        }),
      ),
      unknown: z.string(),
      drawing: envelopePart.nullable(),
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

/** The Airplane page. */
export function airplanePage(kept: KeptAirplane, context: PageContext, done = ''): AirplaneView {
  const { book, zone } = context;
  const file = kept.file;
  return {
    frame: frameOf('Airplane', { question: 'What is this airplane?', book, way: 'airplane', done }),
    problems: { heading: 'The stored description no longer fits', items: problemsInWords(kept.problems) },
    checks: kept.parsed ? crossCheck(kept.parsed).map((one) => one.message) : [],
    sections: SECTIONS.map(({ id, title }) => {
      const { groups, unknown } = sectionFacts(id, file);
      return {
        id,
        title,
        edit: editPath(book.id, id),
        groups,
        unknown: unknown.join(', '),
        drawing: id === 'loading' ? loadingDrawing(kept, context) : null,
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
