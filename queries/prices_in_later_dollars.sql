-- question: What would a line's prices be in dollars of a later year?
-- note: By the consumer price index (U.S. Bureau of Labor Statistics, all items, U.S. city average). This compares what money bought; it is no appraisal.
-- param: line text none  only this line, by id or part of its name
-- param: year integer 2020  dollars of which year
-- column: day  first day the price was good, or the paper's date
-- column: retailer  chain or store
-- column: line  line as this file prefers to call it
-- column: piece_or_set  piece or set
-- column: pieces  pieces of a set
-- column: price  lowest price anyone pays, else with the card
-- column: in_later_dollars  the same in dollars of the year asked for
-- column: per_piece_later  the same for one piece
-- column: file  scan
WITH dated AS (
    SELECT *, seen_from AS day, coalesce(price, cardholder_price, conditional_price) AS asked
    FROM priced_offers
    WHERE ($line IS NULL OR line_id = $line OR contains(lower(line), lower($line))) AND line IS NOT NULL AND currency = 'USD'
), later AS (
    SELECT avg(all_items) AS level FROM consumer_prices WHERE year = $year
)
SELECT
    d.day, d.retailer, d.line, coalesce(d.piece_or_set, lower(d.item)) AS piece_or_set, d.pieces, d.asked AS price,
    round(d.asked * later.level / c.all_items, 2)::DECIMAL(12, 2) AS in_later_dollars,
    round(d.asked * later.level / c.all_items / nullif(d.pieces, 0), 2)::DECIMAL(12, 2) AS per_piece_later, d.file
FROM dated d, later
JOIN consumer_prices c ON c.year = year(d.day) AND c.month = month(d.day)
WHERE d.asked IS NOT NULL
ORDER BY d.day, d.retailer, d.line, piece_or_set, d.file
