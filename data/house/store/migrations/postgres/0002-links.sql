-- Which records point to which, so that the engine holds them together.
CREATE TABLE link (
  venue   TEXT COLLATE "C" NOT NULL,
  kind    TEXT COLLATE "C" NOT NULL,
  id      TEXT COLLATE "C" NOT NULL,
  to_kind TEXT COLLATE "C" NOT NULL,
  to_id   TEXT COLLATE "C" NOT NULL,
  PRIMARY KEY (venue, kind, id, to_kind, to_id),
  FOREIGN KEY (venue, kind, id) REFERENCES record (venue, kind, id) DEFERRABLE INITIALLY DEFERRED,
  FOREIGN KEY (venue, to_kind, to_id) REFERENCES record (venue, kind, id) DEFERRABLE INITIALLY DEFERRED
);

CREATE INDEX link_to ON link (venue, to_kind, to_id);

INSERT INTO link (venue, kind, id, to_kind, to_id)
SELECT venue, kind, id, 'spec', body::json ->> 'spec' FROM record
WHERE gone = 0 AND kind IN ('cover', 'right');
