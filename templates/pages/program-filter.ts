/** Which tests of the program are shown: by stage, by system, by where they stand. The list and the drawing share it. */
import * as z from 'zod';
import type { Program, ProgramTest } from '../../analysis/program/index.ts';
import { sentence } from '../words/list.ts';

const option = z.strictObject({ value: z.string(), text: z.string(), selected: z.boolean() });
export const filterPart = z.strictObject({ name: z.string(), label: z.string(), options: z.array(option) });
export type FilterPart = z.infer<typeof filterPart>;

export interface ProgramFilter {
  stage?: string | undefined;
  system?: string | undefined;
  status?: string | undefined;
}

const STATES = [
  ...['planned', 'briefed', 'flown', 'reduced', 'accepted', 'repeat', 'stale'].map((value) => ({ value, text: value })),
  { value: 'missing', text: 'card lacks a number' },
];

/** The choices a person has, with what is chosen. */
export function filterChoices(program: Program, filter: ProgramFilter): FilterPart[] {
  const tests = program.stages.flatMap((stage) => stage.tests);
  const stages = program.stages.map(({ stage, title }) => ({ value: stage, text: title }));
  const systems = [...new Set(tests.map((test) => test.system))].sort();
  return [
    filterOf('stage', 'Stage', stages, filter.stage),
    filterOf(
      'system',
      'System',
      systems.map((value) => ({ value, text: sentence(value) })),
      filter.system,
    ),
    filterOf('status', 'Status', STATES, filter.status),
  ];
}

/**
 * Is a test among those chosen?
 * @param status where the test stands, text
 */
export function filterTakes(filter: ProgramFilter, test: ProgramTest, status: string): boolean {
  return (
    (!filter.stage || test.stage === filter.stage) &&
    (!filter.system || test.system === filter.system) &&
    (!filter.status || (filter.status === 'missing' ? test.missing.length > 0 : filter.status === status))
  );
}

function filterOf(name: string, label: string, options: { value: string; text: string }[], selected = ''): FilterPart {
  const all = [{ value: '', text: 'all' }, ...options];
  return { name, label, options: all.map((one) => ({ ...one, selected: one.value === selected })) };
}
