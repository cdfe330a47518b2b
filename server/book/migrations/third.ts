/** Shifts between two recorders that a person set. */

export const third = `
CREATE TABLE alignment (
  log     TEXT NOT NULL REFERENCES log (sha256),
  first   TEXT NOT NULL REFERENCES log (sha256),
  seconds REAL,
  entry   INTEGER NOT NULL REFERENCES journal (seq),
  PRIMARY KEY (log, first)
) STRICT;
`;
