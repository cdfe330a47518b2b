/**
 * The shape of what a person may state, read from its own schema: which fields there are, of which kind, in which unit.
 * Pages and forms are made from it, so that a field added to a schema appears on its page without a line here.
 */
import * as z from 'zod';
import { UNITS, unitOf } from '../../analysis/units/index.ts';

const optionSchema = z.union([z.string(), z.boolean(), z.number()]);

/** What we read of a JSON Schema node. */
const nodeSchema = z.object({
  type: z.string().optional(),
  properties: z.record(z.string(), z.unknown()).optional(),
  required: z.array(z.string()).optional(),
  items: z.unknown().optional(),
  enum: z.array(optionSchema).optional(),
  const: optionSchema.optional(),
  anyOf: z.array(z.unknown()).optional(),
  oneOf: z.array(z.unknown()).optional(),
  additionalProperties: z.unknown().optional(),
  maxLength: z.number().optional(),
  dimension: z.string().optional(),
  unitOf: z.string().optional(),
  default: z.unknown().optional(),
});
type Node = z.infer<typeof nodeSchema>;

/** One of several values a field may take. */
export interface Option {
  value: string;
  text: string;
}

/** A number with its unit, source and status. */
export interface StatedShape {
  is: 'stated';
  units: Option[];
  needsSource: boolean;
  needsStatus: boolean;
  hasScale: boolean;
}

/** A field of an object: its key, what it is, and what it is when the file says nothing. */
export interface Field {
  key: string;
  shape: Shape;
  required: boolean;
  fallback: unknown;
}

export type Shape =
  | StatedShape
  | { is: 'text'; long: boolean }
  | { is: 'words' }
  | { is: 'number'; whole: boolean }
  | { is: 'tick' }
  | { is: 'choice'; options: Option[]; orNone: boolean }
  | { is: 'ticks'; options: Option[] }
  | { is: 'group'; fields: Field[] }
  | { is: 'fitted'; fields: Field[] }
  | { is: 'list'; fields: Field[] }
  | { is: 'list-of-variants'; by: string; variants: Map<string, Field[]> }
  | { is: 'named'; fields: Field[] }
  | { is: 'variants'; by: string; variants: Map<string, Field[]> };

/**
 * The fields of a schema.
 * @param schema of an object
 * @returns its fields, in the order of the schema; none where it is not an object
 */
export function schemaFields(schema: z.ZodType): Field[] {
  return fieldsOf(nodeOf(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any', reused: 'inline' })));
}

/** Longer than this and a text is written in a box of several lines. */
const LONG = 300;

function nodeOf(json: unknown): Node {
  return nodeSchema.parse(json);
}

function fieldsOf(node: Node): Field[] {
  return Object.entries(node.properties ?? {})
    .filter(([key]) => key !== 'format' && key !== 'invented')
    .map(([key, inner]) => {
      const one = nodeOf(inner);
      return { key, shape: shapeOf(one), required: node.required?.includes(key) ?? false, fallback: one.default };
    });
}

function shapeOf(node: Node): Shape {
  if (node.dimension !== undefined) return statedShape(node, [node.dimension]);
  if (node.unitOf !== undefined) return { is: 'choice', options: unitOptions([node.unitOf]), orNone: false };
  if (node.oneOf) return variantsOf(node.oneOf.map(nodeOf));
  if (node.anyOf) return eitherOf(node.anyOf.map(nodeOf));
  if (node.enum) return { is: 'choice', options: node.enum.map(optionOf), orNone: false };
  if (node.type === 'object') {
    if (node.properties) return { is: 'group', fields: fieldsOf(node) };
    return { is: 'named', fields: fieldsOf(nodeOf(node.additionalProperties)) };
  }
  if (node.type === 'array') return listOf(nodeOf(node.items));
  if (node.type === 'boolean') return { is: 'tick' };
  if (node.type === 'number' || node.type === 'integer') return { is: 'number', whole: node.type === 'integer' };
  if (node.const !== undefined) return { is: 'choice', options: [optionOf(node.const)], orNone: false };
  return { is: 'text', long: (node.maxLength ?? 0) > LONG };
}

function statedShape(node: Node, dimensions: string[]): StatedShape {
  const { properties = {}, required = [] } = node;
  const unit = properties.unit === undefined ? undefined : nodeOf(properties.unit);
  const units = unit?.enum ? unit.enum.map((id) => unitOption(String(id))) : unitOptions(dimensions);
  return {
    is: 'stated',
    units,
    needsSource: required.includes('source'),
    needsStatus: required.includes('status'),
    hasScale: 'scale' in properties,
  };
}

/** Several things one may be: nothing or something fitted, nothing or one of several, one of two dimensions. */
function eitherOf(nodes: Node[]): Shape {
  const some = nodes.filter((one) => one.const !== false);
  const [first] = some;
  if (!first) return { is: 'tick' };
  const dimensions = some.flatMap((one) => (one.dimension === undefined ? [] : [one.dimension]));
  if (dimensions.length > 0) return statedShape(first, dimensions);
  const named = some.find((one) => one.enum);
  if (named?.enum) return { is: 'choice', options: named.enum.map(optionOf), orNone: some.length < nodes.length };
  return { is: 'fitted', fields: fieldsOf(first) };
}

function variantsOf(nodes: Node[]): Extract<Shape, { is: 'variants' }> {
  const [first] = nodes;
  const values = (json: unknown): string[] => {
    const node = nodeOf(json ?? {});
    return node.const === undefined ? (node.enum ?? []).map(String) : [String(node.const)];
  };
  const by =
    Object.entries(first?.properties ?? {}).find(([, inner]) => nodeOf(inner).const !== undefined)?.[0] ?? 'kind';
  const variants = nodes.flatMap((node) =>
    values(node.properties?.[by]).map((value): [string, Field[]] => [
      value,
      fieldsOf(node).filter(({ key }) => key !== by),
    ]),
  );
  return { is: 'variants', by, variants: new Map(variants) };
}

function listOf(items: Node): Shape {
  if (items.oneOf) return { ...variantsOf(items.oneOf.map(nodeOf)), is: 'list-of-variants' };
  if (items.enum) return { is: 'ticks', options: items.enum.map(optionOf) };
  return items.properties ? { is: 'list', fields: fieldsOf(items) } : { is: 'words' };
}

function optionOf(value: string | boolean | number): Option {
  return { value: String(value), text: String(value).replaceAll('-', ' ') };
}

/** Units a person is offered, the usual first; of the others of a dimension nobody states a figure of an airplane. */
const OFFERED: Partial<Record<string, readonly string[]>> = {
  temperature: ['degC', 'degF', 'K'],
  'temperature-difference': ['dC', 'dF', 'dK'],
  pressure: ['bar', 'psi', 'hPa', 'kPa', 'inHg'],
  speed: ['kt', 'mph', 'km/h', 'm/s', 'ft/min'],
  length: ['m', 'ft', 'mm', 'in', 'km', 'nmi'],
  volume: ['L', 'gal', 'impgal'],
  'volume-flow': ['L/h', 'gal/h', 'impgal/h'],
  mass: ['kg', 'lb'],
  time: ['s', 'min', 'h'],
  frequency: ['rpm', '1/s'],
  angle: ['deg', 'rad'],
  acceleration: ['g0', 'm/s2'],
  current: ['A'],
  voltage: ['V'],
  charge: ['Ah'],
  power: ['kW', 'hp'],
  force: ['N', 'daN', 'lbf'],
  ratio: ['%', '1'],
};

/** Units offered for figures of these dimensions. */
export function unitOptions(dimensions: readonly string[]): Option[] {
  return dimensions.flatMap((dimension) => {
    const all = UNITS.filter((unit) => unit.dimension === dimension).map((unit) => unit.id);
    return (OFFERED[dimension] ?? all).map(unitOption);
  });
}

function unitOption(id: string): Option {
  return { value: id, text: unitOf(id).symbol || id };
}
