/** What was assumed of the sensors a peak was read by, and how each peak stands to what was before it. */
import { type Airplane, accuracyOf } from '../../airplane/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import { baseName } from '../../units/index.ts';
import { type Answer, nameOf, spanOf } from './answer.ts';

/**
 * Remarks on sensors and starts.
 * @param answers of all climbs, list
 * @param airplane the description, or undefined
 * @returns flags: accuracy or lag assumed, highest at the start, air warmer at the radiator than outside
 */
export function sensorRemarks(answers: readonly Answer[], airplane: Airplane | undefined): Flag[] {
  const bases = [...new Set(answers.map((one) => baseName(one.course.quantity)))];
  const accuracies = bases.flatMap((base) => {
    const accuracy = accuracyOf(airplane, base);
    return accuracy.assumed ? [flag('assumed-calibration', `${base.replaceAll('-', ' ')}: ${accuracy.basis}`)] : [];
  });
  const lags = [...new Set(answers.map((one) => one.lag))];
  const measured = airplane?.cooling.sensorLag?.si;
  const lagWords = lags.filter((lag) => lag !== measured);
  const starts = answers.flatMap((one) =>
    one.peak.atStart && one.reading
      ? [
          flag(
            'not-stabilised',
            `${nameOf(one)}: highest at the start of the climb, so it belongs to what was flown before it`,
            spanOf(one),
          ),
        ]
      : [],
  );
  return [
    ...starts,
    ...accuracies,
    ...(lagWords.length > 0
      ? [
          flag(
            'lag-assumed',
            `sensor lag taken as ${lagWords.map((lag) => `${lag.toFixed(0)} s`).join(', ')} where it was not measured (common practice, no source): it takes a little off a sharp top, which is in the uncertainty; the air probe’s as anything up to 20 s`,
          ),
        ]
      : []),
  ];
}
