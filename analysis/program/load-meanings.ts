/** What each load a test asks for means: how heavy, and where in the range of the centre of gravity. */
import type { Load } from '../catalogue/index.ts';

export interface LoadMeaning {
  /** what a card says of it */
  words: string;
  /** share of the way from the mass as it comes to the maximum less its U95, 0 to 1; null leaves it as it comes */
  mass: (part: number, of: number) => number | null;
  /** band of the CG range, 0 forward limit to 1 aft limit */
  band: (part: number, of: number) => readonly [number, number];
  /** 0 first load to 4: a higher one waits until the lower was flown */
  level: number;
}

const FORWARD_HALF = [0.05, 0.5] as const;

/** shares of the CG range an aft step goes to: from the middle in fifths */
const aftStep = (part: number, of: number) => {
  const to = 0.5 + (0.45 * part) / of;
  return [to - 0.12, to] as const;
};

/** forward heavy, forward light, aft light, aft heavy last */
const CORNERS = [
  { mass: 1, band: [0.02, 0.15] },
  { mass: null, band: [0.02, 0.35] },
  { mass: null, band: [0.7, 0.95] },
  { mass: 1, band: [0.8, 0.95] },
] as const;

export const LOAD_MEANINGS: Readonly<Record<Load, LoadMeaning>> = {
  any: { words: 'any load', mass: () => null, band: () => [0, 1], level: 0 },
  'first-flight': {
    words: 'first-flight load: light, forward half of the CG range',
    mass: () => null,
    band: () => FORWARD_HALF,
    level: 0,
  },
  'light-forward': {
    words: 'light to mid, forward half of the CG range',
    mass: () => null,
    band: () => FORWARD_HALF,
    level: 0,
  },
  'payload-steps': {
    words: 'payload raised in steps, CG kept in the forward half',
    mass: (part, of) => part / of,
    band: () => FORWARD_HALF,
    level: 1,
  },
  gross: { words: 'maximum weight, forward half of the CG range', mass: () => 1, band: () => FORWARD_HALF, level: 2 },
  'light-and-gross': {
    words: 'one flight light, one at maximum weight, forward half of the CG range',
    mass: (part, of) => (part === of ? 1 : null),
    band: () => FORWARD_HALF,
    level: 2,
  },
  'forward-limit': { words: 'maximum weight at the forward limit', mass: () => 1, band: () => [0.02, 0.12], level: 2 },
  'aft-steps': { words: 'CG moved aft, one step a flight', mass: () => null, band: aftStep, level: 2 },
  corners: {
    words: 'corners of weight and CG, one a flight, aft and heavy last',
    mass: (part, of) => CORNERS[cornerOf(part, of)]?.mass ?? null,
    band: (part, of) => CORNERS[cornerOf(part, of)]?.band ?? [0.8, 0.95],
    level: 3,
  },
};

function cornerOf(part: number, of: number): number {
  return Math.min(CORNERS.length - 1, Math.floor(((part - 1) * CORNERS.length) / of));
}
