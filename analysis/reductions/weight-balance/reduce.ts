/** Weight and balance: the empty airplane, the load cases against the envelope, and the ballast wanted. */
import { shareOfChord } from '../../models/index.ts';
import type { Measured } from '../../numbers/index.ts';
import { type Flag, flag, OutOfRange, parsedBy, type Refusal, refusal } from '../../remarks/index.ts';
import { type Comparison, compareWithLimit, type Result, type ResultQuantity } from '../../results/index.ts';
import { type ReductionInput, refusedResult, resultShell } from '../reduction.ts';
import { ballastWanted, type LoadCase, loadCases, type WantedBallast } from './cases.ts';
import { type Empty, emptyAsStated, emptyFromWeighing } from './empty.ts';
import { type WantedPoint, type WeightOptions, type WeightPoint, weightOptions, weightPoints } from './input.ts';
import { weightBalanceNote } from './note.ts';
import { ballastTable, caseTable, itemTable, weighingTables } from './tables.ts';

/** kg, where the step of ballast on hand is not stated */
const USUAL_STEP = 0.5;

/**
 * Weight and balance from written figures and the description.
 * @param input points of the card, the airplane, options, object
 * @returns the result, or a refusal with its reason
 * @throws InputProblem when points or options do not fit their schema
 */
export function reduceWeightBalance(input: ReductionInput): Result {
  const points = parsedBy(weightPoints, input.points ?? { kind: 'weight-balance', points: [] }, 'bad-points').points;
  const options = parsedBy(weightOptions, input.options ?? {}, 'bad-request');
  try {
    const empty = emptyFromWeighing(points, options) ?? emptyAsStated(input.airplane);
    if (!empty)
      return refused(
        input,
        refusal('missing-configuration', 'There is neither a weighing nor a stated empty weight and arm.'),
      );
    return built(input, empty, points, options);
  } catch (error) {
    if (error instanceof OutOfRange) return refused(input, refusal('out-of-domain', `${error.message}.`));
    throw error;
  }
}

function built(input: ReductionInput, empty: Empty, points: readonly WeightPoint[], options: WeightOptions): Result {
  const { airplane } = input;
  const cases = loadCases(empty, points, airplane, options);
  const wanted = points
    .filter((point): point is WantedPoint => point.role === 'wanted')
    .map((point) => ballastWanted(point, cases, airplane, options.ballastStep?.si ?? USUAL_STEP));
  const mac = airplane?.loading.mac;
  const chord = mac ? { length: mac.length.si, leadingEdge: mac.leadingEdge.si } : null;
  return {
    ...resultShell('weight-balance', weightBalanceNote, input),
    status: 'reduced',
    segments: [],
    quantities: [
      quantity('empty-mass', 'kg', empty.mass, {}),
      quantity('empty-arm', 'm', empty.arm, { datum: airplane?.loading.datum ?? '' }),
      ...(chord ? [quantity('empty-chord-share', '1', asShare(empty.arm, chord), {})] : []),
    ],
    tables: [
      ...weighingTables(empty),
      caseTable(cases, chord),
      itemTable(cases),
      ...(wanted.length > 0 ? [ballastTable(wanted)] : []),
    ],
    comparisons: cases.flatMap((one) => comparisons(one, airplane?.limits.mass.maximum.si ?? null)),
    flags: [...empty.flags, ...caseFlags(cases, options), ...wantedFlags(wanted)],
    model: {
      empty: { mass: empty.mass.value, massU95: empty.mass.u95, arm: empty.arm.value, armU95: empty.arm.u95 },
      envelope: airplane?.loading.envelope.map((corner) => ({ mass: corner.mass.si, arm: corner.arm.si })) ?? [],
      stations: airplane?.loading.stations.map((one) => ({ name: one.name, arm: one.arm.si })) ?? [],
      fuelArm: fuelArmOf(airplane),
    },
  };
}

function quantity(
  name: string,
  unit: string,
  measured: Measured,
  conditions: ResultQuantity['conditions'],
): ResultQuantity {
  return { name, unit, value: measured.value, u95: measured.u95, parts: measured.parts, conditions, flags: [] };
}

function asShare(arm: Measured, chord: { length: number; leadingEdge: number }): Measured {
  const scaled = (part: number | undefined) => (part === undefined ? undefined : part / chord.length);
  const parts = Object.fromEntries(
    Object.entries(arm.parts).flatMap(([name, part]) => {
      const value = scaled(part);
      return value === undefined ? [] : [[name, value]];
    }),
  );
  return { value: shareOfChord(arm.value, chord), u95: arm.u95 / chord.length, parts };
}

function comparisons({ name, balance, margin }: LoadCase, maximum: number | null): Comparison[] {
  const mass =
    maximum === null
      ? []
      : [
          compareWithLimit({
            what: `${name}: mass`,
            value: balance.mass,
            u95: balance.massU95,
            limit: maximum,
            unit: 'kg',
          }),
        ];
  const limits = margin?.limits;
  if (!limits) return mass;
  const arm = { value: balance.arm, u95: balance.armU95, unit: 'm' };
  return [
    ...mass,
    compareWithLimit({ what: `${name}: forward limit`, ...arm, limit: limits.forward, side: 'lower' }),
    compareWithLimit({ what: `${name}: aft limit`, ...arm, limit: limits.aft }),
  ];
}

function caseFlags(cases: readonly LoadCase[], options: WeightOptions): Flag[] {
  const unknown = cases.flatMap((one) =>
    one.unknown.map((words) => flag('excluded', `${one.name}: ${words}; it was left out.`)),
  );
  const fuelled = cases.some((one) => one.items.some((item) => (item.massU95 ?? 0) > 0));
  const noEnvelope = cases.some((one) => one.margin === null);
  return [
    ...unknown,
    ...(fuelled && !options.fuelDensity
      ? [flag('assumed-value', 'Fuel taken at 6 lb per US gallon, sure to 2 %; enter its density.')]
      : []),
    ...(noEnvelope
      ? [flag('comparison-missing', 'The description has no CG envelope: nothing is compared with a limit.')]
      : []),
  ];
}

function wantedFlags(wanted: readonly WantedBallast[]): Flag[] {
  return wanted
    .filter((one) => one.ballast === null || one.margin?.inside === false)
    .map((one) => flag('not-resolved', `Ballast for ${one.name} at ${one.station}: ${one.reason}.`));
}

function fuelArmOf(airplane: ReductionInput['airplane']): number | null {
  const feeding = (airplane?.fuel.tanks ?? []).filter((tank) => tank.transfersTo === undefined);
  const volume = feeding.reduce((sum, tank) => sum + tank.capacity.si, 0);
  if (feeding.length === 0 || feeding.some((tank) => tank.arm === undefined)) return null;
  return feeding.reduce((sum, tank) => sum + tank.capacity.si * (tank.arm?.si ?? 0), 0) / volume;
}

function refused(input: ReductionInput, why: Refusal): Result {
  return refusedResult(resultShell('weight-balance', weightBalanceNote, input), why);
}
