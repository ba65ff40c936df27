CREATE TABLE venue (
  name TEXT COLLATE "C" NOT NULL PRIMARY KEY,
  seq  BIGINT NOT NULL DEFAULT 0 CHECK (seq >= 0) -- number of its last change
);

-- The records as they stand.
CREATE TABLE record (
  venue   TEXT COLLATE "C" NOT NULL REFERENCES venue (name),
  kind    TEXT COLLATE "C" NOT NULL,
  id      TEXT COLLATE "C" NOT NULL,
  version BIGINT NOT NULL CHECK (version >= 1),
  seq     BIGINT NOT NULL CHECK (seq >= 1), -- of its last change
  gone    INTEGER NOT NULL CHECK (gone IN (0, 1)),
  body    TEXT NOT NULL, -- JSON; empty if gone
  PRIMARY KEY (venue, kind, id)
);

-- The log. Rows are only ever added.
CREATE TABLE change (
  venue   TEXT COLLATE "C" NOT NULL REFERENCES venue (name),
  seq     BIGINT NOT NULL CHECK (seq >= 1),
  at      TEXT NOT NULL,
  actor   TEXT NOT NULL,
  kind    TEXT COLLATE "C" NOT NULL,
  id      TEXT COLLATE "C" NOT NULL,
  version BIGINT NOT NULL CHECK (version >= 1),
  action  TEXT NOT NULL CHECK (action IN ('added', 'changed', 'removed', 'undone')),
  body    TEXT NOT NULL, -- the record from then on; empty if gone
  seal    TEXT NOT NULL,
  PRIMARY KEY (venue, seq),
  UNIQUE (venue, kind, id, version),
  FOREIGN KEY (venue, kind, id) REFERENCES record (venue, kind, id) DEFERRABLE INITIALLY DEFERRED
);

CREATE FUNCTION only_grows() RETURNS trigger LANGUAGE plpgsql AS
  'BEGIN RAISE EXCEPTION ''the log only grows, and records are marked as gone''; END';
CREATE TRIGGER change_stays BEFORE UPDATE OR DELETE ON change FOR EACH ROW EXECUTE FUNCTION only_grows();
CREATE TRIGGER record_remains BEFORE DELETE ON record FOR EACH ROW EXECUTE FUNCTION only_grows();
