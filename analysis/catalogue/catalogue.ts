/** The whole catalogue: every test, checked once when it is first loaded. */
import type { Airplane } from '../airplane/index.ts';
import { InputProblem, problem } from '../remarks/index.ts';
import { factsFor, judge } from './condition-words.ts';
import { CABIN as ENGINE_GROUND_CABIN } from './stages/engine-ground/cabin.ts';
import { COOLING as ENGINE_GROUND_COOLING } from './stages/engine-ground/cooling.ts';
import { HEAT as ENGINE_GROUND_HEAT } from './stages/engine-ground/heat.ts';
import { POWER as ENGINE_GROUND_POWER } from './stages/engine-ground/power.ts';
import { RUNNING as ENGINE_GROUND_RUNNING } from './stages/engine-ground/running.ts';
import { SYSTEMS as ENGINE_GROUND_SYSTEMS } from './stages/engine-ground/systems.ts';
import { AIR_DATA as ENVELOPE_AIR_DATA } from './stages/envelope/air-data.ts';
import { CABIN as ENVELOPE_CABIN } from './stages/envelope/cabin.ts';
import { ENGINE as ENVELOPE_ENGINE } from './stages/envelope/engine.ts';
import { EXPANSION as ENVELOPE_EXPANSION } from './stages/envelope/expansion.ts';
import { GEAR_AND_FLAPS as ENVELOPE_GEAR_AND_FLAPS } from './stages/envelope/gear-and-flaps.ts';
import { LOAD_FACTOR as ENVELOPE_LOAD_FACTOR } from './stages/envelope/load-factor.ts';
import { LOW_SPEED as ENVELOPE_LOW_SPEED } from './stages/envelope/low-speed.ts';
import { STALLS as ENVELOPE_STALLS } from './stages/envelope/stalls.ts';
import { TURNING_STALLS as ENVELOPE_TURNING_STALLS } from './stages/envelope/turning-stalls.ts';
import { FIRST as FIRST_FLIGHT_FIRST } from './stages/first-flight/first.ts';
import { NEXT as FIRST_FLIGHT_NEXT } from './stages/first-flight/next.ts';
import { AEROBATIC_TESTS as HANDLING_AEROBATIC_TESTS } from './stages/handling/aerobatics.ts';
import { CORNERS as HANDLING_CORNERS } from './stages/handling/corners.ts';
import { FORCES as HANDLING_FORCES } from './stages/handling/forces.ts';
import { STABILITY as HANDLING_STABILITY } from './stages/handling/stability.ts';
import { CLIMB_AND_GLIDE as PERFORMANCE_CLIMB_AND_GLIDE } from './stages/performance/climb-and-glide.ts';
import { CRUISE as PERFORMANCE_CRUISE } from './stages/performance/cruise.ts';
import { FIELD as PERFORMANCE_FIELD } from './stages/performance/field.ts';
import { AVIONICS as SHOP_AVIONICS } from './stages/shop/avionics.ts';
import { BATTERIES as SHOP_BATTERIES } from './stages/shop/batteries.ts';
import { CONTROLS as SHOP_CONTROLS } from './stages/shop/controls.ts';
import { COOLING as SHOP_COOLING } from './stages/shop/cooling.ts';
import { ELECTRICAL as SHOP_ELECTRICAL } from './stages/shop/electrical.ts';
import { ENGINE as SHOP_ENGINE } from './stages/shop/engine.ts';
import { FUEL as SHOP_FUEL } from './stages/shop/fuel.ts';
import { FUEL_DELIVERY as SHOP_FUEL_DELIVERY } from './stages/shop/fuel-delivery.ts';
import { GEAR as SHOP_GEAR } from './stages/shop/gear.ts';
import { GEAR_SWINGS as SHOP_GEAR_SWINGS } from './stages/shop/gear-swings.ts';
import { INSPECTION as SHOP_INSPECTION } from './stages/shop/inspection.ts';
import { INSTRUMENTS as SHOP_INSTRUMENTS } from './stages/shop/instruments.ts';
import { PEOPLE as SHOP_PEOPLE } from './stages/shop/people.ts';
import { WEIGHT as SHOP_WEIGHT } from './stages/shop/weight.ts';
import { AFTER as SIGN_OFF_AFTER } from './stages/sign-off/after.ts';
import { CLOSE as SIGN_OFF_CLOSE } from './stages/sign-off/close.ts';
import { RESULTS as SIGN_OFF_RESULTS } from './stages/sign-off/results.ts';
import { AIR_DATA as SYSTEMS_FLIGHT_AIR_DATA } from './stages/systems-flight/air-data.ts';
import { AVIONICS as SYSTEMS_FLIGHT_AVIONICS } from './stages/systems-flight/avionics.ts';
import { COOLING as SYSTEMS_FLIGHT_COOLING } from './stages/systems-flight/cooling.ts';
import { ELECTRICAL as SYSTEMS_FLIGHT_ELECTRICAL } from './stages/systems-flight/electrical.ts';
import { FUEL as SYSTEMS_FLIGHT_FUEL } from './stages/systems-flight/fuel.ts';
import { GEAR_AND_TRIM as SYSTEMS_FLIGHT_GEAR_AND_TRIM } from './stages/systems-flight/gear-and-trim.ts';
import { SURVEY as SYSTEMS_FLIGHT_SURVEY } from './stages/systems-flight/survey.ts';
import { FAST as TAXI_FAST } from './stages/taxi/fast.ts';
import { SLOW as TAXI_SLOW } from './stages/taxi/slow.ts';
import { type CatalogueTest, type TestData, testSchema } from './test.ts';

const DATA = [
  ...SHOP_INSPECTION,
  ...SHOP_PEOPLE,
  ...SHOP_CONTROLS,
  ...SHOP_ELECTRICAL,
  ...SHOP_BATTERIES,
  ...SHOP_INSTRUMENTS,
  ...SHOP_AVIONICS,
  ...SHOP_FUEL,
  ...SHOP_FUEL_DELIVERY,
  ...SHOP_GEAR,
  ...SHOP_GEAR_SWINGS,
  ...SHOP_COOLING,
  ...SHOP_ENGINE,
  ...SHOP_WEIGHT,
  ...ENGINE_GROUND_RUNNING,
  ...ENGINE_GROUND_POWER,
  ...ENGINE_GROUND_COOLING,
  ...ENGINE_GROUND_HEAT,
  ...ENGINE_GROUND_SYSTEMS,
  ...ENGINE_GROUND_CABIN,
  ...TAXI_SLOW,
  ...TAXI_FAST,
  ...FIRST_FLIGHT_FIRST,
  ...FIRST_FLIGHT_NEXT,
  ...ENVELOPE_AIR_DATA,
  ...ENVELOPE_LOW_SPEED,
  ...ENVELOPE_STALLS,
  ...ENVELOPE_TURNING_STALLS,
  ...ENVELOPE_GEAR_AND_FLAPS,
  ...ENVELOPE_ENGINE,
  ...ENVELOPE_CABIN,
  ...ENVELOPE_LOAD_FACTOR,
  ...ENVELOPE_EXPANSION,
  ...SYSTEMS_FLIGHT_COOLING,
  ...SYSTEMS_FLIGHT_FUEL,
  ...SYSTEMS_FLIGHT_ELECTRICAL,
  ...SYSTEMS_FLIGHT_GEAR_AND_TRIM,
  ...SYSTEMS_FLIGHT_AVIONICS,
  ...SYSTEMS_FLIGHT_AIR_DATA,
  ...SYSTEMS_FLIGHT_SURVEY,
  ...PERFORMANCE_CLIMB_AND_GLIDE,
  ...PERFORMANCE_CRUISE,
  ...PERFORMANCE_FIELD,
  ...HANDLING_STABILITY,
  ...HANDLING_FORCES,
  ...HANDLING_CORNERS,
  ...HANDLING_AEROBATIC_TESTS,
  ...SIGN_OFF_RESULTS,
  ...SIGN_OFF_CLOSE,
  ...SIGN_OFF_AFTER,
] satisfies readonly TestData[];

/** All tests, stage by stage, each with its defaults filled in. */
export const CATALOGUE: readonly CatalogueTest[] = DATA.map(checked);

const BY_ID = new Map(CATALOGUE.map((test) => [test.id, test]));

/**
 * A test of the catalogue.
 * @param id its id, text
 * @returns the test, or undefined
 */
export function testOf(id: string): CatalogueTest | undefined {
  return BY_ID.get(id);
}

export interface Applicability {
  applies: boolean;
  /** one sentence, with the configuration path that decides */
  because: string;
  /** configuration paths that decide; none for a test every airplane needs */
  paths: string[];
}

/**
 * Whether a test belongs in an airplane's program, and why.
 * @param test the test, object
 * @param airplane the description, object
 * @returns the answer with its reason
 */
export function applicable(test: CatalogueTest, airplane: Airplane): Applicability {
  if (test.applies === undefined) return { applies: true, because: 'Every airplane needs it.', paths: [] };
  const { holds, words, paths } = judge(test.applies, factsFor(airplane));
  const because = holds
    ? `It is in because the airplane ${words}.`
    : `It does not apply because the airplane ${words}.`;
  return { applies: holds, because, paths };
}

function checked(data: TestData): CatalogueTest {
  const read = testSchema.safeParse(data);
  if (read.success) return read.data;
  throw new InputProblem(
    read.error.issues.map((issue) =>
      problem('bad-catalogue', `${data.id}: ${issue.path.map(String).join('.')}: ${issue.message}`, {
        field: issue.path.map(String).join('.'),
      }),
    ),
  );
}
