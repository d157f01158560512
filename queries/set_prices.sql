-- question: Which chain offered which set at what price, with the card and without?
-- param: retailer text none  only this chain or store, by id or part of its name
-- param: line text none  only this line, by id or part of its name
-- param: from_year integer none  only from this year on
-- param: to_year integer none  only up to this year
-- column: retailer  chain or store that placed the advert
-- column: line  line (pattern) as this file prefers to call it
-- column: piece_or_set  piece or set that was offered
-- column: pieces  how many pieces it has
-- column: price  what anyone paid
-- column: cardholder_price  what a holder of the store's card paid
-- column: price_without_card  what the advert says it cost without the card
-- column: saving_percent  what the card saved, in percent of the price without
-- column: adverts  how many adverts say so
-- column: first_seen  first day any of them may have appeared
-- column: last_seen  last day any of them may have appeared
-- column: cited  one of them: scan and box
WITH asked AS (
    SELECT *
    FROM priced_offers
    WHERE (piece_or_set IS NOT NULL OR line IS NOT NULL)
      AND ($retailer IS NULL OR retailer_id = $retailer OR contains(lower(retailer), lower($retailer)))
      AND ($line IS NULL OR line_id = $line OR contains(lower(line), lower($line)))
), told AS (
    SELECT
        retailer, line, coalesce(piece_or_set, lower(item)) AS piece_or_set, pieces, price, cardholder_price, price_without_card,
        count(DISTINCT advert_id) AS adverts, min(seen_from) AS first_seen, max(seen_to) AS last_seen,
        min({'day': coalesce(seen_from, DATE '9999-12-31'), 'file': file, 'box': box}) AS earliest
    FROM asked
    WHERE ($from_year IS NULL OR year(seen_to) >= $from_year) AND ($to_year IS NULL OR year(seen_from) <= $to_year)
      AND coalesce(price, cardholder_price, price_without_card) IS NOT NULL
    GROUP BY ALL
)
SELECT
    retailer, line, piece_or_set, pieces, price, cardholder_price, price_without_card,
    round(100 * (coalesce(price_without_card, price) - cardholder_price)
        / coalesce(price_without_card, price), 1)::DECIMAL(6, 1) AS saving_percent,
    adverts, first_seen, last_seen, earliest.file || ' @ ' || earliest.box AS cited
FROM told
ORDER BY retailer, line, pieces DESC NULLS LAST, piece_or_set, price, cardholder_price
