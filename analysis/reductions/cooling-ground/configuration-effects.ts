/** What the fan or the door is worth: differences of D between held conditions of one run, where sensors cancel. */

import type { Airplane } from '../../airplane/index.ts';
import { noiseHalf } from '../../models/index.ts';
import { combineUncertainty, coverageFactor, type Scatter } from '../../numbers/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import type { ResultTable } from '../../results/index.ts';
import type { Measured } from './measure.ts';
import { isSameCondition, isSameExit, isSamePower } from './repeatability.ts';

/** "Shown" needs each side run so often, interleaved. Common practice, no source. */
const RUNS_EACH = 2;

interface Side {
  label: string;
  runs: Measured[];
  excess: number;
}

/**
 * Table of fan and door effects.
 * @param measured points of the main temperature, list
 * @param repeat scatter of one run, object
 * @returns one row a pair that differs in one thing only; the change is of T_eq - T_air
 */
export function configurationEffects(measured: readonly Measured[], repeat: Scatter): ResultTable {
  const sides = sidesOf(measured);
  const rows: ResultTable['rows'] = [];
  sides.forEach((a, i) => {
    for (const b of sides.slice(i + 1)) {
      const what = differsIn(a, b);
      if (what === null) continue;
      const change = b.excess - a.excess;
      const doubt = combineUncertainty([
        ...[...a.runs, ...b.runs].flatMap((one) =>
          one.fit
            ? [
                {
                  part: 'noise' as const,
                  u: noiseHalf(one.fit) / coverageFactor(one.fit.nu) / runsOf(a, b, one),
                  nu: one.fit.nu,
                },
              ]
            : [],
        ),
        {
          part: 'repeatability' as const,
          u: repeat.s * Math.sqrt(1 / a.runs.length + 1 / b.runs.length),
          nu: repeat.nu,
        },
      ]);
      const enough = a.runs.length >= RUNS_EACH && b.runs.length >= RUNS_EACH;
      const outcome = enough && Math.abs(change) > doubt.u95 ? 'shown' : 'not shown';
      rows.push([what, a.label, b.label, change, doubt.u95, a.runs.length, b.runs.length, outcome]);
    }
  });
  return {
    name: 'configuration-effects',
    columns: [
      { name: 'what', unit: 'none' },
      { name: 'from', unit: 'none' },
      { name: 'to', unit: 'none' },
      { name: 'change', unit: 'dK' },
      { name: 'change-u95', unit: 'dK' },
      { name: 'runs-from', unit: 'count' },
      { name: 'runs-to', unit: 'count' },
      { name: 'outcome', unit: 'none' },
    ],
    rows,
  };
}

const runsOf = (a: Side, b: Side, one: Measured) => (a.runs.includes(one) ? a.runs.length : b.runs.length);

function sidesOf(measured: readonly Measured[]): Side[] {
  const sides: Side[] = [];
  for (const one of measured) {
    if (one.equilibrium === null || !one.fit) continue;
    const side = sides.find((other) => other.runs[0] && isSameCondition(other.runs[0].point.hold, one.point.hold));
    if (side) side.runs.push(one);
    else sides.push({ label: one.point.label, runs: [one], excess: 0 });
  }
  for (const side of sides) {
    side.excess = side.runs.reduce((sum, one) => sum + (one.fit?.excess ?? 0), 0) / side.runs.length;
  }
  return sides;
}

function differsIn(a: Side, b: Side): string | null {
  const [x, y] = [a.runs[0]?.point.hold, b.runs[0]?.point.hold];
  if (!x || !y || !isSamePower(x, y)) return null;
  const exit = !isSameExit(x, y);
  const fan = x.fan !== y.fan;
  return exit === fan ? null : fan ? 'fan' : 'exit';
}

/**
 * Remarks on combinations of fan and door that were never measured at a speed.
 * @param measured points of the main temperature, list
 * @param airplane the description, or undefined
 * @returns one remark, or none
 */
export function neverMeasured(measured: readonly Measured[], airplane: Airplane | undefined): Flag[] {
  const held = measured.filter((one) => one.equilibrium !== null).map((one) => one.point.hold);
  if (held.length === 0) return [];
  const missing: string[] = [];
  if (airplane?.cooling.groundFan) {
    for (const state of [true, false]) {
      const alone = held.filter(
        (one) =>
          one.fan === !state &&
          !held.some((other) => other.fan === state && isSamePower(one, other) && isSameExit(one, other)),
      );
      if (alone.length > 0)
        missing.push(`fan ${state ? 'on' : 'off'} beside ${alone.length} of ${held.length} held conditions`);
    }
  }
  if (airplane?.cooling.exitDoor || airplane?.cooling.cowlFlap) {
    const places = held.filter((one, i) => !held.slice(0, i).some((other) => isSameExit(one, other)));
    if (places.length < 2) missing.push('any other position of the exit');
  }
  return missing.length > 0
    ? [
        flag(
          'comparison-missing',
          `not measured, or not to an equilibrium: ${missing.join('; ')}. Two runs each, interleaved, show a difference`,
        ),
      ]
    : [];
}
