import { describe, expect, it } from 'vitest';
import { regimesIn } from '../../../../analysis/reductions/cooling-ground/regime.ts';
import { type Hold, holdsOf } from '../../../../analysis/reductions/cooling-ground/settings.ts';
import type { HotTrace, Trace } from '../../../../analysis/reductions/cooling-ground/trace.ts';
import { toSi } from '../../../../analysis/units/index.ts';

const C = (degrees: number) => toSi(degrees, 'degC');
const rpm = (n: number) => toSi(n, 'rpm');

type Piece<T> = [value: T, seconds: number];
const course = (pieces: Piece<number>[]) =>
  Float64Array.from(pieces.flatMap(([value, seconds]) => new Array<number>(seconds).fill(value)));

function traceWith(parts: {
  speed: Float64Array;
  door?: Float64Array;
  fan?: Float64Array;
  manifold?: Float64Array;
}): Trace {
  const n = parts.speed.length;
  return {
    file: 'a.csv',
    grid: { start: 0, dt: 1, n },
    main: [],
    oil: null,
    air: null,
    outside: null,
    speed: parts.speed,
    door: parts.door ?? null,
    fan: parts.fan ?? null,
    manifold: parts.manifold ?? null,
    height: null,
  };
}

const spans = (holds: Hold[]) => holds.map(({ from, to }) => [from, to]);

describe('holds', () => {
  it('end where speed, fan or door changed, and say how each was set', () => {
    const holds = holdsOf(
      traceWith({
        speed: course([
          [rpm(2500), 600],
          [rpm(3000), 200],
        ]), // prettier-ignore
        fan: course([
          [0, 200],
          [1, 600],
        ]), // prettier-ignore
        door: course([
          [1, 400],
          [0.5, 400],
        ]), // prettier-ignore
      }),
    );
    expect(spans(holds)).toEqual([
      [0, 199],
      [200, 399],
      [400, 599],
      [600, 799],
    ]);
    expect(holds.map(({ fan, exit }) => [fan, exit])).toEqual([
      [false, 1],
      [true, 1],
      [true, 0.5],
      [true, 0.5],
    ]);
    expect(holds.map(({ changedAt }) => changedAt)).toEqual([null, 200, 400, 600]);
  });

  it('know nothing of what was not logged', () => {
    const [hold] = holdsOf(traceWith({ speed: course([[rpm(2500), 300]]) })); // prettier-ignore
    expect(hold).toMatchObject({ exit: null, fan: null, manifold: null, doorMoving: false, changedAt: null });
  });

  it('call a door that never rests moving, and leave short moves out', () => {
    const sweep = Float64Array.from({ length: 400 }, (_, i) => 0.5 + 0.3 * Math.sin(i / 25));
    const moving = holdsOf(traceWith({ speed: course([[rpm(2500), 400]]), door: sweep })); // prettier-ignore
    expect(moving.some((hold) => hold.doorMoving && hold.to - hold.from > 100)).toBe(true);
    const moved = Float64Array.from({ length: 400 }, (_, i) => (i < 200 ? 1 : Math.max(0.3, 1 - (i - 200) / 14)));
    const holds = holdsOf(traceWith({ speed: course([[rpm(2500), 400]]), door: moved })); // prettier-ignore
    expect(holds.map((hold) => [hold.doorMoving, hold.exit?.toFixed(1)])).toEqual([
      [false, '1.0'],
      [false, '0.3'],
    ]);
  });

  it('cut by manifold pressure where a governor holds the speed', () => {
    const holds = holdsOf(
      traceWith({
        speed: course([[rpm(4000), 600]]), // prettier-ignore
        manifold: course([
          [60_000, 300],
          [80_000, 300],
        ]), // prettier-ignore
      }),
    );
    expect(spans(holds)).toEqual([
      [0, 299],
      [300, 599],
    ]);
  });

  it('take an engine under 300 rpm as stopped, and look at no door then', () => {
    const [hold] = holdsOf(
      traceWith({
        speed: course([[rpm(40), 200]]),
        door: course([
          [1, 100],
          [0, 100],
        ]),
      }),
    ); // prettier-ignore
    expect(hold).toMatchObject({ from: 0, to: 199, engineSpeed: 0 });
  });
});

describe('regimes', () => {
  const trace = traceWith({ speed: new Float64Array(600) });
  const hold = (more: Partial<Hold> = {}): Hold => ({
    from: 0,
    to: 599,
    engineSpeed: rpm(2500),
    exit: 1,
    fan: false,
    manifold: null,
    doorMoving: false,
    changedAt: null,
    ...more,
  });
  const hot = (values: Float64Array): HotTrace => ({
    quantity: 'coolant-temperature',
    part: 'coolant',
    series: { quantity: '', file: '', column: '', t: values, v: values, holdSeconds: 0, flags: [] },
    values,
    steady: values,
    step: 0.5,
    perSample: 1,
    broken: [],
  });
  const thermostat = { start: C(80), open: C(92), startAssumed: false };
  const heating = hot(Float64Array.from({ length: 600 }, (_, i) => C(60 + i / 10)));

  it('warm below the start, are regulated up to 2 K over fully open for 30 s, then open', () => {
    const found = regimesIn(trace, heating, hold(), thermostat);
    expect(found.map(({ regime }) => regime)).toEqual(['warming', 'regulated', 'fully-open']);
    // 80 at 200 s; 94 at 340 s, and half a minute of it
    expect(found.map(({ from }) => from)).toEqual([0, 200, 371]);
  });

  it('stay open down to 1 K over fully open when it falls', () => {
    const falling = hot(Float64Array.from({ length: 600 }, (_, i) => C(100 - i / 50)));
    const found = regimesIn(trace, falling, hold(), thermostat);
    expect(found.map(({ regime }) => regime)).toEqual(['regulated', 'fully-open', 'regulated']);
    expect(found[1]?.from).toBe(30); // nothing says how hot it was before the record began
    expect(Math.abs((found[2]?.from ?? 0) - 350)).toBeLessThan(2);
    const later = regimesIn(trace, falling, hold({ from: 100 }), thermostat);
    expect(later.map(({ regime }) => regime)).toEqual(['fully-open', 'regulated']);
  });

  it('are regulated throughout where it opens and closes again', () => {
    const cycling = hot(Float64Array.from({ length: 600 }, (_, i) => C(91 + 5 * Math.sin(i / 30))));
    expect(regimesIn(trace, cycling, hold(), thermostat)).toEqual([{ from: 0, to: 599, regime: 'regulated' }]);
  });

  it('are one thing where nothing regulates, where nothing is known, where the engine stands, where the door moves', () => {
    expect(regimesIn(trace, heating, hold(), 'none')[0]?.regime).toBe('fully-open');
    expect(regimesIn(trace, heating, hold(), null)[0]?.regime).toBe('unknown');
    expect(regimesIn(trace, heating, hold({ engineSpeed: 0 }), 'none')[0]?.regime).toBe('cooling');
    expect(regimesIn(trace, heating, hold({ doorMoving: true }), 'none')[0]?.regime).toBe('regulated');
  });
});
