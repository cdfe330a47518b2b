/** From view to HTML: the view is held to its schema, so that a page never prints what its schema does not name. */
import type * as z from 'zod';
import { render } from '../render.ts';

/**
 * Render a page.
 * @param page name under pages/, text
 * @param schema the view's schema
 * @param view ready strings and lists
 * @returns HTML
 * @throws ZodError when the view is not what the schema says: a mistake of ours
 */
export function renderPage<S extends z.ZodType>(page: string, schema: S, view: z.output<S>): string {
  const whole = schema.parse(view);
  if (typeof whole !== 'object' || whole === null) throw new TypeError(`the view of ${page} is not an object`);
  return render(`pages/${page}`, whole);
}
