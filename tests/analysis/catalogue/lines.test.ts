/** Cards made ready for the two demo airplanes: nothing that is not fitted, numbers in their units, margins taken off. */
import { describe, expect, it } from 'vitest';
import {
  applicable,
  CATALOGUE,
  linesFor,
  missingFor,
  type PreparedTest,
  testOf,
} from '../../../analysis/catalogue/index.ts';
import { demo } from '../demo-airplanes.ts';

const ouzel = demo('ouzel');
const wrenlet = demo('wrenlet');

function cards(airplane: typeof ouzel): PreparedTest[] {
  return CATALOGUE.filter((test) => applicable(test, airplane).applies).map((test) => linesFor(test, airplane));
}

function card(id: string, airplane = ouzel): PreparedTest {
  const test = testOf(id);
  if (!test) throw new Error(`no test ${id}`);
  return linesFor(test, airplane);
}

function words(ready: PreparedTest): string[] {
  return [
    ready.title,
    ready.purpose,
    ...ready.conditions.map((one) => one.line.text),
    ...[...ready.setup, ...ready.steps, ...ready.after, ...ready.stop, ...ready.action].map((line) => line.text),
    ...ready.pass.map((one) => one.line.text),
    ...ready.hazards.flatMap((one) => [one.hazard.text, one.mitigation.text]),
    ...ready.readings.map((one) => `${one.what} ${one.unit} ${one.at}`),
    ...ready.channels,
  ];
}

describe('Wrenlet’s cards', () => {
  it('say nothing of what it does not have', () => {
    const unfitted =
      /retract|coolant|transfer|\blanes?\b|autopilot|exit door|cowl flap|ground fan|\bfan\b|hydraulic|\bflaps?\b|canopy|governor|jacks? test|backup supply|alternate static|pitot heat|trim runaway/i;
    const found = cards(wrenlet).flatMap((ready) =>
      words(ready)
        .filter((line) => unfitted.test(line))
        .map((line) => `${ready.id}: ${line}`),
    );
    expect(found).toEqual([]);
  });
});

describe('every card of both airplanes', () => {
  const all = [...cards(ouzel), ...cards(wrenlet)];

  it('has a step, a stop and a criterion, and no leftover marks', () => {
    for (const ready of all) {
      expect(ready.steps.length, ready.id).toBeGreaterThan(0);
      expect(ready.stop.length, ready.id).toBeGreaterThan(0);
      expect(ready.pass.length, ready.id).toBeGreaterThan(0);
      for (const line of words(ready))
        expect(line, ready.id).not.toMatch(/\{\{|\}\}|\[when|undefined|NaN|^\s*[,;]|[,;]\s*$|,\s*,| {2}/);
    }
  });

  it('has at most nine steps', () => {
    expect(all.filter((ready) => ready.steps.length > 9).map((ready) => ready.id)).toEqual([]);
  });

  it('says the reference of every height', () => {
    const bare = all.flatMap((ready) =>
      [...ready.steps, ...ready.stop, ...ready.setup]
        .filter((line) =>
          line.pieces.some(
            (one) => one.kind === 'figure' && one.symbol === 'ft' && /^(4|5|6|8|10)\d*000/.test(one.number),
          ),
        )
        .filter((line) => !/above|field elevation|pressure altitude|band/.test(line.text))
        .map((line) => line.text),
    );
    expect(bare).toEqual([]);
  });

  it('begins each step with a capital or a number and ends it with one full stop', () => {
    for (const line of all.flatMap((ready) => [...ready.setup, ...ready.steps, ...ready.after])) {
      expect(line.text).toMatch(/^[A-Z0-9+_]/);
      expect(line.text).not.toMatch(/\.\./);
    }
  });

  it('joins its pieces to its text', () => {
    for (const line of all.flatMap((ready) => [...ready.steps, ...ready.stop])) {
      expect(line.pieces.map((piece) => piece.text).join('')).toBe(line.text);
    }
  });
});

describe('numbers on cards', () => {
  it('stop at the limit less the margin agreed, on stop lines only', () => {
    const climb = card('cooling-climb-first');
    expect(climb.stop[0]?.text).toBe('coolant at 104 °C');
    const number = climb.stop[0]?.pieces.find((piece) => piece.kind === 'number');
    expect(number).toMatchObject({ path: 'limits.coolant.caution', number: '104', symbol: '°C' });
  });

  it('follow the airplane’s units: general figures two digits, heights up', () => {
    const metric = demo('ouzel', { instruments: { units: { altitude: 'm', airspeed: 'km/h', temperature: 'degF' } } });
    const ready = card('ground-cooling-door-map', metric);
    expect(ready.steps[0]?.text).toContain('under 1 °F/min');
    const first = card('first-flight', metric);
    // 500 ft is 152.4 m: not below
    expect(first.steps[1]?.text).toContain('no turn below 160 m above ground');
    expect(card('stall-clean', metric).steps[1]?.text).toBe(
      'Trim; idle; slow 1.9 km/h/s from 19 km/h above to first break or full aft stick.',
    );
  });

  it('list what is missing, the same way the program does', () => {
    for (const airplane of [ouzel, wrenlet, demo('ouzel', { limits: { oil: { caution: undefined } } })]) {
      for (const test of CATALOGUE) {
        if (!applicable(test, airplane).applies) continue;
        expect(missingFor(test, airplane), test.id).toEqual(linesFor(test, airplane).missing);
      }
    }
  });

  it('are not missing behind a line that is not printed', () => {
    expect(card('first-start', wrenlet).missing.map((one) => one.path)).not.toContain('limits.coolant.caution');
    expect(card('first-start', demo('ouzel', { limits: { coolant: { caution: undefined } } })).missing).toEqual([
      { path: 'limits.coolant.caution', meaning: 'coolant caution, out of the engine: every cooling card stops here' },
    ]);
  });
});

describe('readings', () => {
  it('carry the unit of the instrument with its scale', () => {
    const readings = card('airspeed-calibration-first').readings;
    expect(readings.map((one) => [one.what, one.unit])).toContainEqual(['airspeed', 'KIAS']);
    expect(readings.map((one) => [one.what, one.unit])).toContainEqual(['pressure altitude', 'ft']);
    expect(readings.map((one) => [one.what, one.unit])).toContainEqual(['fuel aboard', 'L']);
  });

  it('ask an air-cooled engine for its heads, a liquid-cooled one for its coolant', () => {
    expect(card('taxi-slow', wrenlet).readings.map((one) => one.what)).toContain('cylinder head');
    expect(card('taxi-slow', ouzel).readings.map((one) => one.what)).toContain('coolant out');
    expect(card('taxi-slow', ouzel).readings.map((one) => one.what)).not.toContain('cylinder head');
  });
});
