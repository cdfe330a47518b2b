/**
 * The one list of bad news. Each code says its kind, what it means (Help prints it) and how to mend it.
 * Codes are never reused; a test proves that each has a text and is raised somewhere.
 */

export type CodeKind = 'problem' | 'refusal' | 'flag';

export interface CodeEntry {
  readonly kind: CodeKind;
  readonly meaning: string;
  readonly mend: string;
}

const p = (meaning: string, mend: string) => ({ kind: 'problem', meaning, mend }) as const;
const r = (meaning: string, mend: string) => ({ kind: 'refusal', meaning, mend }) as const;
const f = (meaning: string, mend: string) => ({ kind: 'flag', meaning, mend }) as const;

export const CODES = {
  // a file that cannot be read as a log
  'empty-file': p(
    'The file holds no bytes.',
    'Copy it from the recorder again; a full card or an early power-off leaves empty files.',
  ),
  'not-a-log': p(
    'The file is not a table of readings.',
    'Choose the recorder’s text export (comma, semicolon, tab or fixed columns).',
  ),
  'no-rows': p(
    'A header was found but no rows of numbers.',
    'Check that the recording was running; export the whole session.',
  ),
  'too-large': p(
    'The file is larger than the limit.',
    'Cut the recording to the test, or raise the limit in the settings.',
  ),
  'too-many-columns': p(
    'The file has more columns than any recorder writes.',
    'Check that line ends and delimiters were not lost in an editor.',
  ),
  'line-too-long': p('A line is longer than any recorder writes.', 'Check that line ends were not lost in an editor.'),
  'no-time': p(
    'No column tells the time of a row.',
    'Name the time column in the channel table, or give the sample rate.',
  ),
  'bad-map': p(
    'The channel map does not fit this file.',
    'Map the channels again; the header differs from the saved one.',
  ),
  'unreadable-file': p('The file could not be opened.', 'Check the name and that the file may be read.'),

  // an airplane, a card, a request that cannot be used
  'bad-configuration': p(
    'The airplane’s description does not fit its schema.',
    'Mend the field named; what was stored before is kept.',
  ),
  'bad-points': p('The written figures do not fit the card.', 'Mend the field named.'),
  'bad-segments': p('The segments do not fit the log.', 'Give each a file, a start before its end, and a role.'),
  'bad-request': p('The request does not fit its schema.', 'Mend the field named.'),
  'not-found': p('There is no such thing in this book.', 'Follow a link from the page before.'),
  'unknown-kind': p('There is no such reduction.', 'Use one of the kinds listed.'),
  'refused-origin': p(
    'The request did not come from this computer’s own page.',
    'Open the address the service printed.',
  ),
  'too-many-requests': p('More requests than one person makes.', 'Wait a moment.'),
  'no-browser': p(
    'No browser for printing was found.',
    'Install Chrome, Chromium or Edge, or print the preview from your own browser.',
  ),
  'print-failed': p(
    'The printing browser stopped twice.',
    'Start the print again; if it stops again, restart the service.',
  ),
  'book-in-use': p('Another service has this book open.', 'Stop the other one, or give another data folder.'),
  'broken-journal': p(
    'The journal’s chain of hashes is broken.',
    'Restore the book from an export; nothing was repaired silently.',
  ),
  'bad-archive': p('The archive is damaged or not one of ours.', 'Export the book again.'),
  'newer-book': p('The book was written by a newer version of this program.', 'Update the program, then open it.'),
  'unwritable-file': p('The file could not be written.', 'Choose a folder that may be written to.'),
  'not-built': p('This version cannot do that yet.', 'Update the program; what it needs is kept until then.'),
  'port-in-use': p('Another program uses the port.', 'Stop it, or give another one with --port.'),
  'not-undoable': p('This cannot be undone as it stands.', 'Undo what came after it first, or make a new entry.'),
  'not-movable': p(
    'A rule of the order does not allow this move.',
    'Choose another outing, or move first what the reason names.',
  ),
  cancelled: p('The work was cancelled before it was done.', 'Start it again when it is wanted.'),
  'our-fault': p('The program made a mistake.', 'Nothing stored was changed. Try again; if it comes again, report it.'),
  'bad-catalogue': p('A test in the catalogue does not fit its schema.', 'Mend the field named.'),
  'bad-order': p('A test’s needs form a circle or name a product nothing makes.', 'Break the chain shown.'),

  // data that do not support a result
  'missing-channel': r(
    'A channel the reduction needs is not in the log.',
    'Name the channel in the channel table, or give the reading as written points.',
  ),
  'stuck-channel': r(
    'A channel the result rests on stood still.',
    'Look at the receiver and its link; fly it again with a log that moves.',
  ),
  'missing-configuration': r(
    'The airplane’s description lacks a value the method needs.',
    'Enter it on the Airplane page.',
  ),
  'no-segments': r(
    'No stretch of the log held the conditions.',
    'Look at the trace; set the segments by hand if one is there.',
  ),
  'too-few-points': r('Fewer points than the method has unknowns.', 'Fly more points.'),
  'bad-geometry': r('The legs do not span enough directions.', 'Fly a leg across the others.'),
  'implausible-values': r('The values do not fit the unit stated.', 'Correct the unit of the channel named.'),
  'out-of-domain': r('A value lies outside the range where the formula holds.', 'Check the unit and the channel.'),
  'outside-shown': r('The conditions lie outside what was measured.', 'Measure nearer to them first.'),
  'question-open': r('Something that must not be guessed is still open.', 'Answer the question.'),

  // remarks on values of a result
  'not-resolved': f('The data do not resolve this value.', 'Run longer or fly more points.'),
  'not-bracketed': f('The optimum lies at or beyond the flown ends.', 'Fly points beyond that end.'),
  regulated: f(
    'A thermostat or door was regulating: temperature says nothing of margin.',
    'Load the system until it is fully open.',
  ),
  'not-peaked': f(
    'The temperature was still rising when the climb ended.',
    'Climb on until it has fallen, or for five minutes past its highest.',
  ),
  'not-stabilised': f(
    'The temperature was still moving when the climb began.',
    'Hold power and speed until it moves less than 2 °F a minute, then climb.',
  ),
  'speed-not-held': f('The airspeed changed inside the climb.', 'Hold the climb speed.'),
  'bound-only': f('Only a bound is known.', 'Run longer.'),
  'assumed-calibration': f('The sensor’s accuracy was assumed.', 'Check the sensor and enter its accuracy.'),
  'assumed-repeatability': f('Run-to-run scatter was assumed.', 'Repeat the test.'),
  'assumed-value': f('A constant was assumed.', 'Enter the airplane’s own figure.'),
  'regime-unknown': f(
    'The thermostat’s temperatures are not known.',
    'Enter where it starts and where it is fully open.',
  ),
  'air-temperature-source': f('Which air temperature was used.', 'Log the air at the radiator inlet.'),
  'power-not-constant': f('Power changed inside the segment.', 'Hold the power.'),
  'lag-assumed': f('The sensor’s lag was assumed.', 'Measure the sensor’s lag.'),
  'slow-node': f(
    'A slow part of the heat path is not visible in the trace.',
    'Run one long hold in this configuration.',
  ),
  'limit-missing': f(
    'The airplane’s description has no limit for this: what rests on it is withheld.',
    'Enter the limit with its source on the Airplane page.',
  ),
  'limit-event': f('A healthy sensor read over the limit.', 'Stop and find out why.'),
  'correction-not-credited': f(
    'The test day was hotter than the reference; the negative correction is not credited.',
    'Nothing to mend.',
  ),
  extrapolated: f('The value lies beyond what was flown.', 'Fly nearer to it.'),
  'set-by-hand': f('A segment was set by hand.', 'Keep the reason with it.'),
  excluded: f('Data were left out.', 'Look at them.'),
  'channel-flagged': f('A channel used here carries quality flags.', 'Look at the quality strip.'),
  'comparison-missing': f('There is no matching run to compare with.', 'Run the other configuration on the same day.'),
  'data-rule': f('Fewer or shorter points than the rules for a published number.', 'Repeat with more.'),
  'geometry-warning': f(
    'The legs span few directions; the result is weak across them.',
    'Fly a leg across the others.',
  ),
  'wind-drift-not-separable': f('Too few legs to separate a drifting wind.', 'Fly more legs.'),
  'lone-run': f('A single run in one direction.', 'Fly the reciprocal heading.'),
  'outlier-leg': f('A leg stands apart from the others.', 'Look at it; drop it by hand with a reason, or repeat it.'),
  'fields-disagree': f(
    'Figures of the description do not fit each other, or leave less room than they seem to.',
    'Check each against its source; nothing was changed.',
  ),
  'method-note': f('A remark on the method used.', 'Nothing to mend.'),

  // remarks on a channel of a log
  gap: f('Rows are missing.', 'Nothing was filled in.'),
  'missing-values': f('Cells are empty or marked missing.', 'Look at the channel.'),
  stuck: f('The value stood still while others moved.', 'Check sensor and recorder.'),
  spike: f('A value no airplane can reach between two samples.', 'Check the wiring.'),
  saturated: f('The value sat at an end of its range.', 'Check the sensor’s range.'),
  disconnected: f('The value is what an open or shorted sensor gives.', 'Check the wiring.'),
  'non-numeric': f('Cells hold text where numbers were expected.', 'Look at the rows.'),
  'unit-not-stated': f('The file does not say the unit.', 'Confirm the unit in the channel table.'),
  'unit-contradictory': f('The unit stated does not fit the values.', 'Confirm the unit in the channel table.'),
  'implausible-unit': f('The values do not fit the unit.', 'Confirm the unit in the channel table.'),

  // remarks on a file
  midnight: f('The clock passed midnight.', 'The days were counted on.'),
  'no-date': f('The file has a time of day but no date.', 'Give the date in the map.'),
  'zone-unknown': f('The file does not say its zone.', 'Give the offset in the map.'),
  'date-ambiguous': f('Day and month cannot be told apart.', 'Say which comes first.'),
  'clock-jump': f('The clock was set while recording.', 'Rows are in the order of the file.'),
  'duplicate-timestamps': f('Several rows carry one time.', 'They were spread by the true rate.'),
  'rate-change': f('The sample rate changed.', 'Nothing to mend.'),
  'power-cycle': f('The recorder was switched off and on.', 'Segments do not cross it.'),
  'elapsed-reset': f('The elapsed time started again.', 'Segments do not cross it.'),
  'repeated-header': f('The header stands in the file again.', 'It was skipped.'),
  'truncated-last-line': f('The last line is cut.', 'It was left out.'),
  'nul-bytes': f('The file holds empty bytes.', 'They were left out.'),
  'ragged-rows': f('Rows differ in length.', 'Short rows were filled as missing.'),
  'duplicate-columns': f('Columns share a name.', 'They are told apart by a number.'),
  'formula-text': f('A cell starts like a spreadsheet formula.', 'It is kept as text.'),
  'unsafe-name': f('The file’s name holds a path or control characters.', 'Only its plain part is shown.'),
} as const satisfies Record<string, CodeEntry>;

export type Code = keyof typeof CODES;
export type CodeOf<K extends CodeKind> = { [C in Code]: (typeof CODES)[C]['kind'] extends K ? C : never }[Code];
