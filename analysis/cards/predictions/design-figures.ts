/**
 * Figures of the design beside the boxes that will measure them: estimates have no band, so nothing is held against
 * them; they are marked on the card and give way as soon as a result is accepted.
 */
import type { Airplane, Stated } from '../../airplane/index.ts';
import { siUnitOf, unitOf } from '../../units/index.ts';
import type { Card } from '../card.ts';
import type { CardPredictions, PredictedReading } from '../expectation.ts';

type Figure = (airplane: Airplane) => Stated | undefined;

/** Boxes by test and label, and the figure of the description that they measure. */
const FIGURES: readonly { tests: readonly string[]; what: RegExp; figure: Figure }[] = [
  {
    tests: ['stall-clean', 'stall-clean-gear-up'],
    what: /^lowest speed$/,
    figure: (airplane) => airplane.speeds.stallClean,
  },
  { tests: ['stall-landing'], what: /^lowest speed$/, figure: (airplane) => airplane.speeds.stallLanding },
  { tests: ['weight-expansion'], what: /^stall clean$/, figure: (airplane) => airplane.speeds.stallClean },
  { tests: ['weight-expansion'], what: /^stall landing$/, figure: (airplane) => airplane.speeds.stallLanding },
  { tests: ['takeoff-distance'], what: /^lift-off speed$/, figure: (airplane) => airplane.speeds.liftOff },
  {
    tests: ['gear-swing-normal', 'gear-first-retraction', 'gear-speed-limits', 'gear-cycles-flight'],
    what: /^(up time|time up)/,
    figure: (airplane) => airplane.gear.transitUp,
  },
  {
    tests: ['gear-swing-normal', 'gear-first-retraction', 'gear-speed-limits', 'gear-cycles-flight'],
    what: /^(down time|time down)/,
    figure: (airplane) => airplane.gear.transitDown,
  },
  {
    tests: ['gear-swing-normal', 'gear-first-retraction', 'gear-speed-limits', 'gear-cycles-flight'],
    what: /^peak pump current$/,
    figure: (airplane) => airplane.gear.currentPeak,
  },
];

/** Said on the card where a design figure stands on it. */
export const DESIGN_NOTE = 'est. is a design figure, not measured';

/**
 * Design figures of a card.
 * @param card without predictions, object
 * @param airplane the description, object
 * @returns readings without a band, or undefined where the card has none
 */
export function designFigures(card: Card, airplane: Airplane): CardPredictions | undefined {
  const figures = FIGURES.filter((one) => one.tests.includes(card.id));
  const columns = card.tables.flatMap((table) => table.columns.map((column) => ({ table: table.title, column })));
  const readings = columns.flatMap(({ table, column }): PredictedReading[] => {
    const found = figures.find((one) => one.what.test(column.label))?.figure(airplane);
    if (!found || found.status === 'measured') return [];
    return [
      {
        quantity: column.quantity,
        table,
        what: column.label,
        value: found.si,
        low: null,
        high: null,
        unit: siUnitOf(unitOf(found.unit).dimension).id,
        estimated: true,
        basis: found.source ?? 'the description',
      },
    ];
  });
  return readings.length === 0 ? undefined : { readings, note: DESIGN_NOTE };
}
