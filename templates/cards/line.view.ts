/** A line's tokens as the template prints them. */
import * as z from 'zod';
import { type Line, MISSING } from '../../analysis/cards/index.ts';

export const tokenPart = z.strictObject({
  text: z.string(),
  number: z.string(),
  unit: z.string(),
  estimated: z.boolean(),
  /** what is missing; empty where nothing is */
  lack: z.string(),
});
export type TokenPart = z.infer<typeof tokenPart>;

const BLANK: TokenPart = { text: '', number: '', unit: '', estimated: false, lack: '' };

/** Tokens ready to print. */
export function lineParts(line: Line): TokenPart[] {
  return line.map((token) => {
    if (token.kind === 'text') return { ...BLANK, text: token.text };
    if (token.kind === 'missing') return { ...BLANK, lack: MISSING, unit: token.unit };
    return { ...BLANK, number: token.number, unit: token.unit, estimated: token.estimated };
  });
}
