-- Requests that a customer may look at and change within limits, by an address that nobody can guess; of the address only a digest is kept.

CREATE TABLE customer_link (
  digest  VARCHAR(43) NOT NULL PRIMARY KEY,
  name    TEXT NOT NULL,
  request TEXT NOT NULL,
  leeway  TEXT NOT NULL,
  until   VARCHAR(10) NOT NULL,
  made_by TEXT NOT NULL,
  made_at VARCHAR(40) NOT NULL
);
