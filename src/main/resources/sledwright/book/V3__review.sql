-- Open quotes against a catalogue: a row for each, taken by whoever works on it. One that was taken long ago and has no outcome comes back.

CREATE TABLE review (
  run      VARCHAR(80) NOT NULL,
  number   VARCHAR(20) NOT NULL,
  version  INTEGER NOT NULL,
  taken_at BIGINT NOT NULL,
  outcome  VARCHAR(20),
  price    BIGINT,
  detail   TEXT NOT NULL,
  PRIMARY KEY (run, number)
);
