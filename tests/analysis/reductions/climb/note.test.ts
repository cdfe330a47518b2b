/** The method note's worked example, computed. */
import { expect, it } from 'vitest';
import { casFromEas, pressureAt, standardDay, tapelineRate } from '../../../../analysis/air/index.ts';
import {
  climbCorrectionFactor,
  excessPowerAtWeight,
  inducedDragChange,
  specificExcessPower,
  trueAirspeedGradient,
} from '../../../../analysis/models/index.ts';
import { reductionOf } from '../../../../analysis/reductions/index.ts';

it('the worked example is what the formulas give', () => {
  const text = (reductionOf('climb')?.note.workedExample.lines ?? []).join(' ');
  const [H, V, Wt, Ws] = [914.4, 45, 1000 * 9.80665, 1080 * 9.80665];
  const T = standardDay(H).T;
  const tapeline = tapelineRate(300 / 60, T + 10, H);
  const Ps = specificExcessPower(tapeline, V, 0.05);
  const dD = inducedDragChange(Wt, Ws, 42.3, { S: 12.4, A: 81 / 12.4, e: 0.75 });
  const inertia = (Wt / Ws) * Ps;
  const standard = excessPowerAtWeight(Ps, Wt, Ws, V, dD);
  const dVdh = trueAirspeedGradient(casFromEas(42.3, pressureAt(H)), H);
  const ccf = climbCorrectionFactor(V, dVdh);
  for (const value of [
    T.toFixed(2),
    (T + 10).toFixed(2),
    tapeline.toFixed(3),
    Ps.toFixed(3),
    dD.toFixed(1),
    inertia.toFixed(3),
    ((dD * V) / Ws).toFixed(3),
    standard.toFixed(3),
    dVdh.toFixed(5),
    ccf.toFixed(3),
    (standard * ccf).toFixed(3),
  ])
    expect(text).toContain(value);
});
