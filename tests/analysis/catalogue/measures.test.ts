/** Units of measures follow the airplane's instruments, and a speed always says its scale. */
import { describe, expect, it } from 'vitest';
import { MEASURES, shows } from '../../../analysis/catalogue/index.ts';
import { isUnit } from '../../../analysis/units/index.ts';
import { demo } from '../demo-airplanes.ts';

describe('measures', () => {
  const ouzel = demo('ouzel');

  it('each have a unit of the list and a symbol', () => {
    for (const measure of MEASURES) {
      const show = shows(measure, ouzel);
      expect(isUnit(show.unit), measure).toBe(true);
      expect(show.symbol, measure).not.toBe('');
    }
  });

  it('say the scale of a speed', () => {
    expect(shows('kias', ouzel).symbol).toBe('KIAS');
    expect(shows('kias', ouzel, 'CAS').symbol).toBe('KCAS');
    expect(shows('ktas', ouzel).symbol).toBe('KTAS');
    const metric = demo('ouzel', { instruments: { units: { airspeed: 'km/h' } } });
    expect(shows('kias', metric).symbol).toBe('km/h IAS');
    expect(shows('slowing', metric).symbol).toBe('km/h/s');
  });

  it('turn small things to inches where arms are in inches', () => {
    expect(shows('small', ouzel).unit).toBe('mm');
    expect(shows('small', demo('ouzel', { instruments: { units: { arm: 'in' } } })).unit).toBe('in');
  });
});
