/** Something could not be done: what, where, and how to mend it. The page of every failure. */
import * as z from 'zod';
import type { Problem } from '../../analysis/remarks/index.ts';
import { frameOf, framePart } from '../parts/frame.view.ts';
import { problemsInWords, problemsPart } from '../parts/remarks.view.ts';

export const troubleView = z.strictObject({ frame: framePart, problems: problemsPart, back: z.string() });
export type TroubleView = z.infer<typeof troubleView>;

/**
 * The page of a failure.
 * @param problems what is wrong
 * @param back where the person came from, or empty
 */
export function troublePage(problems: readonly Problem[], back = ''): TroubleView {
  const isMissing = problems[0]?.code === 'not-found';
  return {
    frame: frameOf(isMissing ? 'Nothing is here' : 'That could not be done'),
    problems: {
      heading: isMissing ? 'The address leads nowhere' : 'What was wrong',
      items: problemsInWords(problems),
    },
    back,
  };
}
