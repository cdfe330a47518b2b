/** How far one run usually differs from the next, before this airplane has shown its own scatter. */

/** Standard deviation of one run (absolute in SI, or a share of the value) and its weight in degrees of freedom. */
export interface RepeatabilityPrior {
  s0: number;
  nu0: number;
  relative: boolean;
  words: string;
}

// All common practice, no source; the weights for airspeed legs were measured in simulation.
export const DEFAULT_REPEATABILITY = {
  'airspeed-leg': { s0: 0.5, nu0: 2, relative: false, words: '0.5 m/s' },
  'vertical-rate': { s0: 0.15, nu0: 4, relative: false, words: '0.15 m/s' },
  'ground-run-equilibrium': { s0: 1.5, nu0: 4, relative: false, words: '1.5 K' },
  'climb-peak-temperature': { s0: 1.5, nu0: 4, relative: false, words: '1.5 K' },
  'stall-speed': { s0: 0.5, nu0: 4, relative: false, words: '0.5 m/s' },
  'level-power': { s0: 0.02, nu0: 4, relative: true, words: '2 %' },
  'ground-roll': { s0: 0.05, nu0: 4, relative: true, words: '5 %' },
} as const satisfies Record<string, RepeatabilityPrior>;
