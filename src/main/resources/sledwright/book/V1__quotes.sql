-- Days and moments are text in the form of ISO 8601, amounts whole minor units. Both databases know these words: what SQLite does not know of types it takes as it comes.

CREATE TABLE counter (
  name  VARCHAR(40) PRIMARY KEY,
  value BIGINT NOT NULL
);

CREATE TABLE customer (
  id     BIGINT PRIMARY KEY,
  name   TEXT NOT NULL UNIQUE,
  erased INTEGER NOT NULL DEFAULT 0
);

CREATE TABLE quote (
  number      VARCHAR(20) PRIMARY KEY,
  customer    BIGINT NOT NULL REFERENCES customer (id),
  state       VARCHAR(20) NOT NULL,
  version     INTEGER NOT NULL,
  chosen      INTEGER NOT NULL,
  valid_until VARCHAR(10),
  note        TEXT NOT NULL,
  reason      TEXT NOT NULL,
  made_on     VARCHAR(10) NOT NULL,
  words       TEXT NOT NULL
);
CREATE INDEX quote_by_state ON quote (state, valid_until);
CREATE INDEX quote_by_customer ON quote (customer);

CREATE TABLE quote_version (
  number      VARCHAR(20) NOT NULL REFERENCES quote (number),
  version     INTEGER NOT NULL,
  made_on     VARCHAR(10) NOT NULL,
  made_by     TEXT NOT NULL,
  sent_on     VARCHAR(10),
  name        TEXT NOT NULL,
  request     BYTEA NOT NULL,
  sets        TEXT NOT NULL,
  catalog     TEXT NOT NULL,
  digest      VARCHAR(64) NOT NULL,
  program     TEXT NOT NULL,
  priced_on   VARCHAR(10) NOT NULL,
  currency    VARCHAR(3) NOT NULL,
  status      VARCHAR(20) NOT NULL,
  machines    INTEGER NOT NULL,
  valid_until VARCHAR(10),
  PRIMARY KEY (number, version)
);

CREATE TABLE quote_option (
  number     VARCHAR(20) NOT NULL,
  version    INTEGER NOT NULL,
  place      INTEGER NOT NULL,
  price      BIGINT NOT NULL,
  platform   TEXT NOT NULL,
  processor  TEXT NOT NULL,
  processors INTEGER NOT NULL,
  cores      INTEGER NOT NULL,
  usable_gb  TEXT NOT NULL,
  bandwidth  TEXT NOT NULL,
  throughput TEXT NOT NULL,
  load_w     TEXT NOT NULL,
  lead_days  INTEGER NOT NULL,
  PRIMARY KEY (number, version, place),
  FOREIGN KEY (number, version) REFERENCES quote_version (number, version)
);

CREATE TABLE quote_pick (
  number     VARCHAR(20) NOT NULL,
  version    INTEGER NOT NULL,
  place      INTEGER NOT NULL,
  sku        TEXT NOT NULL,
  lot        TEXT NOT NULL,
  supplier   TEXT NOT NULL,
  units      INTEGER NOT NULL,
  unit_price BIGINT NOT NULL,
  PRIMARY KEY (number, version, place, sku, lot),
  FOREIGN KEY (number, version) REFERENCES quote_version (number, version)
);
CREATE INDEX quote_pick_by_sku ON quote_pick (sku);

CREATE TABLE quote_document (
  number  VARCHAR(20) NOT NULL,
  version INTEGER NOT NULL,
  kind    VARCHAR(20) NOT NULL,
  content BYTEA NOT NULL,
  PRIMARY KEY (number, version, kind),
  FOREIGN KEY (number, version) REFERENCES quote_version (number, version)
);

CREATE TABLE history (
  entry   BIGINT PRIMARY KEY,
  at      VARCHAR(40) NOT NULL,
  who     TEXT NOT NULL,
  number  VARCHAR(20) NOT NULL,
  version INTEGER NOT NULL,
  step    VARCHAR(20) NOT NULL,
  detail  TEXT NOT NULL
);
CREATE INDEX history_by_number ON history (number);

${keep_history}
