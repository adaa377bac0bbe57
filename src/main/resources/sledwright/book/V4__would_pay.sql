-- What a customer who declined would have paid for all machines, in minor units; not known where it is empty.

ALTER TABLE quote ADD COLUMN would_pay BIGINT;
