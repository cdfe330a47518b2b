/** Every file the generator writes, as text by its place under sample-tests/. Pure: the tests compare it with the disk. */
import { airspeedFlight } from './airspeed-flight.ts';
import { climbFlight } from './climb-flight.ts';
import { cruiseCoolingFlight } from './cruise-cooling-flight.ts';
import { firstFlight } from './first-flight.ts';
import { fuelTransfer } from './fuel-transfer.ts';
import { gearSwings } from './gear-swings.ts';
import { groundRun } from './ground-run.ts';
import { stallSeries } from './stall-series.ts';
import { taxiCut } from './taxi-cut.ts';
import { truthText } from './truth-text.ts';
import { TRUTH_UNITS } from './truth-units.ts';
import { wrenletAirspeed, wrenletClimb } from './wrenlet.ts';
import { wrenletGroundRun } from './wrenlet-ground-run.ts';

/** Path under sample-tests/ and text of each generated file. */
export function sampleFiles(): Map<string, string> {
  const files = new Map<string, string>();
  const logs: Record<string, unknown> = {};
  const add = (names: Record<string, string>, truth: unknown) => {
    for (const [name, text] of Object.entries(names)) files.set(`ouzel/logs/${name}.csv`, text);
    logs[Object.keys(names).join(' + ')] = truth;
  };

  const first = groundRun({ story: 1 });
  add({ 'ground-run-1': first.csv }, first.truth);
  const second = groundRun({ story: 2 });
  add({ 'ground-run-2': second.csv }, second.truth);
  const gear = gearSwings();
  add({ 'gear-swings': gear.csv }, gear.truth);
  const taxi = taxiCut();
  add({ 'taxi-cut': taxi.csv }, taxi.truth);
  const maiden = firstFlight();
  add({ 'first-flight-gps': maiden.logs.logger(), 'first-flight-monitor': maiden.logs.monitor() }, maiden.truth);
  const airspeed = airspeedFlight();
  add({ 'airspeed-gps': airspeed.logs.logger(), 'airspeed-monitor': airspeed.logs.monitor() }, airspeed.truth);
  const climb = climbFlight();
  add({ 'climb-gps': climb.logs.logger(), 'climb-monitor': climb.logs.monitor() }, climb.truth);
  const cruise = cruiseCoolingFlight();
  add({ 'cruise-cooling-gps': cruise.logs.logger(), 'cruise-cooling-monitor': cruise.logs.monitor() }, cruise.truth);
  const stalls = stallSeries();
  add({ stalls: stalls.csv() }, stalls.truth);
  const transfer = fuelTransfer();
  add({ transfer: transfer.csv }, transfer.truth);

  const about =
    'What lies behind each generated log of Ouzel. Invented. SI, each number with its unit; times from the first row of the first log named. Offsets are reading less truth. No reduction reads this file.';
  files.set('ouzel/truth.json', truthText({ about, logs }, TRUTH_UNITS));
  const pencil = { airspeed: wrenletAirspeed(), climb: wrenletClimb(), 'cooling-ground': wrenletGroundRun() };
  files.set('wrenlet/logs/phone-gps-airspeed.csv', pencil.airspeed.csv);
  for (const [kind, { points }] of Object.entries(pencil))
    files.set(`wrenlet/points/${kind}.json`, `${JSON.stringify(points, null, 1)}\n`);
  const wrenlet = {
    about:
      'What lies behind Wrenlet’s log and pencilled figures. Invented. SI, each number with its unit. No reduction reads this file.',
    logs: { 'phone-gps-airspeed.csv + points/airspeed.json': pencil.airspeed.truth },
    points: { 'climb.json': pencil.climb.truth, 'cooling-ground.json': pencil['cooling-ground'].truth },
  };
  files.set('wrenlet/truth.json', truthText(wrenlet, TRUTH_UNITS));
  return files;
}
