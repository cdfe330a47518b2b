/** The first schema: the journal, the documents it names by hash, and the state that follows from it. */

export const first = `
CREATE TABLE journal (
  seq     INTEGER PRIMARY KEY,
  at      TEXT NOT NULL,
  who     TEXT NOT NULL,
  why     TEXT NOT NULL,
  subject TEXT NOT NULL,
  data    TEXT NOT NULL,
  prev    TEXT NOT NULL,
  hash    TEXT NOT NULL UNIQUE
) STRICT;
CREATE INDEX journal_subject ON journal (subject, seq);
CREATE TRIGGER journal_keeps BEFORE UPDATE ON journal BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER journal_stays BEFORE DELETE ON journal BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TABLE document (
  sha256 TEXT PRIMARY KEY,
  json   TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE book (
  uid  TEXT PRIMARY KEY,
  demo INTEGER NOT NULL,
  entry INTEGER NOT NULL REFERENCES journal (seq)
) STRICT;
CREATE TABLE revision (
  number   INTEGER PRIMARY KEY,
  document TEXT NOT NULL REFERENCES document (sha256),
  undoes   INTEGER,
  entry    INTEGER NOT NULL REFERENCES journal (seq)
) STRICT;
CREATE TABLE log (
  sha256     TEXT PRIMARY KEY,
  name       TEXT NOT NULL UNIQUE,
  given_name TEXT NOT NULL,
  size       INTEGER NOT NULL,
  layout     TEXT,
  map        TEXT,
  mapped     INTEGER REFERENCES journal (seq),
  away       INTEGER NOT NULL DEFAULT 0,
  entry      INTEGER NOT NULL REFERENCES journal (seq)
) STRICT;
CREATE INDEX log_layout ON log (layout, mapped);
CREATE TABLE result (
  number    INTEGER PRIMARY KEY,
  reduction TEXT NOT NULL,
  document  TEXT NOT NULL REFERENCES document (sha256),
  input     TEXT NOT NULL,
  reads     TEXT NOT NULL,
  decision  TEXT NOT NULL DEFAULT 'proposed',
  note      TEXT NOT NULL DEFAULT '',
  decided   INTEGER REFERENCES journal (seq),
  away      INTEGER NOT NULL DEFAULT 0,
  entry     INTEGER NOT NULL REFERENCES journal (seq)
) STRICT;
CREATE TABLE mark (
  test  TEXT PRIMARY KEY,
  mark  TEXT NOT NULL,
  note  TEXT NOT NULL,
  entry INTEGER NOT NULL REFERENCES journal (seq)
) STRICT;
CREATE TABLE printed (
  entry    INTEGER PRIMARY KEY REFERENCES journal (seq),
  cards    TEXT NOT NULL,
  paper    TEXT NOT NULL,
  revision INTEGER NOT NULL
) STRICT;
CREATE TABLE squawk (
  number  INTEGER PRIMARY KEY,
  text    TEXT NOT NULL,
  open    INTEGER NOT NULL DEFAULT 1,
  how     TEXT NOT NULL DEFAULT '',
  settled INTEGER REFERENCES journal (seq),
  away    INTEGER NOT NULL DEFAULT 0,
  entry   INTEGER NOT NULL REFERENCES journal (seq)
) STRICT;
CREATE TABLE hours (
  number         INTEGER PRIMARY KEY,
  date           TEXT NOT NULL,
  outing         TEXT NOT NULL,
  flight_seconds REAL NOT NULL,
  engine_seconds REAL NOT NULL,
  landings       INTEGER NOT NULL,
  note           TEXT NOT NULL,
  away           INTEGER NOT NULL DEFAULT 0,
  entry          INTEGER NOT NULL REFERENCES journal (seq)
) STRICT;
`;
