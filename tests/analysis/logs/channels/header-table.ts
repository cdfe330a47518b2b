/**
 * Column headers as recorders of many kinds write them, with the values such a column holds and what it must be taken
 * for (common practice, from memory, no source). One line a column:
 *
 *   header | lowest value | highest value | quantity, `-` for left alone without a question, `?` for asked | unit
 *
 * `?a b` names what must be among the choices. Every one stands in a file of its own, beside an engine that runs.
 */
const ENGINE = `
RPM | 2000 | 2500 | engine-speed | rpm
Tach | 2000 | 2500 | engine-speed | rpm
ENG RPM | 2000 | 2500 | engine-speed | rpm
EngineRPM | 2000 | 2500 | engine-speed | rpm
engine_rpm | 2000 | 2500 | engine-speed | rpm
Engine Speed (rpm) | 2000 | 2500 | engine-speed | rpm
E1 RPM | 2000 | 2500 | engine-speed | rpm
RPM1 | 2000 | 2500 | engine-speed | rpm
Engine Speed [1/min] | 2000 | 2500 | engine-speed | rpm
Prop RPM | 1900 | 2300 | propeller-speed | rpm
N1 (%) | 60 | 95 | - |
N1 | 60 | 95 | - |
N2 (%) | 60 | 95 | - |
MAP | 18 | 27 | manifold-pressure | inHg
MAP (inHg) | 18 | 27 | manifold-pressure | inHg
MP | 18 | 27 | manifold-pressure | inHg
M.P. | 18 | 27 | manifold-pressure | inHg
Man Press | 18 | 27 | manifold-pressure | inHg
Manifold Pressure [kPa] | 60 | 95 | manifold-pressure | kPa
map_kpa | 60 | 95 | manifold-pressure | kPa
MAP (mbar) | 600 | 950 | manifold-pressure | hPa
Manifold hPa | 600 | 950 | manifold-pressure | hPa
MAP (bar) | 0.6 | 1.2 | manifold-pressure | bar
E1 MAP | 18 | 27 | manifold-pressure | inHg
ManP (in Hg) | 18 | 27 | manifold-pressure | inHg
ManifoldPress | 18 | 27 | manifold-pressure | inHg
FF (gal/h) | 6 | 12 | fuel-flow | gal/h
FF | 6 | 12 | ?gal/h L/h |
FF GPH | 6 | 12 | fuel-flow | gal/h
GPH | 6 | 12 | fuel-flow | gal/h
Fuel Flow (L/h) | 18 | 32 | fuel-flow | L/h
fuel_flow_lph | 18 | 32 | fuel-flow | L/h
FuelFlow (gph) | 6 | 12 | fuel-flow | gal/h
E1 FFlow (gph) | 6 | 12 | fuel-flow | gal/h
F/F GPH | 6 | 12 | fuel-flow | gal/h
Fuel Flow [L/min] | 0.3 | 0.6 | fuel-flow | L/min
Fuel Flow (lb/h) | 40 | 70 | - |
Total Fuel Flow (gal/h) | 6 | 12 | fuel-flow | gal/h
FPres (psi) | 3 | 6 | fuel-pressure | psi
Fuel Press [bar] | 2.8 | 3.1 | fuel-pressure | bar
FuelP (psi) | 25 | 35 | fuel-pressure | psi
E1 FPres (psi) | 25 | 35 | fuel-pressure | psi
F Press (psi) | 25 | 35 | fuel-pressure | psi
fuel_pressure_kpa | 280 | 310 | fuel-pressure | kPa
Fuel Pressure Rail (bar) | 2.8 | 3.1 | fuel-pressure | bar
FQtyL (gal) | 18 | 24 | fuel-quantity#1 | gal
FQtyR (gal) | 18 | 24 | fuel-quantity#2 | gal
Fuel Qty L (gal) | 18 | 24 | fuel-quantity#1 | gal
L Fuel Qty [L] | 40 | 55 | fuel-quantity#1 | L
Fuel Left (gal) | 18 | 24 | fuel-quantity#1 | gal
Fuel Level Right (L) | 40 | 55 | fuel-quantity#2 | L
fuel_qty_left_gal | 18 | 24 | fuel-quantity#1 | gal
Left Tank (gal) | 18 | 24 | fuel-quantity#1 | gal
TANK 1 (L) | 40 | 55 | fuel-quantity#1 | L
LFUEL (gal) | 18 | 24 | fuel-quantity#1 | gal
FUEL L (gal) | 18 | 24 | fuel-quantity#1 | gal
Aft Fuel Qty [L] | 20 | 35 | fuel-quantity#3 | L
Fuel Used (gal) | 2 | 9 | fuel-used | gal
USD (gal) | 2 | 9 | fuel-used | gal
Fuel Burned [L] | 5 | 30 | fuel-used | L
Fuel Remaining (gal) | 18 | 24 | - |
REM | 18 | 24 | - |
Range (NM) | 200 | 320 | - |
MPG | 12 | 18 | - |
Endurance (h) | 2 | 4 | - |
OILT (F) | 170 | 200 | oil-temperature | degF
OIL T | 170 | 200 | oil-temperature | degF
OilT | 75 | 98 | oil-temperature | degC
Oil Temp | 75 | 98 | oil-temperature | degC
Oil Temperature [C] | 75 | 98 | oil-temperature | degC
E1 OilT (degF) | 170 | 200 | oil-temperature | degF
oil_temp_c | 75 | 98 | oil-temperature | degC
OilTemp(F) | 170 | 200 | oil-temperature | degF
Oil Temp K | 350 | 370 | oil-temperature | K
T Oil (degC) | 75 | 98 | oil-temperature | degC
OILP | 45 | 80 | oil-pressure | psi
OIL P (psi) | 45 | 80 | oil-pressure | psi
E1 OilP (psi) | 45 | 80 | oil-pressure | psi
Oil Pressure [bar] | 3 | 5 | oil-pressure | bar
oilPress | 300 | 480 | oil-pressure | kPa
Oil P kPa | 300 | 480 | oil-pressure | kPa
OIL | 75 | 98 | ?oil-temperature oil-pressure |
CLT | 75 | 98 | coolant-temperature | degC
CLT (F) | 175 | 210 | coolant-temperature | degF
ECT (C) | 75 | 98 | coolant-temperature | degC
H2O | 175 | 210 | ?coolant-temperature coolant-pressure |
H2O T | 175 | 210 | coolant-temperature | degF
Water T (C) | 75 | 98 | coolant-temperature | degC
Water Temp | 75 | 98 | coolant-temperature | degC
WT | 75 | 98 | ?coolant-temperature |
CoolT (degC) | 75 | 98 | coolant-temperature | degC
Coolant Temp (degF) | 175 | 210 | coolant-temperature | degF
coolant_temp_c | 75 | 98 | coolant-temperature | degC
Coolant Out (C) | 75 | 98 | coolant-temperature | degC
Coolant In (C) | 65 | 88 | coolant-temperature-in | degC
Coolant Return Temp [C] | 65 | 88 | coolant-temperature-in | degC
Coolant Press (psi) | 8 | 15 | coolant-pressure | psi
Coolant Level (%) | 95 | 100 | - |
CHT1 | 320 | 380 | cylinder-head-temperature#1 | degF
CHT 3 (F) | 320 | 380 | cylinder-head-temperature#3 | degF
E1 CHT2 | 160 | 195 | ?degC degF |
CHT_4_C | 160 | 195 | cylinder-head-temperature#4 | degC
CHT-1 [degC] | 160 | 195 | cylinder-head-temperature#1 | degC
Cyl Head Temp 2 (C) | 160 | 195 | cylinder-head-temperature#2 | degC
Cyl 3 CHT (F) | 320 | 380 | cylinder-head-temperature#3 | degF
CHT Left (C) | 100 | 125 | cylinder-head-temperature#1 | degC
EGT1 | 1250 | 1420 | exhaust-gas-temperature#1 | degF
EGT 4 (degC) | 680 | 770 | exhaust-gas-temperature#4 | degC
E1 EGT3 | 1250 | 1420 | exhaust-gas-temperature#3 | degF
egt_2_f | 1250 | 1420 | exhaust-gas-temperature#2 | degF
Exhaust Gas Temp 1 [C] | 680 | 770 | exhaust-gas-temperature#1 | degC
TIT | 1400 | 1550 | - |
TIT1 (F) | 1400 | 1550 | - |
DIF | 60 | 120 | - |
EGT Span | 60 | 120 | - |
CHT Spread (F) | 10 | 40 | - |
CLD | -30 | 5 | - |
%PWR | 55 | 75 | - |
% Power | 55 | 75 | - |
HP | 60 | 110 | - |
Hp (ft) | 2000 | 5500 | pressure-altitude | ft
Torque (Nm) | 200 | 350 | - |
VOLTS | 13.7 | 14.2 | bus-voltage#1 | V
Volt1 | 13.7 | 14.2 | bus-voltage#1 | V
volt2 (V) | 13.7 | 14.2 | bus-voltage#2 | V
BUS | 13.7 | 14.2 | ?bus-voltage |
BUS (V) | 13.7 | 14.2 | bus-voltage#1 | V
Main Bus V | 13.7 | 14.2 | bus-voltage#1 | V
Ess Bus Volts (V) | 13.7 | 14.2 | bus-voltage#1 | V
BAT (V) | 12.4 | 14.2 | bus-voltage#1 | V
Battery Voltage | 12.4 | 14.2 | bus-voltage#1 | V
battery_voltage_v | 12.4 | 14.2 | bus-voltage#1 | V
AMPS | 5 | 22 | bus-current#1 | A
amp1 | 5 | 22 | bus-current#1 | A
ALT A | 5 | 22 | bus-current#1 | A
Alternator Amps (A) | 5 | 22 | bus-current#1 | A
Gen Current [A] | 5 | 22 | bus-current#1 | A
Batt Amps | -5 | 12 | battery-current | A
BAT A | -5 | 12 | battery-current | A
Battery current (A) | -5 | 12 | battery-current | A
Pump amps [A] | 0 | 6 | ?gear-current |
Fuel pump current (A) | 0 | 6 | - |
Transfer Pump | 0 | 1 | transfer-valve-state | none
Gear current [A] | 0 | 40 | gear-current | A
Gear Motor Amps | 0 | 40 | gear-current | A
Gear pump (A) | 0 | 40 | gear-current | A
Hyd pump amps | 0 | 40 | gear-current | A
Hyd Press (psi) | 500 | 1500 | hydraulic-pressure | psi
Gear nose up | 0 | 1 | gear-position | none
Gear left down | 0 | 1 | gear-position | none
Nose gear down | 0 | 1 | gear-position | none
LG L Down | 0 | 1 | gear-position | none
Gear | 0 | 1 | gear-position | none
Gear Handle | 0 | 1 | - |
Selector up | 0 | 1 | - |
Cowl Flap (%) | 0 | 100 | cowl-exit-position | %
Exit door [%] | 0 | 100 | cowl-exit-position | %
Cowl flaps | 0 | 1 | cowl-exit-position | 1
Door | 0 | 1 | ?cowl-exit-position |
Cabin door | 0 | 1 | - |
Fan | 0 | 1 | cooling-fan-state | none
Gear L Green | 0 | 1 | gear-position | none
Nose Gear Lamp | 0 | 1 | gear-position | none
ENG RPM X100 | 20 | 25 | - |
Altitude (ft x1000) | 2 | 8 | - |
OilPr (psi) | 40 | 70 | oil-pressure | psi
fan_on | 0 | 1 | cooling-fan-state | none
Fan (A) | 6 | 14 | - |
Cabin fan | 0 | 1 | - |
Fuel Temp (C) | 15 | 25 | fuel-temperature | degC
IAT (C) | 20 | 35 | inlet-air-temperature | degC
CDT (F) | 180 | 260 | - |
Carb Temp (F) | 40 | 70 | - |
OAT (C) | 8 | 21 | outside-air-temperature | degC
OAT | 8 | 14 | ?degC degF |
Outside Air Temp (F) | 48 | 68 | outside-air-temperature | degF
Ambient Temp [C] | 8 | 21 | outside-air-temperature | degC
Airbox Temp (C) | 20 | 35 | inlet-air-temperature | degC
Hobbs | 120.1 | 121.2 | - |
Tach Time (h) | 120.1 | 121.2 | - |
Engine Hours | 120.1 | 121.2 | - |
Cabin Temp (C) | 18 | 24 | - |
CPU Temp (C) | 38 | 50 | - |
ECU Temp (C) | 38 | 50 | engine-control-temperature | degC
Gearbox Temp (C) | 60 | 80 | - |
Temp 1 (C) | 60 | 80 | ?oil-temperature coolant-temperature |
Pressure 2 (psi) | 30 | 50 | ?oil-pressure fuel-pressure |
CO (ppm) | 0 | 12 | carbon-monoxide |
AFR | 12 | 14.7 | - |
Lambda | 0.85 | 1.02 | - |
TPS (%) | 20 | 80 | - |
Throttle (%) | 20 | 80 | - |
Mixture | 20 | 80 | - |
`;

const FLIGHT = `
IAS (kt) | 80 | 110 | indicated-airspeed | kt
IAS | 80 | 110 | ?kt mph km/h |
KIAS | 80 | 110 | indicated-airspeed | kt
Airspeed (kt) | 80 | 110 | indicated-airspeed | kt
Indicated Airspeed (mph) | 90 | 130 | indicated-airspeed | mph
ias_kmh | 150 | 200 | indicated-airspeed | km/h
IASkt | 80 | 110 | indicated-airspeed | kt
AirSpd (kts) | 80 | 110 | indicated-airspeed | kt
ASI (kt) | 80 | 110 | indicated-airspeed | kt
CAS (kt) | 80 | 110 | calibrated-airspeed | kt
TAS (kt) | 85 | 118 | true-airspeed | kt
True Airspeed [m/s] | 42 | 58 | true-airspeed | m/s
KTAS | 85 | 118 | true-airspeed | kt
GndSpd (kt) | 85 | 118 | ground-speed | kt
GSPD (kt) | 85 | 118 | ground-speed | kt
GS (kt) | 85 | 118 | ground-speed | kt
Ground Speed (m/s) | 42 | 58 | ground-speed | m/s
gps_speed_kmh | 150 | 210 | ground-speed | km/h
SOG (kn) | 85 | 118 | ground-speed | kt
Speed Over Ground (kt) | 85 | 118 | ground-speed | kt
Speed (kt) | 85 | 118 | ?ground-speed indicated-airspeed |
VSpd (fpm) | -500 | 700 | vertical-speed | ft/min
VSI (ft/min) | -500 | 700 | vertical-speed | ft/min
VS [m/s] | -2.5 | 3.5 | vertical-speed | m/s
Vertical Speed (ft/min) | -500 | 700 | vertical-speed | ft/min
Vario [m/s] | -2.5 | 3.5 | vertical-speed | m/s
VSpdG (fpm) | -500 | 700 | - |
Rate of Climb (fpm) | -500 | 700 | vertical-speed | ft/min
AltInd (ft) | 2000 | 5500 | indicated-altitude | ft
Indicated Altitude (ft) | 2000 | 5500 | indicated-altitude | ft
AltB (ft) | 2000 | 5500 | indicated-altitude | ft
BaroAlt (ft) | 2000 | 5500 | indicated-altitude | ft
AltP (ft) | 2000 | 5500 | pressure-altitude | ft
PAlt (ft) | 2000 | 5500 | pressure-altitude | ft
Pressure Altitude (m) | 600 | 1700 | pressure-altitude | m
press_alt_ft | 2000 | 5500 | pressure-altitude | ft
ENC ALT (ft) | 2000 | 5500 | pressure-altitude | ft
AltMSL (ft) | 2000 | 5500 | gps-altitude | ft
AltGPS (ft) | 2000 | 5500 | gps-altitude | ft
GPS Alt (m) | 600 | 1700 | gps-altitude | m
GPS Altitude (ft msl) | 2000 | 5500 | gps-altitude | ft
gps_alt_m | 600 | 1700 | gps-altitude | m
GNSS height [m] | 600 | 1700 | gps-altitude | m
Altitude (ft) | 2000 | 5500 | ?pressure-altitude gps-altitude |
ALT | 2000 | 5500 | ?pressure-altitude gps-altitude |
AGL (ft) | 200 | 1500 | - |
Radio Alt (ft) | 200 | 1500 | - |
Density Altitude (ft) | 2500 | 6500 | - |
AltSel (ft) | 2000 | 5500 | - |
Selected Altitude (ft) | 2000 | 5500 | - |
Target Alt (ft) | 2000 | 5500 | - |
BaroA (inHg) | 29.92 | 29.92 | altimeter-setting | inHg
Baro | 29.92 | 29.92 | altimeter-setting | inHg
QNH (hPa) | 1012 | 1012 | altimeter-setting | hPa
Altimeter Setting (hPa) | 1012 | 1012 | altimeter-setting | hPa
BARO (mbar) | 1012 | 1012 | altimeter-setting | hPa
Baro Pressure (hPa) | 850 | 940 | ?altimeter-setting |
Static Pressure (hPa) | 850 | 940 | - |
HPA | 850 | 940 | ?manifold-pressure altimeter-setting |
Dynamic pressure (Pa) | 1000 | 1900 | - |
LAT | 45.1 | 45.3 | latitude | deg
Latitude (deg) | 45.1 | 45.3 | latitude | deg
lat_deg | 45.1 | 45.3 | latitude | deg
GPS Latitude | 45.1 | 45.3 | latitude | deg
GPS.Lat | 45.1 | 45.3 | latitude | deg
Lon | 7.1 | 7.3 | longitude | deg
Long | 7.1 | 7.3 | longitude | deg
LNG | 7.1 | 7.3 | longitude | deg
longitude_deg | 7.1 | 7.3 | longitude | deg
gpsLongitude | 7.1 | 7.3 | longitude | deg
TRK (deg) | 80 | 130 | track-true | deg
Track T | 80 | 130 | track-true | deg
Track (°T) | 80 | 130 | track-true | deg
Track M | 80 | 130 | - |
Heading M | 80 | 130 | heading-magnetic | deg
Heading (°T) | 80 | 130 | - |
SAT (degC) | -6 | 12 | outside-air-temperature | degC
SAT | 5 | 12 | ?outside-air-temperature fix-quality |
Event (s) | 1 | 40 | - |
Altitude QNE (m) | 300 | 1500 | pressure-altitude | m
Track (deg true) | 80 | 130 | track-true | deg
TRK (deg mag) | 80 | 130 | - |
COG (deg) | 80 | 130 | track-true | deg
Course Over Ground | 80 | 130 | track-true | deg
GPS Track [deg] | 80 | 130 | track-true | deg
GndTrk (deg) | 80 | 130 | track-true | deg
CRS (deg) | 80 | 130 | - |
Course (deg) | 80 | 130 | ?track-true heading-magnetic |
Bearing (deg) | 80 | 130 | ?track-true |
DTK | 80 | 130 | - |
HDG (deg) | 80 | 130 | heading-magnetic | deg
Heading (deg mag) | 80 | 130 | heading-magnetic | deg
Mag Hdg | 80 | 130 | heading-magnetic | deg
True Heading (deg) | 80 | 130 | - |
Heading True | 80 | 130 | - |
HDG Bug | 80 | 130 | - |
Pitch (deg) | -2 | 8 | pitch-angle | deg
Roll | -20 | 25 | roll-angle | deg
Bank (deg) | -20 | 25 | roll-angle | deg
Pitch Cmd (deg) | -2 | 8 | - |
roll_cmd | -20 | 25 | - |
Pitch Rate (deg/s) | -2 | 3 | pitch-rate | deg/s
Q (deg/s) | -2 | 3 | pitch-rate | deg/s
roll_rate_dps | -8 | 9 | roll-rate | deg/s
Yaw Rate (deg/s) | -4 | 5 | yaw-rate | deg/s
Yaw (deg) | 80 | 130 | - |
Turn Rate (deg/s) | -3 | 3 | - |
Slip | -0.05 | 0.05 | - |
NormAc (G) | 0.9 | 1.15 | normal-acceleration | g0
NZ (g) | 0.9 | 1.15 | normal-acceleration | g0
Vert G | 0.9 | 1.15 | normal-acceleration | g0
Load Factor | 0.9 | 1.15 | normal-acceleration | g0
NormAc | -0.1 | 0.15 | ?normal-acceleration |
G | 0.9 | 1.15 | ?normal-acceleration |
Normal Acceleration [m/s2] | 9 | 11 | normal-acceleration | m/s2
LatAc (G) | -0.05 | 0.05 | lateral-acceleration | g0
Lateral G | -0.05 | 0.05 | lateral-acceleration | g0
AoA (deg) | 2 | 9 | angle-of-attack | deg
Flaps (deg) | 0 | 20 | flap-position | deg
Flap Position | 0 | 20 | flap-position | deg
Elevator (deg) | -4 | 2 | elevator-position | deg
Pitch Trim (%) | -20 | 30 | pitch-trim-position | %
Stick Force (N) | -20 | 40 | stick-force | N
Rudder pedal (%) | -20 | 30 | pedal-position | %
Aileron (deg) | -4 | 4 | - |
Rudder (deg) | -4 | 4 | - |
WndSpd (kt) | 8 | 22 | wind-speed | kt
Wind Speed (m/s) | 4 | 11 | wind-speed | m/s
WndDr (deg) | 240 | 270 | wind-direction | deg
Wind Dir (deg true) | 240 | 270 | wind-direction | deg
Headwind (kt) | -8 | 12 | - |
Crosswind (kt) | -8 | 12 | - |
MagVar (deg) | -3 | -3.2 | - |
HDOP | 0.8 | 1.4 | - |
PDOP | 0.8 | 1.4 | - |
GPSfix | 3 | 3 | fix-quality | none
Fix Quality | 1 | 2 | fix-quality | none
NumSats | 7 | 11 | fix-quality | none
HAL | 0.3 | 0.3 | - |
WptDst (nm) | 12 | 30 | - |
WptBrg (deg) | 80 | 130 | - |
NAV1 (MHz) | 110.1 | 112.3 | - |
COM1 | 118.1 | 124.3 | - |
Dist (NM) | 12 | 30 | - |
Event | 0 | 1 | event-mark | none
Marker | 0 | 1 | event-mark | none
WOW | 0 | 1 | weight-on-wheels | none
AP Mode | 0 | 3 | autopilot-mode | none
Servo Current (A) | 0 | 1.2 | - |
Vs0 (kt) | 48 | 48 | - |
Accuracy (m) | 3 | 9 | - |
Satellite SNR | 30 | 42 | - |
`;

const OTHER_TONGUES = `
Motordrehzahl [U/min] | 2000 | 2500 | engine-speed | rpm
Drehzahl (1/min) | 2000 | 2500 | engine-speed | rpm
Régime moteur (tr/min) | 2000 | 2500 | engine-speed | rpm
Régimen motor [rpm] | 2000 | 2500 | engine-speed | rpm
Öltemperatur [°C] | 75 | 98 | oil-temperature | degC
Oeltemp (C) | 75 | 98 | oil-temperature | degC
Température huile (°C) | 75 | 98 | oil-temperature | degC
Temp. aceite (°C) | 75 | 98 | oil-temperature | degC
Öldruck [bar] | 3 | 5 | oil-pressure | bar
Pression huile (bar) | 3 | 5 | oil-pressure | bar
Presión aceite (bar) | 3 | 5 | oil-pressure | bar
Kühlmittel ein [°C] | 60 | 78 | coolant-temperature-in | degC
Kühlmittel aus [°C] | 75 | 98 | coolant-temperature | degC
Kühlwassertemperatur [°C] | 75 | 98 | coolant-temperature | degC
Kühlmitteltemp (°C) | 75 | 98 | coolant-temperature | degC
Wassertemperatur (°C) | 75 | 98 | coolant-temperature | degC
Temp. eau (°C) | 75 | 98 | coolant-temperature | degC
Température liquide de refroidissement (°C) | 75 | 98 | coolant-temperature | degC
Temperatura refrigerante (°C) | 75 | 98 | coolant-temperature | degC
Ladedruck [hPa] | 600 | 950 | manifold-pressure | hPa
Pression admission (hPa) | 600 | 950 | manifold-pressure | hPa
Presión de admisión (hPa) | 600 | 950 | manifold-pressure | hPa
Kraftstoffdruck [bar] | 2.8 | 3.1 | fuel-pressure | bar
Pression carburant (bar) | 2.8 | 3.1 | fuel-pressure | bar
Kraftstoffdurchfluss [l/h] | 18 | 32 | fuel-flow | L/h
Kraftstoffverbrauch [l/h] | 18 | 32 | fuel-flow | L/h
Verbrauch (l/h) | 18 | 32 | fuel-flow | L/h
Débit carburant (L/h) | 18 | 32 | fuel-flow | L/h
Consommation (L/h) | 18 | 32 | fuel-flow | L/h
Caudal combustible (l/h) | 18 | 32 | fuel-flow | L/h
Consumo (l/h) | 18 | 32 | fuel-flow | L/h
Tankinhalt links [l] | 40 | 55 | fuel-quantity#1 | L
Tank rechts (l) | 40 | 55 | fuel-quantity#2 | L
Réservoir gauche (L) | 40 | 55 | fuel-quantity#1 | L
Depósito derecho (l) | 40 | 55 | fuel-quantity#2 | L
Zylinderkopftemperatur 2 [°C] | 100 | 125 | cylinder-head-temperature#2 | degC
ZKT 1 (°C) | 100 | 125 | cylinder-head-temperature#1 | degC
Température culasse 1 (°C) | 100 | 125 | cylinder-head-temperature#1 | degC
Temp. culata 2 (°C) | 100 | 125 | cylinder-head-temperature#2 | degC
Abgastemperatur 3 [°C] | 680 | 770 | exhaust-gas-temperature#3 | degC
AGT 1 (°C) | 680 | 770 | exhaust-gas-temperature#1 | degC
Température échappement 1 (°C) | 680 | 770 | exhaust-gas-temperature#1 | degC
Temp. escape 1 (°C) | 680 | 770 | exhaust-gas-temperature#1 | degC
Außentemperatur [°C] | 8 | 21 | outside-air-temperature | degC
Température extérieure (°C) | 8 | 21 | outside-air-temperature | degC
Temp ext (°C) | 8 | 21 | outside-air-temperature | degC
Temperatura exterior (°C) | 8 | 21 | outside-air-temperature | degC
Bordspannung [V] | 13.7 | 14.2 | bus-voltage#1 | V
Batteriespannung (V) | 12.4 | 14.2 | bus-voltage#1 | V
Tension bus (V) | 13.7 | 14.2 | bus-voltage#1 | V
Tensión batería (V) | 12.4 | 14.2 | bus-voltage#1 | V
Batteriestrom [A] | -5 | 12 | battery-current | A
Courant batterie (A) | -5 | 12 | battery-current | A
Corriente alternador (A) | 5 | 22 | bus-current#1 | A
Angezeigte Fluggeschwindigkeit [km/h] | 150 | 200 | indicated-airspeed | km/h
Vitesse indiquée (kt) | 80 | 110 | indicated-airspeed | kt
Velocidad indicada (kt) | 80 | 110 | indicated-airspeed | kt
Wahre Fluggeschwindigkeit (kt) | 85 | 118 | true-airspeed | kt
Geschwindigkeit über Grund [km/h] | 150 | 210 | ground-speed | km/h
Vitesse sol (kt) | 85 | 118 | ground-speed | kt
Velocidad GPS (km/h) | 150 | 210 | ground-speed | km/h
Velocidad sobre el suelo (kt) | 85 | 118 | ground-speed | kt
GPS-Höhe [m] | 600 | 1700 | gps-altitude | m
Altitude GPS (m) | 600 | 1700 | gps-altitude | m
Altitud GPS (m) | 600 | 1700 | gps-altitude | m
Druckhöhe [ft] | 2000 | 5500 | pressure-altitude | ft
Altitude pression (ft) | 2000 | 5500 | pressure-altitude | ft
Altitud de presión (ft) | 2000 | 5500 | pressure-altitude | ft
Höhe [m] | 600 | 1700 | ?gps-altitude pressure-altitude |
Variometer [m/s] | -2.5 | 3.5 | vertical-speed | m/s
Steigrate (m/s) | -2.5 | 3.5 | vertical-speed | m/s
Vitesse verticale (ft/min) | -500 | 700 | vertical-speed | ft/min
Velocidad vertical (ft/min) | -500 | 700 | vertical-speed | ft/min
Geografische Breite | 45.1 | 45.3 | latitude | deg
Breitengrad | 45.1 | 45.3 | latitude | deg
Längengrad | 7.1 | 7.3 | longitude | deg
Latitud | 45.1 | 45.3 | latitude | deg
Longitud | 7.1 | 7.3 | longitude | deg
Kurs über Grund [°] | 80 | 130 | track-true | deg
Route (°) | 80 | 130 | ?track-true |
Rumbo (°) | 80 | 130 | ?track-true heading-magnetic |
Cap magnétique (°) | 80 | 130 | heading-magnetic | deg
Steuerkurs [°] | 80 | 130 | heading-magnetic | deg
Windgeschwindigkeit [kt] | 8 | 22 | wind-speed | kt
Windrichtung [°] | 240 | 270 | wind-direction | deg
Vitesse du vent (kt) | 8 | 22 | wind-speed | kt
Neigung | -2 | 8 | ?pitch-angle |
Tangage (°) | -2 | 8 | pitch-angle | deg
Roulis (°) | -20 | 25 | roll-angle | deg
Assiette (°) | -2 | 8 | pitch-angle | deg
Inclinaison (°) | -20 | 25 | ?roll-angle |
Cabeceo (°) | -2 | 8 | pitch-angle | deg
Alabeo (°) | -20 | 25 | roll-angle | deg
Klappen (°) | 0 | 20 | flap-position | deg
Volets (°) | 0 | 20 | flap-position | deg
Fahrwerk | 0 | 1 | gear-position | none
Vorrat (l) | 40 | 55 | fuel-quantity#1 | L
Leistung (kW) | 60 | 90 | - |
Puissance (%) | 55 | 75 | - |
Entfernung (km) | 12 | 30 | - |
`;

export interface HeaderCase {
  header: string;
  low: number;
  high: number;
  /** glossary name, or null where it is left alone */
  quantity: string | null;
  /** what must be among the choices of the question */
  asked: string[];
  unit: string | null;
}

const read = (text: string): HeaderCase[] =>
  text
    .trim()
    .split('\n')
    .map((line) => {
      const [header = '', low, high, wanted = '', unit = ''] = line.split('|').map((cell) => cell.trim());
      return {
        header,
        low: Number(low),
        high: Number(high),
        quantity: /^[-?]/.test(wanted) ? null : wanted,
        asked: wanted.startsWith('?') ? wanted.slice(1).split(' ') : [],
        unit: unit === '' ? null : unit,
      };
    });

export const HEADERS = {
  'of engine recorders': read(ENGINE),
  'of flight recorders': read(FLIGHT),
  'in other tongues': read(OTHER_TONGUES),
};
