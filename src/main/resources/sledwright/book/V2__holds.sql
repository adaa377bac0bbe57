-- Units of lots that a quote keeps from others: until a day, without end once it was accepted, and gone from the shelf from the day on which they were picked.

CREATE TABLE holding (
  number  VARCHAR(20) NOT NULL REFERENCES quote (number),
  sku     TEXT NOT NULL,
  lot     TEXT NOT NULL,
  units   INTEGER NOT NULL,
  until   VARCHAR(10),
  gone_on VARCHAR(10),
  PRIMARY KEY (number, sku, lot)
);
CREATE INDEX holding_by_lot ON holding (sku, lot);

-- Whoever is about to take units of a lot has its row until the transaction ends.
CREATE TABLE lot_turn (
  sku  TEXT NOT NULL,
  lot  TEXT NOT NULL,
  turn BIGINT NOT NULL,
  PRIMARY KEY (sku, lot)
);
