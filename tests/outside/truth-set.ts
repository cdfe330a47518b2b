/** Published check values: one JSON a subject, keys carrying their units, read here and measured against the code. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fromSi, toSi } from '../../analysis/units/index.ts';

export interface TruthCase {
  id: string;
  group: string;
  source: string;
  mark: 'read' | 'from memory';
  inputs: Record<string, number | string>;
  expected: Record<string, number>;
  tolerance: Record<string, number>;
  note?: string;
  erratum?: string;
}

export interface TruthSet {
  about: string;
  cases: TruthCase[];
}

export function readTruth(name: string): TruthSet {
  return JSON.parse(readFileSync(join(import.meta.dirname, 'truth', `${name}.json`), 'utf8'));
}

const SUFFIXES: Record<string, string> = {
  ft: 'ft',
  m: 'm',
  kt: 'kt',
  kmh: 'km/h',
  mph: 'mph',
  m_s: 'm/s',
  ft_s: 'ft/s',
  Pa: 'Pa',
  hPa: 'hPa',
  inHg: 'inHg',
  mmHg: 'mmHg',
  psi: 'psi',
  K: 'K',
  C: 'degC',
  F: 'degF',
  kg_m3: 'kg/m3',
};

/** `tas_kt` -> what it is, and the unit id; undefined for a pure number. Longest suffix first. */
export function splitKey(key: string): { base: string; unit: string | null } {
  for (const suffix of Object.keys(SUFFIXES).sort((a, b) => b.length - a.length)) {
    if (key.endsWith(`_${suffix}`)) return { base: key.slice(0, -suffix.length - 1), unit: SUFFIXES[suffix] ?? null };
  }
  return { base: key, unit: null };
}

/** Inputs of a case in SI, by base name; pure numbers as they are. */
export function siInputs(inputs: TruthCase['inputs']): Record<string, number> {
  const out: Record<string, number> = {};
  for (const [key, value] of Object.entries(inputs)) {
    if (typeof value !== 'number') continue;
    const { base, unit } = splitKey(key);
    out[base] = unit ? toSi(value, unit) : value;
  }
  return out;
}

export interface Deviation {
  id: string;
  key: string;
  expected: number;
  got: number;
  tolerance: number;
  source: string;
}

/** Every expected value of a case beside what the code gives, in the source's own unit. */
export function deviations(
  one: TruthCase,
  measured: Record<string, number | undefined>,
  special: Record<string, number> = {},
): Deviation[] {
  return Object.entries(one.expected).map(([key, expected]) => {
    const { base, unit } = splitKey(key);
    const si = measured[base];
    const factor = special[key];
    const got = si === undefined ? Number.NaN : factor !== undefined ? si / factor : unit ? fromSi(si, unit) : si;
    const tolerance = one.tolerance[key] ?? 0;
    return { id: one.id, key, expected, got, tolerance, source: one.source };
  });
}
