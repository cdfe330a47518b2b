/** Cards to measure: both demo airplanes as they are, and one that has everything, under the longest names allowed. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Airplane, airplaneSchema, readAirplane } from '../../analysis/airplane/index.ts';
import { type Card, fillCard } from '../../analysis/cards/index.ts';
import { applicable, CATALOGUE, type CatalogueTest } from '../../analysis/catalogue/index.ts';

const SAMPLES = join(import.meta.dirname, '..', '..', 'sample-tests');

export function demoAirplane(name: 'ouzel' | 'wrenlet'): Airplane {
  const { airplane, problems } = readAirplane(JSON.parse(readFileSync(join(SAMPLES, name, 'airplane.json'), 'utf8')));
  if (!airplane) throw new Error(problems.map((one) => one.message).join('\n'));
  return airplane;
}

/** Every system there is, and names as long as the schema lets them be. */
export function longestAirplane(): Airplane {
  const ouzel = demoAirplane('ouzel');
  return {
    ...ouzel,
    name: 'Corbeau-Lindqvist Two-Seat Tourer Mk III',
    registration: '0X-WWWWWWMMM',
    cooling: { ...ouzel.cooling, cowlFlap: true },
    fuel: {
      ...ouzel.fuel,
      tanks: ouzel.fuel.tanks.map((tank, i) => ({ ...tank, name: `auxiliary wing-tip tank ${i + 1}` })),
    },
    avionics: { ...ouzel.avionics, transponder: 'diversity', radios: 4 },
    cabin: { ...ouzel.cabin, smoke: true },
    plan: { ...ouzel.plan, spins: true, aerobatics: true, night: true, ifr: true },
    // a ceiling with five digits, and Fahrenheit, psi, gallons, pounds: the wide units
    instruments: {
      ...ouzel.instruments,
      units: airplaneSchema.shape.instruments.parse({
        units: {
          airspeed: 'mph',
          temperature: 'degF',
          oilPressure: 'psi',
          fuelPressure: 'psi',
          fuelFlow: 'gal/h',
          fuel: 'gal',
          mass: 'lb',
          distance: 'ft',
          arm: 'in',
          force: 'lbf',
        },
      }).units,
    },
  };
}

/** Cards of an airplane; with `all`, of every test of the catalogue whether it applies or not. */
export function cardsFor(airplane: Airplane, all = false): Card[] {
  const tests = CATALOGUE.filter((test) => all || applicable(test, airplane).applies);
  return tests.map((test, i) => cardFor(test, airplane, i + 1, tests.length));
}

export function cardFor(test: CatalogueTest, airplane: Airplane, number = 1, of = 1): Card {
  return fillCard({
    test,
    airplane,
    place: {
      outing: `Flight ${Math.ceil(number / 4)}`,
      place: `Flight ${Math.ceil(number / 4)}, card ${number} of ${of}`,
      revision: 'rev 7',
      printed: '4 May 2031',
    },
  });
}
