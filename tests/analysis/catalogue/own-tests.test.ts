/** A person's own tests: taken in when sound, refused with the chain shown when not. */
import { describe, expect, it } from 'vitest';
import { readOwnTests } from '../../../analysis/catalogue/index.ts';

const own = (more: Record<string, unknown> = {}) => ({
  id: 'own-pump-noise',
  title: 'Pump noise',
  stage: 'systems-flight',
  system: 'gear',
  purpose: 'Know the sound of a healthy pump.',
  needs: ['gear-first-retraction'],
  steps: ['Overhead: listen to one cycle at {{kias speeds.gearOperation}} or slower.'],
  readings: [{ what: 'sound level', unit: 'dBA', at: 'each' }],
  pass: [{ text: 'Same sound each time', source: { says: 'own choice', mark: 'practice' } }],
  stop: ['any new sound'],
  flightMinutes: 10,
  blocks: 'once',
  ...more,
});

describe('own tests', () => {
  it('are read with the defaults of the catalogue', () => {
    const { tests, problems } = readOwnTests([own()]);
    expect(problems).toEqual([]);
    expect(tests[0]).toMatchObject({ id: 'own-pump-noise', produces: [], planning: { load: 'any', parts: 1 } });
  });

  it('name the field that does not fit', () => {
    const { tests, problems } = readOwnTests([own({ stage: 'later' }), own({ id: 'Bad Name' })]);
    expect(tests).toEqual([]);
    expect(problems.map((one) => [one.code, one.where.field])).toEqual([
      ['bad-catalogue', '0.stage'],
      ['bad-catalogue', '1.id'],
    ]);
    expect(readOwnTests('nonsense').problems[0]?.code).toBe('bad-catalogue');
  });

  it('may not take a name of the catalogue', () => {
    expect(readOwnTests([own({ id: 'first-flight' })]).problems[0]?.message).toContain(
      'the name first-flight is taken',
    );
  });

  it('may not need what is no test, use what nothing makes, or name a number that is not in the list', () => {
    expect(readOwnTests([own({ needs: ['no-such-test'] })]).problems[0]).toMatchObject({ code: 'bad-order' });
    const missing = readOwnTests([own({ consumes: ['moon phase'] })]).problems[0];
    expect(missing).toMatchObject({ code: 'bad-order' });
    expect(missing?.message).toContain('own-pump-noise ← moon phase ← nothing');
    const number = readOwnTests([own({ steps: ['Fly at {{kias speeds.warp}}.'] })]).problems[0];
    expect(number?.message).toContain('speeds.warp');
  });

  it('are refused with the chain shown where they go in a circle', () => {
    const one = own({ id: 'own-a', needs: ['own-b'], produces: ['a record'] });
    const other = own({ id: 'own-b', needs: [], consumes: ['c record'] });
    const third = own({ id: 'own-c', needs: ['own-a'], produces: ['c record'] });
    const { tests, problems } = readOwnTests([one, other, third]);
    expect(tests).toEqual([]);
    expect(problems).toHaveLength(1);
    expect(problems[0]?.code).toBe('bad-order');
    expect(problems[0]?.message).toContain('own-a ← own-b ← own-c ← own-a');
  });

  it('are refused where they wait for a later stage', () => {
    const { problems } = readOwnTests([own({ stage: 'taxi' })]);
    expect(problems[0]?.message).toContain('own-pump-noise (taxi) ← gear-first-retraction (envelope)');
  });
});
