/** SI unit of every number that may stand in a truth file, by its key; 'none' for counts and names that are numbers. */
export const TRUTH_UNITS: Readonly<Record<string, string>> = Object.fromEntries(
  (
    [
      ['none', 'seed'],
      [
        's',
        'fromSeconds toSeconds stoppedAtSeconds shutdownAtSeconds peakAfterShutdownSeconds timeToRestart timeConstant',
        'slowTimeConstant monitorAheadSeconds monitorShiftSeconds coolantPeakSeconds oilPeakSeconds',
      ],
      ['1/s', 'engineSpeed'],
      ['1', 'exit thermostatAtEnd'],
      ['K', 'airMean equilibrium equilibriumThermostatOpen oilEquilibrium coolantAtEnd coolantAtShutdown'],
      ['K', 'peakAfterShutdown temperature coolantPeak airAtPeak oilPeak'],
      ['dK', 'equilibriumOverAir coolant oil air'],
      ['m/s', 'airspeed ias cas correction tas windNorth windEast speed rateObserved specificExcessPower rateStandard'],
      ['m/s', 'bestRateSpeed bestRateIas bestRate bestAngleSpeed bestAngleIas flatFrom flatTo'],
      ['m/s2', 'driftNorth driftEast'],
      ['m', 'altitude pressureAltitude densityAltitude'],
      ['Pa', 'pressure'],
      ['rad', 'heading direction'],
      ['kg', 'mass massAtFirstRow standardMass'],
    ] as const
  ).flatMap(([unit, ...names]) => names.flatMap((line) => line.split(' ').map((name) => [name, unit]))),
);
