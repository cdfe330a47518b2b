/** What a decision on an airspeed calibration would do to other results, told beside the buttons that make it. */
import * as z from 'zod';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { nameInWords } from '../words/list.ts';
import type { KeptConsequence, KeptConsequences, KeptResult } from './kept.ts';
import { resultPath } from './results.view.ts';

export const consequencePart = z.strictObject({
  says: z.string(),
  /** the calibration that goes before it or gives way to it */
  instead: z.strictObject({ text: z.string(), href: z.string() }).nullable(),
  lists: z.array(
    z.strictObject({
      says: z.string(),
      results: z.array(z.strictObject({ text: z.string(), href: z.string(), because: z.string() })),
    }),
  ),
});
export type ConsequencePart = z.infer<typeof consequencePart>;

/**
 * The part of a result's page beside its decision.
 * @param kept the result
 * @param consequences of accepting it or taking that back; absent for kinds that nothing rests on
 * @param book id of its book, text
 * @returns words and named, linked results; null where a decision changes no other result
 */
export function consequencesInWords(
  { number, decision, status }: KeptResult,
  consequences: KeptConsequences | undefined,
  book: string,
): ConsequencePart | null {
  if (!consequences) return null;
  const { inForce, accepting, takingBack } = consequences;
  const link = (other: number | null) =>
    other === null ? null : { text: `result ${other}`, href: resultPath(book, other) };
  if (takingBack)
    return {
      says:
        takingBack.inForce === null
          ? 'Later results go by this calibration. Taking it back leaves them without one.'
          : 'Later results go by this calibration. Taking it back brings into force again',
      instead: link(takingBack.inForce),
      lists: listsOf(takingBack, 'With that', book),
    };
  if (accepting) {
    const again = decision === 'accepted';
    const replaced = inForce === null ? '' : again ? ' Since it was accepted, results go by' : ' It takes the place of';
    return {
      says: `${again ? 'Accepting it once more' : 'Accepting it'} makes this the airspeed calibration that later results go by.${replaced}`,
      instead: link(inForce),
      lists: listsOf(accepting, 'Then', book),
    };
  }
  if (status !== 'stale' || inForce === number) return null;
  return {
    says: 'It no longer stands, so no later result goes by it, accepted or not.',
    instead: null,
    lists: [],
  };
}

function listsOf({ stale, standAgain }: KeptConsequence, when: string, book: string): ConsequencePart['lists'] {
  const results = (list: KeptConsequence['stale']) =>
    list.map(({ number, kind, because }) => ({
      text: `${number}. ${reductionOf(kind)?.title ?? nameInWords(kind)}`,
      href: resultPath(book, number),
      because,
    }));
  const lists = [
    { says: `${when} these no longer stand until they are reduced again:`, results: results(stale) },
    { says: `${when} these stand again:`, results: results(standAgain) },
  ].filter((one) => one.results.length > 0);
  return lists.length > 0 ? lists : [{ says: 'No result on record goes stale by it.', results: [] }];
}

/** The calibration a result went by, for where it comes from; null for kinds that need none. */
export function calibrationUnder(
  { kind, input, result }: KeptResult,
  book: string,
): { text: string; href: string } | null {
  if (!reductionOf(kind)?.usesCalibration || result.status === 'refused') return null;
  const { calibration } = input;
  if (calibration === null) return { text: 'none, as asked', href: '' };
  if (calibration === undefined) return { text: 'none was accepted', href: '' };
  return { text: `result ${calibration}`, href: resultPath(book, calibration) };
}
