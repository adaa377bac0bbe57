-- The machines of an order after stock was drawn anew for it; where there are none, it has those that it was answered with.

CREATE TABLE given_machines (
  number   VARCHAR(20) NOT NULL REFERENCES quote (number),
  version  INTEGER NOT NULL,
  machines BYTEA NOT NULL,
  PRIMARY KEY (number, version)
);
