-- What all who have the venue open share for a while; no part of its log.
CREATE TABLE ephemeral (
  venue TEXT COLLATE "C" NOT NULL REFERENCES venue (name),
  kind  TEXT COLLATE "C" NOT NULL,
  id    TEXT COLLATE "C" NOT NULL,
  until BIGINT NOT NULL, -- milliseconds since 1970, UTC
  body  TEXT NOT NULL,
  PRIMARY KEY (venue, kind, id)
);
