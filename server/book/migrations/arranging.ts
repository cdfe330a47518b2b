/** The program as a person works with it: its arrangement, what came of outings, own tests, tests left out. */

export const arranging = `
CREATE TABLE arrangement (
  entry    INTEGER PRIMARY KEY REFERENCES journal (seq),
  document TEXT REFERENCES document (sha256),
  because  TEXT NOT NULL,
  words    TEXT NOT NULL,
  again    TEXT NOT NULL,
  undoes   INTEGER
) STRICT;
CREATE TABLE outing_note (
  number INTEGER PRIMARY KEY,
  what   TEXT NOT NULL,
  outing TEXT NOT NULL,
  parts  TEXT NOT NULL,
  note   TEXT NOT NULL,
  away   INTEGER NOT NULL DEFAULT 0,
  entry  INTEGER NOT NULL REFERENCES journal (seq)
) STRICT;
CREATE TABLE outing_paper (
  entry   INTEGER PRIMARY KEY REFERENCES journal (seq),
  outings TEXT NOT NULL
) STRICT;
CREATE TABLE own_test (
  test     TEXT PRIMARY KEY,
  document TEXT REFERENCES document (sha256),
  entry    INTEGER NOT NULL REFERENCES journal (seq)
) STRICT;
CREATE TABLE left_out (
  test    TEXT PRIMARY KEY,
  out     INTEGER NOT NULL,
  reason  TEXT NOT NULL,
  instead TEXT NOT NULL,
  entry   INTEGER NOT NULL REFERENCES journal (seq)
) STRICT;
`;
