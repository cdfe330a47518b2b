/** Loads that wait until another test has shown the step before them; a test flown at one waits for that test. */
import type { Load } from './test.ts';

export const LOAD_STEPS: Readonly<Partial<Record<Load, string>>> = {
  gross: 'weight-expansion',
  'light-and-gross': 'weight-expansion',
  'forward-limit': 'weight-expansion',
  'aft-steps': 'weight-expansion',
  corners: 'aft-cg-expansion',
};
