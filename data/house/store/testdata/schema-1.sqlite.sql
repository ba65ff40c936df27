-- A house as schema 1 kept it, for SQLite.
PRAGMA application_id = 1129334867;
PRAGMA user_version = 1;

BEGIN;

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

INSERT INTO venue VALUES ('house', 9);
INSERT INTO record VALUES ('house', 'bottle', 'navy-gin-1', 2, 8, 0, '{"id":"navy-gin-1","name":"Navy gin, the blue cap","ingredient":"london-dry-gin","abv_pct":43.1,"price":24.9,"currency":"EUR","size_ml":700,"stock":1}');
INSERT INTO record VALUES ('house', 'spec', 'halyard-sour', 1, 2, 0, '{"id":"halyard-sour","name":"Halyard Sour","method":"shake","service":"up","pours":[{"ingredient":"london-dry-gin","amount":2,"unit":"oz"},{"ingredient":"lemon-juice","amount":0.75,"unit":"oz"},{"ingredient":"simple-syrup","amount":0.5,"unit":"oz"}]}');
INSERT INTO record VALUES ('house', 'made', 'halyard-oleo', 1, 3, 0, '{"id":"halyard-oleo","name":"Halyard oleo","aliases":["oleo of the house"],"class":"cordial","parts":[{"ingredient":"granulated-sugar","amount":500,"unit":"g"},{"ingredient":"lemon-juice","amount":300,"unit":"ml"},{"ingredient":"water","amount":300,"unit":"ml"}],"yield_ml":900,"method":"Leave overnight.\nStrain.","brix":48.5,"keeps_days":7}');
INSERT INTO record VALUES ('house', 'out', 'lime-juice', 2, 9, 1, '');
INSERT INTO record VALUES ('house', 'cover', 'cover-a', 1, 5, 0, '{"id":"cover-a","at":"2024-05-06T12:00:00Z","spec":"halyard-sour","spec_version":1,"missing":"simple-syrup","served":[{"ingredient":"london-dry-gin","amount":2,"unit":"oz"},{"ingredient":"honey-syrup","amount":0.5,"unit":"oz"}],"verdict":"kept","score":7.5,"taster":"bo"}');
INSERT INTO record VALUES ('house', 'training', 'training-a', 1, 6, 0, '{"id":"training-a","at":"2024-05-06T12:00:00Z","person":"bo","drill":"acids","question":"which is malic?","wanted":"b","given":"b","right":true,"score":1}');
INSERT INTO record VALUES ('house', 'right', 'halyard-sour', 1, 7, 0, '{"spec":"halyard-sour","spec_version":1,"note":"as we like it"}');
INSERT INTO change VALUES ('house', 1, '2024-05-06T12:00:00Z', 'ana', 'bottle', 'navy-gin-1', 1, 'added', '{"id":"navy-gin-1","name":"Navy gin, the blue cap","ingredient":"london-dry-gin","abv_pct":43.1,"price":24.9,"currency":"EUR","size_ml":700,"stock":2.5}', '6fe2a75fd2da909f274a41d787c6e859');
INSERT INTO change VALUES ('house', 2, '2024-05-06T12:00:00Z', 'ana', 'spec', 'halyard-sour', 1, 'added', '{"id":"halyard-sour","name":"Halyard Sour","method":"shake","service":"up","pours":[{"ingredient":"london-dry-gin","amount":2,"unit":"oz"},{"ingredient":"lemon-juice","amount":0.75,"unit":"oz"},{"ingredient":"simple-syrup","amount":0.5,"unit":"oz"}]}', '83661fd7e21d32ecc71b48af4f981b8a');
INSERT INTO change VALUES ('house', 3, '2024-05-06T12:00:00Z', 'ana', 'made', 'halyard-oleo', 1, 'added', '{"id":"halyard-oleo","name":"Halyard oleo","aliases":["oleo of the house"],"class":"cordial","parts":[{"ingredient":"granulated-sugar","amount":500,"unit":"g"},{"ingredient":"lemon-juice","amount":300,"unit":"ml"},{"ingredient":"water","amount":300,"unit":"ml"}],"yield_ml":900,"method":"Leave overnight.\nStrain.","brix":48.5,"keeps_days":7}', '9cb7746e766bf85fb172fe8e44c4fb14');
INSERT INTO change VALUES ('house', 4, '2024-05-06T12:00:00Z', 'ana', 'out', 'lime-juice', 1, 'added', '{"ingredient":"lime-juice","since":"2024-05-06T12:00:00Z","note":"late delivery"}', '3accef8838c8c0e3a662f63d7740eee5');
INSERT INTO change VALUES ('house', 5, '2024-05-06T12:00:00Z', 'ana', 'cover', 'cover-a', 1, 'added', '{"id":"cover-a","at":"2024-05-06T12:00:00Z","spec":"halyard-sour","spec_version":1,"missing":"simple-syrup","served":[{"ingredient":"london-dry-gin","amount":2,"unit":"oz"},{"ingredient":"honey-syrup","amount":0.5,"unit":"oz"}],"verdict":"kept","score":7.5,"taster":"bo"}', '2798c8751f898f85ad9064f69d6f96a8');
INSERT INTO change VALUES ('house', 6, '2024-05-06T12:00:00Z', 'ana', 'training', 'training-a', 1, 'added', '{"id":"training-a","at":"2024-05-06T12:00:00Z","person":"bo","drill":"acids","question":"which is malic?","wanted":"b","given":"b","right":true,"score":1}', '9ce1e4664824be43a802830390f71e21');
INSERT INTO change VALUES ('house', 7, '2024-05-06T12:00:00Z', 'ana', 'right', 'halyard-sour', 1, 'added', '{"spec":"halyard-sour","spec_version":1,"note":"as we like it"}', 'bdc793707cfeb19146c36e5194b39a00');
INSERT INTO change VALUES ('house', 8, '2024-05-06T12:00:00Z', 'ana', 'bottle', 'navy-gin-1', 2, 'changed', '{"id":"navy-gin-1","name":"Navy gin, the blue cap","ingredient":"london-dry-gin","abv_pct":43.1,"price":24.9,"currency":"EUR","size_ml":700,"stock":1}', '1e3ba4b2bc71942faa986765aa27ab30');
INSERT INTO change VALUES ('house', 9, '2024-05-06T12:00:00Z', 'ana', 'out', 'lime-juice', 2, 'removed', '', 'e5ecdb8bc94dbc9ba3c719df4e466518');

COMMIT;
