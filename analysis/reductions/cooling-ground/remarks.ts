/** Remarks on a ground run: what was assumed, what is weak. */
import { type Airplane, accuracyOf } from '../../airplane/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import { baseName } from '../../units/index.ts';
import { USUAL_LAG } from './held-model.ts';
import { DRIFT_FROM } from './measure.ts';
import { spanOf } from './rows.ts';
import type { Run } from './run.ts';

/**
 * Remarks of one run.
 * @param run the measured run, object
 * @param airplane the description, or undefined
 * @returns flags
 */
export function runRemarks(run: Run, airplane: Airplane | undefined): Flag[] {
  return [
    ...airRemarks(run),
    ...settingRemarks(run, airplane),
    ...thermostatRemarks(run, airplane),
    ...sensorRemarks(run, airplane),
    ...underOpening(run),
    ...driftRemarks(run),
    ...channelRemarks(run),
  ];
}

function airRemarks({ channels, trace }: Run): Flag[] {
  const { air, outside } = channels;
  if (!trace.air) {
    return [
      flag(
        'air-temperature-source',
        'no air temperature was logged: it was taken as steady through each segment, and nothing is carried to another day. State it as read by hand, or log it',
      ),
    ];
  }
  if (!air) return [flag('air-temperature-source', 'air temperature as read by hand, for the whole run')];
  if (air !== outside) {
    return [
      flag(
        'air-temperature-source',
        `cooled by "${air.column}" at the inlet; the hot day is about "${outside?.column ?? ''}" outside`,
      ),
    ];
  }
  return air.quantity === 'inlet-air-temperature'
    ? [flag('air-temperature-source', 'only inlet air was logged: air drawn in twice counts as a hotter day')]
    : [
        flag(
          'air-temperature-source',
          'outside air stands for the air at the inlet: air drawn in twice is inside the equilibrium',
        ),
      ];
}

function settingRemarks({ channels }: Run, airplane: Airplane | undefined): Flag[] {
  const lacks: string[] = [];
  if (!channels.door && (airplane?.cooling.exitDoor || airplane?.cooling.cowlFlap)) lacks.push('exit position');
  if (!channels.fan && airplane?.cooling.groundFan) lacks.push('fan');
  return lacks.length > 0
    ? [
        flag(
          'assumed-value',
          `${lacks.join(' and ')} not logged: taken as unchanged while power was held. Set the segments by hand where it changed`,
        ),
      ]
    : [];
}

function thermostatRemarks({ governing, trace }: Run, airplane: Airplane | undefined): Flag[] {
  if (trace.main[0]?.part !== 'coolant') return [];
  if (governing === null) {
    return [
      flag(
        'regime-unknown',
        `${airplane ? `${airplane.name} does not say` : 'no airplane says'} where the thermostat starts and is fully open: what settles may be regulated, so no margin is given. Enter cooling.thermostatStart and cooling.thermostatOpen`,
      ),
    ];
  }
  if (governing !== 'none' && governing.startAssumed) {
    return [flag('assumed-value', 'where the thermostat starts to open is not stated: 12 K under fully open assumed')];
  }
  return [];
}

function underOpening({ governing, main }: Run): Flag[] {
  if (governing === null || governing === 'none') return [];
  return main
    .filter((one) => one.equilibrium !== null && one.equilibrium < governing.open)
    .map((one) =>
      flag(
        'method-note',
        `${one.point.label}: settles under the temperature at which the thermostat is fully open; the value is what the radiator would hold with it open, the gauge will show the thermostat’s`,
        spanOf(one),
      ),
    );
}

function sensorRemarks({ trace, main }: Run, airplane: Airplane | undefined): Flag[] {
  const names = new Set([...trace.main, ...(trace.oil ? [trace.oil] : [])].map((hot) => baseName(hot.quantity)));
  if (trace.outside) names.add('outside-air-temperature');
  const assumed = [...names]
    .map((name) => ({ name, accuracy: accuracyOf(airplane, name) }))
    .filter(({ accuracy }) => accuracy.assumed)
    .map(({ name, accuracy }) => flag('assumed-calibration', `${name}: ${accuracy.basis}`));
  const lag = main.some((one) => one.fit && one.lag === null)
    ? [flag('lag-assumed', `lag of the temperature sensor taken as ${USUAL_LAG} s: common practice, no source`)]
    : [];
  return [...assumed, ...lag];
}

function driftRemarks({ main }: Run): Flag[] {
  return main
    .filter((one) => one.fit && Math.abs(one.speedDrift) > DRIFT_FROM)
    .map((one) =>
      flag(
        'power-not-constant',
        `${one.point.label}: engine speed drifted by ${(100 * one.speedDrift).toFixed(1)} % from the first to the last third`,
        spanOf(one),
      ),
    );
}

const SERIOUS = new Set([
  'stuck',
  'spike',
  'saturated',
  'disconnected',
  'gap',
  'unit-contradictory',
  'implausible-unit',
]);

function channelRemarks({ channels, trace }: Run): Flag[] {
  const used = [
    ...trace.main.map((hot) => hot.series),
    ...(trace.oil ? [trace.oil.series] : []),
    channels.speed,
    channels.air,
  ];
  return used.flatMap((series) => {
    const kinds = [...new Set((series?.flags ?? []).map((one) => one.kind).filter((kind) => SERIOUS.has(kind)))];
    return series && kinds.length > 0
      ? [
          flag(
            'channel-flagged',
            `"${series.column}" carries remarks of its own: ${kinds.join(', ')}; look at the quality strip`,
          ),
        ]
      : [];
  });
}
