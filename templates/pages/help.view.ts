/** Help: how, and by which method. Everything on it is printed from the lists the analysis itself uses. */
import * as z from 'zod';
import type { Reduction } from '../../analysis/reductions/index.ts';
import { frameOf, framePart } from '../parts/frame.view.ts';

export const helpView = z.strictObject({
  frame: framePart,
  methods: z.array(z.strictObject({ title: z.string(), answers: z.string(), href: z.string() })),
});
export type HelpView = z.infer<typeof helpView>;

/** Address of a reduction's method page. */
export function methodPath(kind: string): string {
  return `/help/methods/${encodeURIComponent(kind)}`;
}

/** The way back to Help, for pages below it. */
export const HELP_CRUMB = { text: 'Help and methods', href: '/help' };

/**
 * The front page of Help.
 * @param reductions the registry's list
 * @returns the view
 */
export function helpPage(reductions: readonly Reduction[]): HelpView {
  return {
    frame: frameOf('Help and methods', { question: 'How, and by which method?' }),
    methods: reductions.map(({ kind, title, answers }) => ({ title, answers, href: methodPath(kind) })),
  };
}
