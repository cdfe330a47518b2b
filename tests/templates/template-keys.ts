/** Reads a template and its parts, and compares every key it prints with the zod schema of its view, both ways. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Handlebars from 'handlebars';
import * as z from 'zod';

const TEMPLATES = join(import.meta.dirname, '../../templates');

interface Found {
  /** keys that the template prints and the view lacks */
  unknown: string[];
  /** keys that the view has and nothing prints */
  unused: string[];
}

type Schema = z.core.$ZodType;

/**
 * Compare a template with the schema of its view.
 * @param template name as `render` takes it
 * @param schema the view's schema
 */
export function compareKeys(template: string, schema: z.ZodType): Found {
  const walk: Walk = { unknown: [], used: new Map(), open: [] };
  walkTemplate(template, [bare(schema)], walk);
  const unused: string[] = [];
  collectUnused(bare(schema), '', walk.used, new Set(), unused);
  return { unknown: [...new Set(walk.unknown)], unused };
}

interface Walk {
  unknown: string[];
  used: Map<Schema, Set<string>>;
  /** parts being walked, so that one that calls itself ends */
  open: { name: string; schema: Schema }[];
}

function walkTemplate(name: string, contexts: Schema[], walk: Walk): void {
  const here = contexts.at(-1);
  if (!here || walk.open.some((one) => one.name === name && one.schema === here)) return;
  walk.open.push({ name, schema: here });
  const program = Handlebars.parse(readFileSync(join(TEMPLATES, `${name}.hbs`), 'utf8'));
  walkProgram(program, contexts, name, walk);
  walk.open.pop();
}

function walkProgram(program: hbs.AST.Program, contexts: Schema[], name: string, walk: Walk): void {
  for (const statement of program.body) walkStatement(statement, contexts, name, walk);
}

function walkStatement(statement: hbs.AST.Statement, contexts: Schema[], name: string, walk: Walk): void {
  switch (statement.type) {
    case 'MustacheStatement': {
      const { path, params } = statement as hbs.AST.MustacheStatement;
      for (const one of [path, ...params]) lookUp(one, contexts, name, walk);
      return;
    }
    case 'BlockStatement': {
      const { path, params, program, inverse } = statement as hbs.AST.BlockStatement;
      const word = 'original' in path ? path.original : '';
      const found = params[0] ? lookUp(params[0], contexts, name, walk) : undefined;
      const inner = word === 'each' ? elementOf(found) : word === 'with' ? found : contexts.at(-1);
      const deeper = word === 'each' || word === 'with';
      if (inner) walkProgram(program, deeper ? [...contexts, inner] : contexts, name, walk);
      if (inverse) walkProgram(inverse, contexts, name, walk);
      return;
    }
    case 'PartialStatement':
    case 'PartialBlockStatement': {
      const partial = statement as hbs.AST.PartialStatement & { program?: hbs.AST.Program };
      const called = 'original' in partial.name ? String(partial.name.original) : '';
      const context = partial.params[0] ? lookUp(partial.params[0], contexts, name, walk) : contexts.at(-1);
      if (called !== '@partial-block' && context) walkTemplate(called, [...contexts, context], walk);
      if (partial.program) walkProgram(partial.program, contexts, name, walk);
    }
  }
}

function lookUp(expression: hbs.AST.Expression, contexts: Schema[], name: string, walk: Walk): Schema | undefined {
  if (expression.type !== 'PathExpression') return undefined;
  const path = expression as hbs.AST.PathExpression;
  if (path.data) return undefined;
  let at: Schema | undefined = contexts.at(-1 - path.depth);
  for (const part of path.parts.map(String)) {
    const next = at && keyOf(at, part);
    if (!at || !next) {
      walk.unknown.push(`${name}: ${path.original}`);
      return undefined;
    }
    walk.used.set(at, (walk.used.get(at) ?? new Set()).add(part));
    at = next;
  }
  return at;
}

/** A schema without its optional, nullable and default wrappings. */
function bare(schema: Schema): Schema {
  const { def } = schema._zod;
  return 'innerType' in def ? bare(def.innerType as Schema) : schema;
}

function keyOf(schema: Schema, key: string): Schema | undefined {
  const inner = bare(schema);
  const shape = inner instanceof z.ZodObject ? (inner.shape as Record<string, Schema>) : {};
  const found = Object.hasOwn(shape, key) ? shape[key] : undefined;
  return found && bare(found);
}

function elementOf(schema: Schema | undefined): Schema | undefined {
  return schema instanceof z.ZodArray ? bare(schema.element as Schema) : undefined;
}

function collectUnused(
  schema: Schema,
  path: string,
  used: Map<Schema, Set<string>>,
  seen: Set<Schema>,
  unused: string[],
): void {
  const element = elementOf(schema);
  if (element) collectUnused(element, `${path}[]`, used, seen, unused);
  if (!(schema instanceof z.ZodObject) || seen.has(schema)) return;
  seen.add(schema);
  for (const [key, inner] of Object.entries(schema.shape as Record<string, Schema>)) {
    if (used.get(schema)?.has(key)) collectUnused(bare(inner), `${path}.${key}`, used, seen, unused);
    else unused.push(`${path}.${key}`);
  }
}
