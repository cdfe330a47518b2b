/** A line of a card: words, numbers with their units, and the places where a number is still missing. Plain JSON. */
import * as z from 'zod';

export const tokenSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('text'), text: z.string() }),
  z.strictObject({
    kind: z.literal('number'),
    number: z.string().min(1),
    /** what follows it: unit, scale, reference */
    unit: z.string().min(1),
    /** true for a figure estimated before test: it prints as such */
    estimated: z.boolean(),
    /** the configuration value it was taken from; absent for a general figure */
    path: z.string().optional(),
  }),
  z.strictObject({
    kind: z.literal('missing'),
    path: z.string(),
    meaning: z.string(),
    /** unit it would have; empty where even that is not known */
    unit: z.string(),
  }),
]);

export const lineSchema = z.array(tokenSchema);

export type Token = z.infer<typeof tokenSchema>;
export type Line = z.infer<typeof lineSchema>;

/** What follows an estimated number on paper. */
export const ESTIMATED = 'est.';

/** What stands in the place of a missing number; what it is stands in the list on the first sheet. */
export const MISSING = 'missing';

/** A line of words only. */
export function words(text: string): Line {
  return text === '' ? [] : [{ kind: 'text', text }];
}

/**
 * A line as one string, as a search of the PDF finds it.
 * @param line tokens, list
 * @returns text, a missing number in square brackets
 */
export function plainText(line: Line): string {
  return line
    .map((token) => {
      if (token.kind === 'text') return token.text;
      if (token.kind === 'missing') return `[${MISSING}] ${token.unit}`.trim();
      return `${token.number} ${token.unit}${token.estimated ? ` ${ESTIMATED}` : ''}`;
    })
    .join('');
}

/** True where a line carries a number or the place of one: it is set on the wider pitch. */
export function hasNumber(line: Line): boolean {
  return line.some((token) => token.kind !== 'text');
}
