/** The worked example of the method note, computed with the code it explains. */
import { describe, expect, it } from 'vitest';
import { correctToHotDay, hotDayAir } from '../../../../analysis/models/index.ts';
import { coolingClimb } from '../../../../analysis/reductions/cooling-climb/index.ts';
import { compareWithLimit } from '../../../../analysis/results/index.ts';
import { SOURCES } from '../../../../analysis/sources.ts';
import { differenceFromSi, fromSi, toSi } from '../../../../analysis/units/index.ts';

const { note } = coolingClimb;
const F = (degrees: number) => toSi(degrees, 'degF');
const f = (si: number) => fromSi(si, 'degF').toFixed(1);
const lines = note.workedExample.lines;

describe('worked example of cooling climbs', () => {
  const hot = hotDayAir('14cfr23', toSi(6500, 'ft'));
  const corrected = correctToHotDay(F(212), 'coolant', F(48), hot);

  it('coolant and hot day', () => {
    expect(lines[0]).toBe(`Hot day at 6500 ft: 100 − 6.5 × 3.6 = ${f(hot)} °F.`);
    expect(lines[1]).toBe(
      `Corrected: 212 + 1.0 × (${f(hot)} − 48) = ${f(corrected)} °F (${fromSi(corrected, 'degC').toFixed(1)} °C).`,
    );
  });

  it('a barrel', () => {
    const there = hotDayAir('14cfr23', toSi(8000, 'ft'));
    const barrel = correctToHotDay(F(380), 'cylinder-barrel', F(35), there);
    expect(lines[2]).toBe(
      `A cylinder barrel at 380 °F in 35 °F at 8000 ft: 380 + 0.7 × (${f(there)} − 35) = ${f(barrel)} °F.`,
    );
  });

  it('the margin and what it shows', () => {
    const left = F(250) - corrected;
    const compared = compareWithLimit({ what: '', value: corrected, u95: 4, limit: F(250), unit: 'K' });
    expect(compared.outcome).toBe('shown');
    expect(lines[3]).toContain(
      `250 − ${f(corrected)} = ${differenceFromSi(left, 'dF').toFixed(1)} °F (${left.toFixed(1)} K)`,
    );
    expect(lines[3]).toContain(
      `${fromSi(corrected, 'degC').toFixed(1)} + 4.0 ≤ ${fromSi(F(250), 'degC').toFixed(1)} °C`,
    );
  });

  it('cites sources that are on the list', () => {
    const keys = new Set(SOURCES.map(({ key }) => key));
    for (const source of [...note.sources, ...note.formulas.map((one) => one.source)]) expect(keys).toContain(source);
    expect(note.versions[0]?.version).toMatch(/^cooling-climb \d+$/);
  });
});
