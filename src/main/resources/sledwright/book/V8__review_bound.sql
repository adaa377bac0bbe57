-- What a request costs at least today, in minor units: the price where that is proved to be the best; none where nothing is known.

ALTER TABLE review ADD COLUMN least BIGINT;
UPDATE review SET least = price;
