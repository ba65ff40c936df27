-- What all who have the venue open share for a while; no part of its log.
CREATE TABLE ephemeral (
  venue TEXT NOT NULL REFERENCES venue (name),
  kind  TEXT NOT NULL,
  id    TEXT NOT NULL,
  until INTEGER NOT NULL, -- milliseconds since 1970, UTC
  body  TEXT NOT NULL,
  PRIMARY KEY (venue, kind, id)
) STRICT;
