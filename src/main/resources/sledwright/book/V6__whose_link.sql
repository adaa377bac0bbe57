-- Whose link it is, so that it is among what is kept of that customer; empty where nobody said.

ALTER TABLE customer_link ADD COLUMN customer TEXT NOT NULL DEFAULT '';
