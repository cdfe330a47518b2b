/** Cards as they were printed, and what was written into their boxes. */

export const second = `
ALTER TABLE printed ADD COLUMN documents TEXT NOT NULL DEFAULT '[]';
CREATE TABLE written (
  number   INTEGER PRIMARY KEY,
  test     TEXT NOT NULL,
  document TEXT NOT NULL REFERENCES document (sha256),
  paper    TEXT NOT NULL,
  boxes    TEXT NOT NULL,
  away     INTEGER NOT NULL DEFAULT 0,
  changed  INTEGER NOT NULL REFERENCES journal (seq),
  entry    INTEGER NOT NULL REFERENCES journal (seq)
) STRICT;
`;
