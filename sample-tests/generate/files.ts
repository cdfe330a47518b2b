/** Every file the generator writes, as text by its place under sample-tests/. Pure: the tests compare it with the disk. */
import { groundRun } from './ground-run.ts';
import { truthText, type Units } from './truth-text.ts';

const UNITS: Units = {
  fromSeconds: 's',
  toSeconds: 's',
  stoppedAtSeconds: 's',
  shutdownAtSeconds: 's',
  peakAfterShutdownSeconds: 's',
  timeToRestart: 's',
  timeConstant: 's',
  slowTimeConstant: 's',
  engineSpeed: '1/s',
  exit: '1',
  thermostatAtEnd: '1',
  airMean: 'K',
  equilibrium: 'K',
  equilibriumOverAir: 'dK',
  equilibriumThermostatOpen: 'K',
  oilEquilibrium: 'K',
  coolantAtEnd: 'K',
  coolantAtShutdown: 'K',
  peakAfterShutdown: 'K',
  coolant: 'dK',
  oil: 'dK',
  air: 'dK',
};

/** Path under sample-tests/ and text of each generated file. */
export function sampleFiles(): Map<string, string> {
  const files = new Map<string, string>();
  const first = groundRun({ story: 1 });
  const second = groundRun({ story: 2 });
  files.set('ouzel/logs/ground-run-1.csv', first.csv);
  files.set('ouzel/logs/ground-run-2.csv', second.csv);
  const ouzel = {
    about:
      'What lies behind each generated log of Ouzel. Invented; SI, each number with its unit; times from the first row of the log. Sensor offsets are reading less truth. No reduction reads this file.',
    logs: { 'ground-run-1.csv': first.truth, 'ground-run-2.csv': second.truth },
  };
  files.set('ouzel/truth.json', truthText(ouzel, UNITS));
  return files;
}
