/** The questions a new book starts with, as data: what is asked, and what follows from each choice. */
import type { Option } from './schema-shape.ts';

export interface Question {
  title: string;
  /** fields of the description that are asked as they are */
  paths: readonly string[];
  /** a choice that several fields follow from */
  own?: { name: string; label: string; options: readonly (Option & { gives: Readonly<Record<string, unknown>> })[] };
}

export const QUESTIONS: readonly Question[] = [
  { title: '1. Which airplane is it, and whose?', paths: ['name', 'registration', 'builder', 'pilot'] },
  { title: '2. What cools its engine?', paths: ['cooling.kind'] },
  {
    title: '3. How is the engine fed and fired?',
    paths: [],
    own: {
      name: 'q.engine',
      label: 'Engine',
      options: [
        {
          value: 'carburettor',
          text: 'carburettor, magnetos',
          gives: { 'engine.carburettor': true, 'engine.mixtureControl': true },
        },
        { value: 'injection', text: 'fuel injection without electronics', gives: { 'engine.mixtureControl': true } },
        {
          value: 'electronic-1',
          text: 'electronic control, one lane',
          gives: { 'engine.electronicControl': true, 'engine.lanes': 1 },
        },
        {
          value: 'electronic-2',
          text: 'electronic control, two lanes',
          gives: { 'engine.electronicControl': true, 'engine.lanes': 2 },
        },
      ],
    },
  },
  { title: '4. What does it turn?', paths: ['propeller.kind'] },
  {
    title: '5. What does it stand on?',
    paths: [],
    own: {
      name: 'q.gear',
      label: 'Gear',
      options: [
        { value: 'fixed-nose', text: 'fixed, nose wheel', gives: { 'gear.layout': 'nose' } },
        { value: 'fixed-tail', text: 'fixed, tail wheel', gives: { 'gear.layout': 'tail' } },
        {
          value: 'retractable-nose',
          text: 'retractable, nose wheel',
          gives: { 'gear.layout': 'nose', 'gear.retractable': true },
        },
        {
          value: 'retractable-tail',
          text: 'retractable, tail wheel',
          gives: { 'gear.layout': 'tail', 'gear.retractable': true },
        },
      ],
    },
  },
  {
    title: '6. Has it flaps?',
    paths: [],
    own: {
      name: 'q.flaps',
      label: 'Flaps',
      options: [
        { value: 'none', text: 'none', gives: {} },
        ...(['manual', 'electric', 'hydraulic'] as const).map((power) => ({
          value: power,
          text: `moved ${{ manual: 'by hand', electric: 'electrically', hydraulic: 'hydraulically' }[power]}`,
          gives: { flaps: { settings: ['up', 'take-off', 'landing'], power } },
        })),
      ],
    },
  },
  {
    title: '7. How many tanks feed the engine, and what does each hold?',
    paths: ['fuel.tanks.0.capacity'],
    own: {
      name: 'q.tanks',
      label: 'Tanks that feed it',
      options: [1, 2, 3, 4].map((tanks) => ({ value: String(tanks), text: String(tanks), gives: {} })),
    },
  },
  {
    title: '8. What may it weigh at most, and at what speed do you expect it to stall, ready to land?',
    paths: ['limits.mass.maximum', 'speeds.stallLanding'],
  },
  {
    title: '9. Where is it flown from?',
    paths: ['place.name', 'place.elevation', 'place.runways.0.name', 'place.runways.0.length', 'place.utcOffset'],
  },
  {
    title: '10. How many hours are assigned, and what do its instruments read in?',
    paths: ['plan.program.hours'],
    own: {
      name: 'q.units',
      label: 'Instruments',
      options: [
        { value: 'knots', text: 'knots, feet, °C, kg, litres', gives: unitsOf('kt', 'ft', 'degC', 'kg', 'L', 'L/h') },
        {
          value: 'knots-pounds',
          text: 'knots, feet, °F, lb, US gallons',
          gives: unitsOf('kt', 'ft', 'degF', 'lb', 'gal', 'gal/h'),
        },
        {
          value: 'miles',
          text: 'mph, feet, °F, lb, US gallons',
          gives: unitsOf('mph', 'ft', 'degF', 'lb', 'gal', 'gal/h'),
        },
        {
          value: 'metric',
          text: 'km/h, metres, °C, kg, litres',
          gives: unitsOf('km/h', 'm', 'degC', 'kg', 'L', 'L/h'),
        },
      ],
    },
  },
];

export const COPY_QUESTIONS: readonly Question[] = [
  { title: 'Which airplane is it, and whose?', paths: ['name', 'registration', 'builder', 'pilot'] },
  { title: 'What may it weigh at most?', paths: ['limits.mass.maximum'] },
  {
    title: 'Where is it flown from?',
    paths: ['place.name', 'place.elevation', 'place.runways.0.name', 'place.runways.0.length', 'place.utcOffset'],
  },
  { title: 'How many hours are assigned?', paths: ['plan.program.hours'] },
];

function unitsOf(
  airspeed: string,
  altitude: string,
  temperature: string,
  mass: string,
  fuel: string,
  fuelFlow: string,
) {
  const arm = mass === 'lb' ? 'in' : 'm';
  const distance = mass === 'lb' ? 'ft' : 'm';
  return { 'instruments.units': { airspeed, altitude, temperature, mass, fuel, fuelFlow, arm, distance } };
}
