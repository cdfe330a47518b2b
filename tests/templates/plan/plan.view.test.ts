import { describe, expect, it } from 'vitest';
import { type Airplane, crossCheck } from '../../../analysis/airplane/index.ts';
import { planProgram } from '../../../analysis/program/index.ts';
import { planDocument, planOf, planView } from '../../../templates/plan/plan.view.ts';
import { rangesInWords, withoutPaths } from '../../../templates/plan/plan-program.ts';
import { demo } from '../../analysis/demo-airplanes.ts';
import { compareKeys } from '../template-keys.ts';

const inputOf = (airplane: Airplane, more = {}) => ({
  airplane,
  program: planProgram(airplane),
  revision: 7,
  printed: '4 May 2031',
  ...more,
});

const AIRPLANES: [string, Airplane][] = [
  ['Ouzel', demo('ouzel')],
  ['Wrenlet', demo('wrenlet')],
];

describe.each(AIRPLANES)('the plan of %s', (_, airplane) => {
  const input = inputOf(airplane);
  const view = planOf(input);
  const { html } = planDocument(input, 'letter');
  const text = html
    .replace(/<style>.*?<\/style>/s, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

  it('names the airplane, its builder and pilot, its revision and its day', () => {
    for (const words of [airplane.name, airplane.registration, airplane.builder, 'revision 7', '4 May 2031']) {
      expect(text).toContain(words);
    }
    expect(html).toContain('page " counter(page) " of " counter(pages)');
  });

  it('quotes the operating limitations word for word', () => {
    expect(view.limitations.join('\n')).toBe(airplane.limits.operatingLimitations);
  });

  it('gives every limit a source and who entered it', () => {
    const limits = view.limits.groups.flatMap((group) => group.rows);
    expect(limits.length).toBeGreaterThan(8);
    for (const limit of limits) {
      expect(limit.source, limit.name).not.toBe('');
      expect(limit.enteredBy, limit.name).not.toBe('');
    }
  });

  it('holds every test of the program once, in its order, each with aim and reasons', () => {
    const tests = view.stages.flatMap((stage) => stage.tests);
    expect(tests.map((test) => test.position).sort((a, b) => a - b)).toEqual(input.program.order.map((_, i) => i + 1));
    for (const test of tests) {
      expect(test.aim).not.toBe('');
      expect(test.because).not.toBe('');
      expect(test.why).not.toBe('');
      expect(test.because).not.toMatch(/\([a-z]+\.[a-zA-Z.]+\)/);
    }
  });

  it('holds every flight with its fuel and its load, and every load stands in the table and the drawing', () => {
    const flights = input.program.outings.filter((one) => one.kind === 'flight');
    expect(view.flights.map((one) => one.flight)).toEqual(flights.map((one) => one.flight));
    const letters = new Set(view.loads.map((one) => one.letter));
    for (const flight of view.flights) {
      expect(letters.has(flight.load)).toBe(true);
      expect(flight.fuel).toMatch(/\d+ L, of it \d+ L burnt, \d+ L kept/);
      expect(flight.takeoff).toMatch(/\d ± .* kg, .* % MAC/);
    }
    const drawn = view.envelope?.points.flatMap((point) => point.label.split(' ').filter(Boolean)) ?? [];
    expect(drawn.sort()).toEqual([...letters].sort());
  });

  it('holds every gate with each test that shows its evidence', () => {
    expect(view.gates).toHaveLength(input.program.gates.length);
    for (const [i, gate] of input.program.gates.entries()) {
      const said = view.gates[i]?.evidence.map((one) => one.tests).join('; ') ?? '';
      for (const evidence of gate.evidence) expect(said).toContain(evidence.title);
    }
  });

  it('loses no condition and no stop criterion: each stands with its test or with those that share it', () => {
    const shared = [...view.stops, ...view.conditions];
    for (const one of shared) expect(one.tests).toMatch(/\d/);
    const flights = view.stages.flatMap((stage) => stage.tests).filter((test) => test.outing.startsWith('Flight'));
    expect(flights.length).toBeGreaterThan(30);
    const holds = (words: string, position: number) =>
      words
        .split(', ')
        .map((part) => part.split(' to ').map(Number))
        .some(([from = 0, to = from]) => position >= from && position <= to);
    for (const test of flights) {
      const stops = [...test.stops, ...view.stops.filter((one) => holds(one.tests, test.position))];
      expect(stops.length, test.title).toBeGreaterThan(0);
    }
  });

  it('says what was left out and why', () => {
    expect(view.notApplicable).toHaveLength(input.program.notApplicable.length);
    for (const one of view.notApplicable) expect(one.reason).not.toBe('');
  });

  it('defers, and never calls anything safe', () => {
    expect(text).toContain('no approval and no finding');
    expect(text).toContain('the local authority');
    expect(text).not.toMatch(/\bsafe(ly|ty)?\b/i);
  });

  it('needs nothing from outside and runs nothing', () => {
    expect(html).not.toMatch(/<script|https?:|src=/);
  });
});

describe('the plan', () => {
  it('prints exactly what its view has', () => {
    expect(compareKeys('plan/plan', planView)).toEqual({ unknown: [], unused: [] });
  });

  it('says plainly where operating limitations, envelope or figures are missing', () => {
    const bare = demo('ouzel', {
      limits: { operatingLimitations: '' },
      loading: { envelope: [], empty: undefined },
      plan: { turnBackFuel: undefined },
    });
    const { html } = planDocument(inputOf(bare), 'a4');
    expect(html).toContain('None entered.');
    expect(html).toContain('No envelope is described,');
    expect(planOf(inputOf(bare)).missing.length).toBeGreaterThan(0);
    expect(planOf(inputOf(bare)).loads.every((one) => one.inside === 'not worked out')).toBe(true);
  });

  it('says where each test stands once any is accepted', () => {
    const status = new Map([['open-inspection', 'accepted']]);
    const view = planOf(inputOf(demo('wrenlet'), { status }));
    expect(view.standing).toContain('1 of 104 tests');
    expect(view.stages[0]?.tests[0]?.standing).toBe('accepted');
  });

  it('takes a hostile name as a name, in text and in the margins', () => {
    const name = '"}</style><b>x';
    const airplane = { ...demo('wrenlet'), name };
    const { html } = planDocument(inputOf(airplane), 'a4');
    expect(html.match(/<\/style>/g)).toHaveLength(1);
    expect(html).not.toContain('<b>x');
  });

  it('says which figures of the description do not fit each other', () => {
    const airplane = demo('ouzel');
    const { doubts } = planOf(inputOf(airplane));
    expect(doubts).toEqual(crossCheck(airplane).map((one) => one.message));
    expect(doubts.join(' ')).toContain('The manoeuvring speed, 128 kt, is above');
    const settled = demo('ouzel', { speeds: { manoeuvring: undefined, neverExceed: undefined } });
    expect(planDocument(inputOf(settled), 'a4').html).not.toContain('do not fit each other');
  });
});

describe('runs of numbers', () => {
  it.each([
    [[], ''],
    [[3], '3'],
    [[4, 3], '3, 4'],
    [[1, 2, 3, 7, 9, 10, 11, 12, 12], '1 to 3, 7, 9 to 12'],
  ])('%o are %s', (numbers, words) => expect(rangesInWords(numbers)).toBe(words));
});

describe('a reason on paper', () => {
  it('loses the names of fields, nothing else', () => {
    expect(withoutPaths('It has a fan (cooling.groundFan), says (so) the builder.', ['cooling.groundFan'])).toBe(
      'It has a fan, says (so) the builder.',
    );
  });
});
