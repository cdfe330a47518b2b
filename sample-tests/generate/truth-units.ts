/** SI unit of every number that may stand in a truth file, by its key; 'none' for counts and names that are numbers. */
export const TRUTH_UNITS: Readonly<Record<string, string>> = Object.fromEntries(
  (
    [
      ['none', 'seed wholeRows charactersOfLastRow lateCycle'],
      [
        's',
        'fromSeconds toSeconds stoppedAtSeconds shutdownAtSeconds peakAfterShutdownSeconds timeToRestart timeConstant',
        'brakeReleaseSeconds liftOffSeconds touchdownSeconds breakSeconds speedPerRate cutSeconds pumpOnSeconds',
        'pumpOffSeconds drawsAirSeconds transit nose left right lateBy',
        'slowTimeConstant monitorAheadSeconds monitorShiftSeconds coolantPeakSeconds oilPeakSeconds',
      ],
      ['1/s', 'engineSpeed flowPerVolume'],
      ['1', 'exit thermostatAtEnd maximumLift loadFactor'],
      ['K', 'airMean equilibrium equilibriumThermostatOpen oilEquilibrium coolantAtEnd coolantAtShutdown'],
      ['K', 'peakAfterShutdown temperature coolantPeak airAtPeak oilPeak'],
      ['dK', 'equilibriumOverAir coolant oil air'],
      ['m/s', 'airspeed ias cas correction tas windNorth windEast speed rateObserved specificExcessPower rateStandard'],
      ['m/s', 'iasAtBreak casAtBreak'],
      ['m/s', 'bestRateSpeed bestRateIas bestRate bestAngleSpeed bestAngleIas flatFrom flatTo'],
      ['m/s2', 'driftNorth driftEast entryRate'],
      ['m', 'altitude pressureAltitude densityAltitude fieldHeight groundRoll'],
      ['Pa', 'pressure dynamicPressure'],
      ['Pa/s', 'pressureFall'],
      ['A', 'peakCurrent travelCurrent'],
      ['C', 'charge'],
      ['V', 'lowestVoltage'],
      ['m3', 'volumeWhenAirDrawn remainder startVolume endVolume'],
      ['m3/s', 'transferFlow engineFlow fuelFlow'],
      ['rad', 'heading direction runway'],
      ['kg', 'mass massAtFirstRow standardMass'],
    ] as const
  ).flatMap(([unit, ...names]) => names.flatMap((line) => line.split(' ').map((name) => [name, unit]))),
);
