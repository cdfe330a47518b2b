/** Every number the catalogue names: resolved for both demo airplanes, or missing with its meaning. */
import { describe, expect, it } from 'vitest';
import { type Known, REFERENCES, resolveReference } from '../../../analysis/catalogue/index.ts';
import type { Result } from '../../../analysis/results/index.ts';
import { toSi } from '../../../analysis/units/index.ts';
import { demo } from '../demo-airplanes.ts';

const ouzel = demo('ouzel');

function text(path: string, airplane = ouzel, known: Known = {}): string {
  return resolveReference(path, airplane, known).text;
}

const result = (kind: string, more: Partial<Result>): Result => ({
  kind,
  status: 'reduced',
  quantities: [],
  tables: [],
  segments: [],
  comparisons: [],
  flags: [],
  provenance: { files: [], configurationRevision: 1, methodVersion: '1' },
  ...more,
});

describe('references', () => {
  it.each(['ouzel', 'wrenlet'] as const)('resolve or are missing with a meaning: %s', (name) => {
    for (const { path, meaning } of REFERENCES) {
      const resolved = resolveReference(path, demo(name));
      if (resolved.kind === 'missing') {
        expect(resolved).toMatchObject({ path, meaning });
        expect(resolved.text.startsWith('____')).toBe(true);
      } else {
        expect(Number.isFinite(resolved.si), path).toBe(true);
        expect(resolved.text, path).toMatch(/^−?[\d.,]+( \S|°)/);
      }
    }
  });

  it('print as entered in the airplane’s own unit, an estimate as one', () => {
    expect(text('limits.coolant.caution')).toBe('105 °C');
    expect(text('speeds.climb')).toBe('95 KIAS est.');
    expect(text('speeds.flapsExtended')).toBe('95 KIAS');
    expect(text('plan.stallFloor')).toBe('4000 ft above ground');
    expect(text('plan.practiceCeiling')).toBe('9500 ft pressure altitude');
    expect(text('cooling.capPressure')).toBe('1.1 bar');
    expect(text('plan.descentPower')).toBe('15 inHg');
    expect(text('plan.descentPower', demo('wrenlet'))).toBe('2000 rpm');
    expect(text('plan.aftMargin')).toBe('5 % MAC');
  });

  it('convert to the careful side: an upper limit down, a least value up', () => {
    const imperial = demo('ouzel', {
      instruments: { units: { temperature: 'degF', airspeed: 'mph', oilPressure: 'psi', fuel: 'gal' } },
    });
    expect(text('limits.coolant.caution', imperial)).toBe('221 °F');
    // 95 kt is 109.32 mph: not to be passed
    expect(text('speeds.flapsExtended', imperial)).toBe('109 mph IAS');
    // 2.0 bar is 29.007 psi, 35 L is 9.246 gal: at least
    expect(text('limits.oil.pressureLow', imperial)).toBe('30 psi');
    expect(text('plan.turnBackFuel', imperial)).toBe('10 gal');
  });

  it('are missing, never invented', () => {
    expect(resolveReference('derived.speedCleared', ouzel)).toEqual({
      kind: 'missing',
      path: 'derived.speedCleared',
      meaning: 'highest speed accepted so far',
      text: '____ KIAS',
      symbol: 'KIAS',
    });
    expect(resolveReference('limits.coolant.caution', demo('wrenlet')).kind).toBe('missing');
    expect(resolveReference('no.such.number', ouzel).kind).toBe('missing');
  });

  it('are worked out as stated', () => {
    // 0.8 x 128 = 102.4; 0.8 x 3.8 = 3.04; 1.5 x 58 = 87; 52 + 5; 0.8 x 52 = 41.6; 1.3 x 58 = 75.4; 9.5 + 1
    expect(text('derived.acceleratedStallEntry')).toBe('102 KIAS');
    expect(text('derived.loadFactorCap')).toBe('3.0 g');
    expect(text('derived.firstFlightMaximum')).toBe('87 KIAS est.');
    expect(text('derived.firstSlow')).toBe('57 KIAS est.');
    expect(text('derived.taxiCap')).toBe('41 KIAS est.');
    expect(text('derived.gearFirstSpeed')).toBe('76 KIAS est.');
    expect(text('derived.engineControlFloor')).toBe('10.5 V');
    expect(text('derived.coolingClimbFast')).toBe('105 KIAS est.');
    expect(text('derived.liftOff')).toBe('64 KIAS est.');
    expect(text('derived.fiftyFoot')).toBe('70 KIAS est.');
    // 70 - 5, though 70 was entered
    expect(text('derived.approachMinus5')).toBe('65 KIAS est.');
    // the higher of 0 g, 0.3 g of the engine and -1.5 g of the structure
    expect(text('derived.lowLoadFactorFloor')).toBe('0.3 g');
  });

  it('hold the hot day of the rule agreed', () => {
    expect(text('derived.hotDay')).toBe('38 °C');
    expect(resolveReference('derived.hotDay', ouzel)).toMatchObject({ si: toSi(100, 'degF') });
    expect(resolveReference('derived.hotDay', demo('ouzel', { plan: { hotDay: 'cs22' } }))).toMatchObject({
      si: toSi(38, 'degC'),
    });
    const own = demo('ouzel', { plan: { hotDayAir: { value: 41, unit: 'degC' } } });
    expect(text('derived.hotDay', own)).toBe('41 °C');
  });

  it('take the approach from the stall once it is measured, calibrated until a table turns it', () => {
    expect(text('derived.approach')).toBe('70 KIAS est.');
    const stall = result('stall', {
      quantities: [
        { name: 'stall-speed', value: toSi(54, 'kt'), unit: 'm/s', u95: 0.5, parts: {}, conditions: {}, flags: [] },
      ],
    });
    const stalled: Known = { results: [{ kind: 'stall', test: 'stall-landing', result: stall }] };
    // 1.3 x 54 = 70.2, at least
    expect(text('derived.approach', ouzel, stalled)).toBe('71 KCAS');
    const table = result('airspeed', {
      tables: [
        {
          name: 'position-error',
          columns: [
            { name: 'indicated-airspeed', unit: 'm/s' },
            { name: 'calibrated-airspeed', unit: 'm/s' },
          ],
          rows: [
            [toSi(60, 'kt'), toSi(64, 'kt')],
            [toSi(80, 'kt'), toSi(82, 'kt')],
          ],
        },
      ],
    });
    const both: Known = { results: [...(stalled.results ?? []), { kind: 'airspeed', result: table }] };
    // 70.2 KCAS lies 6.2/18 of the way from 60 to 80 KIAS: 66.9
    expect(text('derived.approach', ouzel, both)).toBe('67 KIAS');
    expect(text('derived.approachMinus5', ouzel, both)).toBe('62 KIAS');
  });
});
