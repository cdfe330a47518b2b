/**
 * A small assembler: WebAssembly text in its folded form, as the standard writes it, to the bytes of a module. It
 * knows functions with named parameters and locals, one exported memory, and the instructions in the table below.
 */

type Expression = string | Expression[];

const TYPES: Readonly<Record<string, number>> = { i32: 0x7f, i64: 0x7e, v128: 0x7b };
const SIMD = 0xfd;

/** Instructions without operands of their own. */
const PLAIN: Readonly<Record<string, readonly number[]>> = {
  'i32.eqz': [0x45], 'i32.eq': [0x46], 'i32.ne': [0x47], 'i32.lt_s': [0x48], 'i32.lt_u': [0x49], 'i32.gt_s': [0x4a],
  'i32.gt_u': [0x4b], 'i32.le_s': [0x4c], 'i32.ge_u': [0x4f], 'i32.ge_s': [0x4e], 'i32.add': [0x6a], 'i32.sub': [0x6b],
  'i32.mul': [0x6c], 'i32.and': [0x71], 'i32.or': [0x72], 'i32.xor': [0x73], 'i32.shl': [0x74], 'i32.shr_u': [0x76],
  'i64.eqz': [0x50], 'i64.eq': [0x51], 'i64.ne': [0x52], 'i64.gt_u': [0x56], 'i64.ctz': [0x7a], 'i64.add': [0x7c],
  'i64.sub': [0x7d], 'i64.mul': [0x7e], 'i64.and': [0x83], 'i64.or': [0x84], 'i64.xor': [0x85], 'i64.shl': [0x86],
  'i64.shr_u': [0x88], 'i32.wrap_i64': [0xa7], 'i64.extend_i32_u': [0xad], 'select': [0x1b], 'v128.bitselect': [SIMD, 0x52],
  'i8x16.eq': [SIMD, 0x23], 'v128.any_true': [SIMD, 0x53], 'v128.or': [SIMD, 0x50], 'i32x4.splat': [SIMD, 0x11], 'i32x4.eq': [SIMD, 0x37], 'i32x4.abs': [SIMD, 0xa0, 0x01], 'i32x4.add': [SIMD, 0xae, 0x01],
  'i32x4.sub': [SIMD, 0xb1, 0x01], 'i32x4.min_s': [SIMD, 0xb6, 0x01], 'i32x4.max_s': [SIMD, 0xb8, 0x01],
  'i16x8.narrow_i32x4_s': [SIMD, 0x85, 0x01],
}; // biome-ignore format: a table

/** Instructions that touch memory, with the power of two of the alignment the standard lets them claim. */
const MEMORY: Readonly<Record<string, { code: readonly number[]; align: number }>> = {
  'i32.load': { code: [0x28], align: 2 },
  'i64.load': { code: [0x29], align: 0 },
  'i32.load8_u': { code: [0x2d], align: 0 },
  'i32.store': { code: [0x36], align: 2 },
  'v128.load': { code: [SIMD, 0x00], align: 0 },
  'v128.store': { code: [SIMD, 0x0b], align: 0 },
};

const BLOCKS: Readonly<Record<string, number>> = { block: 0x02, loop: 0x03 };
const EMPTY = 0x40;
const END = 0x0b;

/**
 * Assemble a module.
 * @param text the module's functions in folded text, after `;;` comments
 * @param pages memory of the module, pages of 64 kB
 * @returns bytes of a module that exports each function by its name, and `memory`
 * @throws Error where the text uses what is not in the tables
 */
export function assemble(text: string, pages: number): Uint8Array<ArrayBuffer> {
  const functions = parse(text).map(functionOf);
  const name = (one: string) => [...unsigned(one.length), ...new TextEncoder().encode(one)];
  return Uint8Array.from([
    0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00,
    ...section(1, functions.map((one) => [0x60, ...list(one.parameters), ...list(one.results)])),
    ...section(3, functions.map((_, i) => unsigned(i))),
    ...section(5, [[0x00, ...unsigned(pages)]]),
    ...section(7, [
      ...functions.map((one, i) => [...name(one.name), 0x00, ...unsigned(i)]),
      [...name('memory'), 0x02, 0x00],
    ]),
    ...section(10, functions.map(({ locals, body }) => {
      const code = [...vector(locals.map((type) => [1, type])), ...body, END];
      return [...unsigned(code.length), ...code];
    })),
  ]); // biome-ignore format: one section a line
}

interface Assembled {
  name: string;
  parameters: number[];
  results: number[];
  locals: number[];
  body: number[];
}

function functionOf(expression: Expression): Assembled {
  const [word, name, ...rest] = listOf(expression);
  if (word !== 'func' || typeof name !== 'string') throw new Error('a function is wanted');
  const made: Assembled = { name: name.slice(1), parameters: [], results: [], locals: [], body: [] };
  const places = new Map<string, number>();
  for (const one of rest) {
    const [head, first, second] = listOf(one);
    const type = TYPES[String(second ?? first)] ?? 0;
    if (head === 'result') made.results.push(type);
    else if (head === 'param' || head === 'local') {
      places.set(String(first), places.size);
      (head === 'param' ? made.parameters : made.locals).push(type);
    } else made.body.push(...instruction(one, places, []));
  }
  return made;
}

function instruction(expression: Expression, locals: ReadonlyMap<string, number>, labels: readonly string[]): number[] {
  const [head, ...rest] = listOf(expression);
  const word = String(head);
  const inside = (list: readonly Expression[], more = labels) => list.flatMap((one) => instruction(one, locals, more));
  const label = () => unsigned(labels.length - 1 - labels.lastIndexOf(String(rest[0])));
  const block = BLOCKS[word];
  if (block !== undefined) return [block, EMPTY, ...inside(rest.slice(1), [...labels, String(rest[0])]), END];
  if (word === 'if') {
    const [condition, ...branches] = rest;
    const [then, other] = branches.map((one) => inside(listOf(one).slice(1), [...labels, '']));
    return [...inside([condition ?? '']), 0x04, EMPTY, ...(then ?? []), ...(other ? [0x05, ...other] : []), END];
  }
  if (word === 'br') return [0x0c, ...label()];
  if (word === 'br_if') return [...inside(rest.slice(1)), 0x0d, ...label()];
  if (word === 'local.get') return [0x20, ...unsigned(placeOf(rest[0], locals))];
  if (word === 'local.set') return [...inside(rest.slice(1)), 0x21, ...unsigned(placeOf(rest[0], locals))];
  if (word === 'local.tee') return [...inside(rest.slice(1)), 0x22, ...unsigned(placeOf(rest[0], locals))];
  if (word === 'i32.const') return [0x41, ...signed(BigInt.asIntN(32, BigInt(String(rest[0]))))];
  if (word === 'i64.const') return [0x42, ...signed(BigInt.asIntN(64, BigInt(String(rest[0]))))];
  const memory = MEMORY[word];
  if (memory) {
    const offset = typeof rest[0] === 'string' ? Number(rest[0].replace('offset=', '')) : 0;
    return [
      ...inside(rest.filter((one) => typeof one !== 'string')),
      ...memory.code,
      memory.align,
      ...unsigned(offset),
    ];
  }
  const plain = PLAIN[word];
  if (!plain) throw new Error(`no instruction ${word}`);
  return [...inside(rest), ...plain];
}

function placeOf(name: Expression | undefined, locals: ReadonlyMap<string, number>): number {
  const place = locals.get(String(name));
  if (place === undefined) throw new Error(`no local ${String(name)}`);
  return place;
}

function parse(text: string): Expression[] {
  const open: Expression[][] = [[]];
  for (const token of text.replace(/;;.*/g, '').match(/[()]|[^\s()]+/g) ?? []) {
    if (token === '(') open.push([]);
    else if (token === ')') {
      const done = open.pop() ?? [];
      open.at(-1)?.push(done);
    } else open.at(-1)?.push(token);
  }
  return open[0] ?? [];
}

function listOf(expression: Expression): Expression[] {
  if (typeof expression === 'string') throw new Error(`a list is wanted, not ${expression}`);
  return expression;
}

const list = (bytes: readonly number[]) => [...unsigned(bytes.length), ...bytes];
const vector = (items: readonly (readonly number[])[]) => [...unsigned(items.length), ...items.flat()];

function section(id: number, items: readonly (readonly number[])[]): number[] {
  return [id, ...list(vector(items))];
}

/** LEB128, as modules write whole numbers. */
function unsigned(value: number): number[] {
  return value < 0x80 ? [value] : [(value & 0x7f) | 0x80, ...unsigned(value >>> 7)];
}

function signed(value: bigint): number[] {
  const low = Number(value & 0x7fn);
  const rest = value >> 7n;
  const isLast = (rest === 0n && low < 0x40) || (rest === -1n && low >= 0x40);
  return isLast ? [low] : [low | 0x80, ...signed(rest)];
}
