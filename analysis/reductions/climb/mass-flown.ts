/** Mass during each climb: what was stated at the first record, less the fuel burnt since. */
import type { Airplane } from '../../airplane/index.ts';
import { type Recording, seriesOf, valuesAt } from '../../logs/index.ts';
import { gasolineDensity } from '../../models/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import type { ClimbOptions } from './input.ts';

export interface MassFlown {
  at(seconds: number): number | null;
  /** standard uncertainty, kg */
  u: number;
  /** true where a person said what it was at the start */
  stated: boolean;
  flags: Flag[];
}

// Half-widths where nobody stated one, kg for a stated mass, share for an assumed one: common practice, no source.
const STATED_U95 = 5;
const ASSUMED_U95 = 0.1;

/**
 * Mass over the log, or over a card whose points give their own.
 * @param recording the aligned logs, or undefined
 * @param airplane the description, or undefined
 * @param options what a person stated
 * @returns mass at a time of the log, with its doubt and what was assumed
 */
export function massFlown(
  recording: Recording | undefined,
  airplane: Airplane | undefined,
  options: ClimbOptions,
): MassFlown {
  const flags: Flag[] = [];
  const maximum = airplane?.limits.mass.maximum.si;
  const start = options.startMass?.si ?? maximum;
  if (start === undefined) {
    return {
      at: () => null,
      u: 0,
      stated: false,
      flags: [flag('method-note', 'mass not known: rates are at the mass flown and are not brought to another')],
    };
  }
  if (!options.startMass && options.standardMass)
    flags.push(flag('assumed-value', 'mass at the start taken as the maximum, within 10 %; state it'));
  else if (!options.startMass)
    flags.push(
      flag(
        'assumed-value',
        'mass at the start not stated: the rates stand for that mass, whatever it was; what the fuel burnt since does is reckoned from the maximum mass, within 10 %. State the mass to have them at the standard mass',
      ),
    );
  const density = options.fuelDensity?.si ?? gasolineDensity().value;
  const burnt = recording ? fuelBurnt(recording, density) : () => 0;
  if (recording && !burnt)
    flags.push(flag('assumed-value', 'neither fuel used nor fuel flow is logged: mass taken as that at the start'));
  return {
    at: (seconds) => start - (burnt ? burnt(seconds) : 0),
    u: (options.massU95?.si ?? (options.startMass ? STATED_U95 : ASSUMED_U95 * start)) / 2,
    stated: options.startMass !== undefined,
    flags,
  };
}

function fuelBurnt(recording: Recording, density: number): ((seconds: number) => number) | null {
  const used = seriesOf(recording, 'fuel-used');
  if (used) {
    const first = used.v.find((value) => Number.isFinite(value)) ?? 0;
    return (seconds) => {
      const now = valuesAt(used, [seconds])[0] ?? Number.NaN;
      return Number.isFinite(now) ? density * (now - first) : 0;
    };
  }
  const flow = seriesOf(recording, 'fuel-flow');
  if (!flow) return null;
  return (seconds) => {
    let total = 0;
    for (let i = 1; i < flow.t.length && (flow.t[i] ?? 0) <= seconds; i += 1) {
      const rate = flow.v[i] ?? Number.NaN;
      if (Number.isFinite(rate)) total += rate * ((flow.t[i] ?? 0) - (flow.t[i - 1] ?? 0));
    }
    return density * total;
  };
}
