/** The three kinds of bad news as pages show them: what, where, how to mend it. */
import * as z from 'zod';
import { CODES, type Flag, type Problem, type Where } from '../../analysis/remarks/index.ts';
import { nameInWords, sentence } from '../words/list.ts';
import { spanInWords } from '../words/time.ts';

export const flagPart = z.strictObject({
  about: z.string(),
  message: z.string(),
  mend: z.string(),
  /** `2:05 to 7:40`, or empty */
  span: z.string(),
  /** link to the samples of that span, or empty */
  href: z.string(),
});
export type FlagPart = z.infer<typeof flagPart>;

export const problemPart = z.strictObject({ message: z.string(), where: z.string(), mend: z.string() });
export type ProblemPart = z.infer<typeof problemPart>;

/** A list of problems under one heading; nothing is shown when the list is empty. */
export const problemsPart = z.strictObject({ heading: z.string(), items: z.array(problemPart) });
export type ProblemsPart = z.infer<typeof problemsPart>;

/**
 * Flags in words, the same remark on several things once.
 * @param flags as results and logs carry them, list
 * @param linkTo link to the samples of a span; empty text where there is none
 * @returns the parts, in the order given
 */
export function flagsInWords(
  flags: readonly {
    kind: Flag['kind'];
    message: string;
    fromSeconds?: number | undefined;
    toSeconds?: number | undefined;
  }[],
  linkTo: (fromSeconds: number, toSeconds: number) => string = () => '',
): FlagPart[] {
  const seen = new Set<string>();
  const parts: FlagPart[] = [];
  for (const flag of flags) {
    const key = `${flag.kind} ${flag.message} ${flag.fromSeconds} ${flag.toSeconds}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const { fromSeconds: from, toSeconds: to } = flag;
    const hasSpan = from !== undefined && to !== undefined;
    parts.push({
      about: nameInWords(flag.kind),
      message: flag.message,
      mend: CODES[flag.kind].mend,
      span: hasSpan ? spanInWords(from, to) : '',
      href: hasSpan ? linkTo(from, to) : '',
    });
  }
  return parts;
}

/** Remarks of one kind under one heading: what mends them is said once. */
export const flagGroup = z.strictObject({
  about: z.string(),
  mend: z.string(),
  items: z.array(z.strictObject({ message: z.string(), span: z.string(), href: z.string() })),
});
export type FlagGroup = z.infer<typeof flagGroup>;

/** Flags by kind, in the order the kinds first appear. */
export function flagsByKind(flags: readonly FlagPart[]): FlagGroup[] {
  const groups = new Map<string, FlagGroup>();
  for (const { about, mend, message, span, href } of flags) {
    const group = groups.get(about) ?? { about, mend, items: [] };
    groups.set(about, group);
    group.items.push({ message: sentence(message), span, href });
  }
  return [...groups.values()];
}

/** Problems with their place in words. */
export function problemsInWords(problems: readonly Problem[]): ProblemPart[] {
  return problems.map(({ message, where, mend }) => ({ message, where: placeInWords(where), mend }));
}

function placeInWords(where: Where): string {
  const places: string[] = [];
  if (where.file) places.push(where.file);
  if (where.line !== undefined) places.push(`line ${where.line}`);
  if (where.column) places.push(`column “${where.column}”`);
  if (where.field) places.push(`field ${where.field}`);
  if (where.fromSeconds !== undefined && where.toSeconds !== undefined) {
    places.push(spanInWords(where.fromSeconds, where.toSeconds));
  }
  return places.join(', ');
}
