CREATE TABLE venue (
  name TEXT NOT NULL PRIMARY KEY,
  seq  INTEGER NOT NULL DEFAULT 0 CHECK (seq >= 0) -- number of its last change
) STRICT;

-- The records as they stand.
CREATE TABLE record (
  venue   TEXT NOT NULL REFERENCES venue (name),
  kind    TEXT NOT NULL,
  id      TEXT NOT NULL,
  version INTEGER NOT NULL CHECK (version >= 1),
  seq     INTEGER NOT NULL CHECK (seq >= 1), -- of its last change
  gone    INTEGER NOT NULL CHECK (gone IN (0, 1)),
  body    TEXT NOT NULL, -- JSON; empty if gone
  PRIMARY KEY (venue, kind, id)
) STRICT;

-- The log. Rows are only ever added.
CREATE TABLE change (
  venue   TEXT NOT NULL REFERENCES venue (name),
  seq     INTEGER NOT NULL CHECK (seq >= 1),
  at      TEXT NOT NULL,
  actor   TEXT NOT NULL,
  kind    TEXT NOT NULL,
  id      TEXT NOT NULL,
  version INTEGER NOT NULL CHECK (version >= 1),
  action  TEXT NOT NULL CHECK (action IN ('added', 'changed', 'removed', 'undone')),
  body    TEXT NOT NULL, -- the record from then on; empty if gone
  seal    TEXT NOT NULL,
  PRIMARY KEY (venue, seq),
  UNIQUE (venue, kind, id, version),
  FOREIGN KEY (venue, kind, id) REFERENCES record (venue, kind, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE TRIGGER change_stays BEFORE UPDATE ON change BEGIN SELECT RAISE(ABORT, 'the log only grows'); END;
CREATE TRIGGER change_remains BEFORE DELETE ON change BEGIN SELECT RAISE(ABORT, 'the log only grows'); END;
CREATE TRIGGER record_remains BEFORE DELETE ON record BEGIN SELECT RAISE(ABORT, 'records are marked as gone'); END;
