/** The project's own files, as the house tests read them: paths from the root with forward slashes. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

export const ROOT = resolve(import.meta.dirname, '..', '..');

export function filesUnder(folder: string, ending = '.ts'): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .map((path) => `${folder}/${path.replaceAll('\\', '/')}`)
    .filter((path) => path.endsWith(ending) && !path.endsWith('.d.ts'))
    .sort();
}

export function textOf(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8');
}

/** The text with comments blanked, line numbers kept. */
export function codeOf(path: string): string {
  return textOf(path)
    .replace(/\/\*[\s\S]*?\*\//g, (found) => found.replace(/[^\n]/g, ' '))
    .replace(/(^|[^:'"`\\])\/\/[^\n]*/g, '$1');
}

/** Module specifiers a file imports or re-exports, with line numbers. */
export function importsOf(path: string): { from: string; line: number }[] {
  const found: { from: string; line: number }[] = [];
  const text = codeOf(path);
  for (const match of text.matchAll(/(?:\bfrom\s+|\bimport\s+|\bimport\()\s*['"]([^'"]+)['"]/g)) {
    found.push({ from: match[1] ?? '', line: text.slice(0, match.index).split('\n').length });
  }
  return found;
}
