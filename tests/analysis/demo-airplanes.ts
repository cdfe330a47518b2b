/** The two demo airplanes, read once for the tests that need one. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Airplane, readAirplane } from '../../analysis/airplane/index.ts';

const PLACE = join(import.meta.dirname, '..', '..', 'sample-tests');

/** The description as parsed JSON, to be changed by a test. */
export function demoJson(name: 'ouzel' | 'wrenlet'): Record<string, Record<string, unknown>> {
  return JSON.parse(readFileSync(join(PLACE, name, 'airplane.json'), 'utf8'));
}

/** A description as the analysis takes it. */
export function airplaneFrom(json: unknown): Airplane {
  const read = readAirplane(json);
  if (!read.airplane) throw new Error(read.problems.map((one) => one.message).join('\n'));
  return read.airplane;
}

/** A demo airplane, with parts of its description replaced. */
export function demo(name: 'ouzel' | 'wrenlet', change: Record<string, unknown> = {}): Airplane {
  return airplaneFrom(merged(demoJson(name), change));
}

function merged(base: unknown, change: unknown): unknown {
  if (!isRecord(base) || !isRecord(change)) return change;
  const out: Record<string, unknown> = { ...base };
  for (const [key, value] of Object.entries(change)) {
    if (value === undefined) delete out[key];
    else out[key] = merged(base[key], value);
  }
  return out;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
