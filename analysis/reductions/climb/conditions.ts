/** What the rates are brought to: standard mass, wing, span efficiency, and what of it was assumed. */
import type { Airplane } from '../../airplane/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import type { ClimbOptions } from './input.ts';
import type { MassFlown } from './mass-flown.ts';
import { ASSUMED_E, type StandardConditions } from './standard.ts';

/**
 * Standard conditions of a reduction.
 * @param airplane the description, or undefined
 * @param options what a person stated
 * @param flown mass flown with its doubt
 * @returns conditions and flags for what was assumed
 */
export function standardConditions(
  airplane: Airplane | undefined,
  options: ClimbOptions,
  flown: MassFlown,
): { to: StandardConditions; flags: Flag[] } {
  const flags: Flag[] = [];
  // A mass that nobody stated is not brought to another: all runs are brought to the first record's.
  const mass = options.standardMass?.si ?? (flown.stated ? airplane?.limits.mass.maximum.si : flown.at(0)) ?? null;
  const massesTogether = !flown.stated && options.standardMass === undefined;
  const [S, span] = [airplane?.wing.area?.si, airplane?.wing.span?.si];
  const wing = S !== undefined && span !== undefined ? { S, A: span ** 2 / S } : null;
  const own = options.spanEfficiency;
  const e = own ? { value: own.value, u: own.u95 / 2, assumed: false } : { ...ASSUMED_E, assumed: true };
  if (mass !== null && !wing)
    flags.push(
      flag('assumed-value', 'wing area or span is not known: mass is corrected for inertia only, not for induced drag'),
    );
  if (mass !== null && wing && e.assumed)
    flags.push(
      flag('assumed-value', `span efficiency ${e.value} within ${2 * e.u} assumed (common practice, no source)`),
    );
  return { to: { mass, wing, e, uMass: flown.u, massesTogether }, flags };
}
