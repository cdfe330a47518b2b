/**
 * What the readings of a card are expected to be: from the accepted results by each reduction's own prediction, else from
 * the figures of the design, marked as such. What a reduction refuses to predict is said with its reason.
 */
import type { Airplane } from '../../airplane/index.ts';
import type { AcceptedResult, CatalogueTest } from '../../catalogue/index.ts';
import { type Reduction, reductionOf } from '../../reductions/index.ts';
import type { Result } from '../../results/index.ts';
import type { Card } from '../card.ts';
import type { CardPredictions } from '../expectation.ts';
import { predictAirspeedCard } from './airspeed.ts';
import { predictClimbCard } from './climb.ts';
import { predictCoolingClimbCard } from './cooling-climb.ts';
import { designFigures } from './design-figures.ts';
import { predictGroundRun } from './ground-run.ts';

/** What one reduction says of a card. */
export type CardPredictor = (
  ask: (conditions: unknown) => ReturnType<NonNullable<Reduction['predict']>>,
  about: { card: Card; airplane: Airplane; result: Result; name: string },
) => CardPredictions;

const PREDICTORS: Readonly<Record<string, CardPredictor>> = {
  airspeed: predictAirspeedCard,
  climb: predictClimbCard,
  'cooling-climb': predictCoolingClimbCard,
  'cooling-ground': predictGroundRun,
};

/**
 * The predictions of a test's card.
 * @param test the test of the catalogue, object
 * @param card its card without predictions, object
 * @param airplane the description, object
 * @param results accepted results, oldest first, list
 * @returns predictions, or undefined where nothing is known of any reading: a first measurement
 */
export function predictionsFor(
  test: CatalogueTest,
  card: Card,
  airplane: Airplane,
  results: readonly AcceptedResult[],
): CardPredictions | undefined {
  const measured = test.reductions.flatMap((kind) => {
    const newest = results.filter((one) => one.kind === kind && one.result.status === 'reduced').at(-1);
    const predict = reductionOf(kind)?.predict;
    const predictor = PREDICTORS[kind];
    if (!newest || !predict || !predictor) return [];
    const { result, name = 'accepted result' } = newest;
    return [predictor((conditions) => predict(result, conditions), { card, airplane, result, name })];
  });
  const design = designFigures(card, airplane);
  const all = [...measured, ...(design ? [design] : [])];
  if (all.length === 0) return undefined;
  return {
    readings: all.flatMap((one) => one.readings),
    note: all.flatMap((one) => (one.readings.length > 0 ? [one.note] : [])).join('; '),
    lines: all.flatMap((one) => one.lines ?? []),
    refusals: all.flatMap((one) => one.refusals ?? []),
    ahead: all.flatMap((one) => one.ahead ?? []),
  };
}
