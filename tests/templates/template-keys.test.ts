import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { compareKeys } from './template-keys.ts';

const PAGES = join(import.meta.dirname, '../../templates/pages');
const camel = (name: string) => name.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
const pages = readdirSync(PAGES)
  .filter((name) => name.endsWith('.hbs') && !name.startsWith('_'))
  .map((name) => name.replace(/\.hbs$/, ''));

describe('every page prints exactly what its view has', () => {
  it.each(pages)('%s', async (page) => {
    const module: Record<string, unknown> = await import(join(PAGES, `${page}.view.ts`));
    const schema = module[`${camel(page)}View`];
    expect(schema, `pages/${page}.view.ts exports ${camel(page)}View`).toBeInstanceOf(z.ZodType);
    expect(compareKeys(`pages/${page}`, schema as z.ZodType)).toEqual({ unknown: [], unused: [] });
  });

  it('sees a key the view lacks and a key nothing prints', () => {
    const view = z.strictObject({ word: z.string(), spare: z.string() });
    const found = compareKeys('parts/outcome', view);
    expect(found.unknown).toContain('parts/outcome-shape: ring');
    expect(found.unused).toEqual(['.spare']);
  });
});
