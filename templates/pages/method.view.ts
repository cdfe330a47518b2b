/** One reduction's method: what it does, formulas with sources, assumptions, a worked example, and its history. */
import * as z from 'zod';
import type { Reduction } from '../../analysis/reductions/index.ts';
import { SOURCES } from '../../analysis/sources.ts';
import { frameOf, framePart } from '../parts/frame.view.ts';
import { nameInWords, sentence } from '../words/list.ts';
import { HELP_CRUMB } from './help.view.ts';

const item = z.strictObject({ name: z.string(), meaning: z.string() });

export const methodView = z.strictObject({
  frame: framePart,
  kind: z.string(),
  summary: z.array(z.string()),
  formulas: z.array(z.strictObject({ says: z.string(), formula: z.string(), source: z.string() })),
  assumptions: z.array(z.string()),
  example: z.strictObject({ title: z.string(), lines: z.string() }),
  needs: z.array(z.string()),
  uses: z.array(z.string()),
  roles: z.array(item),
  versions: z.array(z.strictObject({ version: z.string(), change: z.string() })),
  sources: z.array(item),
});
export type MethodView = z.infer<typeof methodView>;

/**
 * The method page of a reduction.
 * @param reduction one of the registry
 * @returns the view
 */
export function methodPage(reduction: Reduction): MethodView {
  const { note } = reduction;
  return {
    frame: frameOf(reduction.title, { question: reduction.answers, crumbs: [HELP_CRUMB] }),
    kind: reduction.kind,
    summary: [...note.summary],
    formulas: note.formulas.map(({ says, formula, source }) => ({
      says: sentence(says),
      formula,
      source: sentence(sourceInWords(source)),
    })),
    assumptions: [...note.assumptions],
    example: { title: note.workedExample.title, lines: note.workedExample.lines.join('\n') },
    needs: reduction.needs.map(nameInWords),
    uses: reduction.uses.map(nameInWords),
    roles: reduction.roles.map(({ role, meaning }) => ({ name: nameInWords(role), meaning: sentence(meaning) })),
    versions: note.versions.map(({ version, change }) => ({ version, change })),
    sources: note.sources.map((key) => {
      const found = SOURCES.find((one) => one.key === key);
      return { name: sentence(found?.title ?? key), meaning: found?.gives ?? '' };
    }),
  };
}

/** Source keys in brackets become titles; other text stays as the method note wrote it. */
function sourceInWords(text: string): string {
  const byKey = SOURCES.find((one) => one.key === text);
  if (byKey) return byKey.title;
  return text.replace(/\[([a-z0-9-]+)\]/g, (whole, key: string) => SOURCES.find((s) => s.key === key)?.title ?? whole);
}
