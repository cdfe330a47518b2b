/** Outcome words, each with its own shape and weight: never colour alone, never a promise. */
import * as z from 'zod';

export const outcomePart = z.strictObject({
  word: z.string(),
  /** disc, ring, wedge, square, dash: drawn in parts/outcome.hbs */
  disc: z.boolean(),
  ring: z.boolean(),
  wedge: z.boolean(),
  square: z.boolean(),
  dash: z.boolean(),
  /** '', open, heavy or quiet */
  weight: z.enum(['', 'open', 'heavy', 'quiet']),
});
export type OutcomePart = z.infer<typeof outcomePart>;

type Shape = 'disc' | 'ring' | 'wedge' | 'square' | 'dash';

const LOOK: Record<string, { shape: Shape; weight: OutcomePart['weight'] }> = {
  // comparisons with a limit
  shown: { shape: 'disc', weight: '' },
  'not shown': { shape: 'ring', weight: 'open' },
  exceeded: { shape: 'wedge', weight: 'heavy' },
  waived: { shape: 'square', weight: 'open' },
  // results
  reduced: { shape: 'ring', weight: 'quiet' },
  accepted: { shape: 'disc', weight: '' },
  repeat: { shape: 'ring', weight: 'open' },
  stale: { shape: 'wedge', weight: 'open' },
  refused: { shape: 'dash', weight: 'open' },
  // tests of the program
  planned: { shape: 'dash', weight: 'quiet' },
  briefed: { shape: 'square', weight: 'quiet' },
  flown: { shape: 'square', weight: 'quiet' },
  'not applicable': { shape: 'dash', weight: 'quiet' },
  // readings of a log
  read: { shape: 'disc', weight: 'quiet' },
  asks: { shape: 'ring', weight: 'open' },
  'not read': { shape: 'wedge', weight: 'heavy' },
};

/**
 * The tag of an outcome or status.
 * @param word as comparisons, results and tests use it, text
 * @returns word, shape and weight; a word not in the list gets a plain dash
 */
export function outcomeInWords(word: string): OutcomePart {
  const { shape, weight } = LOOK[word] ?? { shape: 'dash', weight: 'quiet' };
  return {
    word,
    disc: shape === 'disc',
    ring: shape === 'ring',
    wedge: shape === 'wedge',
    square: shape === 'square',
    dash: shape === 'dash',
    weight,
  };
}
