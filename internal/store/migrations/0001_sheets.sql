-- Sheets: machines, people, rooms and plans as their owners wrote them.
-- Times are RFC 3339 in UTC. Ids are made by the program.
CREATE TABLE sheet (
  id       TEXT PRIMARY KEY,
  kind     TEXT NOT NULL,              -- machine, person, room, plan
  name     TEXT NOT NULL,              -- as the newest readable text says
  revision INTEGER NOT NULL,           -- the newest number in revision
  removed  INTEGER NOT NULL DEFAULT 0, -- 1: out of sight, can be brought back
  demo     TEXT NOT NULL DEFAULT ''    -- its file in the demo room, else empty
) STRICT;

-- Every state a sheet has had. Rows are only ever added: undoing adds a row
-- with the text of the row it goes back to.
CREATE TABLE revision (
  sheet  TEXT NOT NULL REFERENCES sheet (id) ON DELETE CASCADE,
  number INTEGER NOT NULL,             -- from 1
  saved  TEXT NOT NULL,
  what   TEXT NOT NULL,                -- created, saved, changed, undone, redone, removed, brought back, imported, restored
  text   TEXT NOT NULL,                -- YAML, byte for byte
  undo   INTEGER,                      -- number that undoing goes back to; null at the beginning
  redo   INTEGER,                      -- number whose text redoing brings again; null if nothing was undone
  undos  INTEGER NOT NULL,             -- steps that can be undone from here
  redos  INTEGER NOT NULL,
  PRIMARY KEY (sheet, number)
) STRICT;

-- Photos by their own SHA-256, lower-case hexadecimal.
CREATE TABLE photo (
  id     TEXT PRIMARY KEY,
  type   TEXT NOT NULL,                -- image/jpeg or image/png
  width  INTEGER NOT NULL,             -- pixels
  height INTEGER NOT NULL,
  added  TEXT NOT NULL,
  data   BLOB NOT NULL
) STRICT;

-- The photo behind a machine's drawing, and how it was surveyed (JSON).
CREATE TABLE backdrop (
  sheet  TEXT PRIMARY KEY REFERENCES sheet (id) ON DELETE CASCADE,
  photo  TEXT NOT NULL REFERENCES photo (id),
  survey TEXT NOT NULL
) STRICT;

-- Forces read off a scale at a machine, to be set beside the computed curve.
CREATE TABLE reading (
  sheet    TEXT NOT NULL REFERENCES sheet (id) ON DELETE CASCADE,
  number   INTEGER NOT NULL,           -- from 1, in the order given
  travel   REAL NOT NULL,              -- m along the contact's path from the start
  force    REAL NOT NULL,              -- N along the path
  plus     REAL NOT NULL,              -- N, ±; 0 if none is known
  settings TEXT NOT NULL,              -- JSON: list of {setting, value} it was read with
  note     TEXT NOT NULL,
  PRIMARY KEY (sheet, number)
) STRICT;

-- Results that took seconds, by the SHA-256 of all they were computed from.
-- Another engine's are computed again.
CREATE TABLE evaluation (
  input  TEXT PRIMARY KEY,
  engine TEXT NOT NULL,
  made   TEXT NOT NULL,
  result BLOB NOT NULL                 -- JSON
) STRICT;

-- What has been done once.
CREATE TABLE done (what TEXT PRIMARY KEY, at TEXT NOT NULL) STRICT;
