-- question: What did a promotion offer week by week, with the card and without?
-- param: retailer text none  only this chain or store, by id or name
-- param: line text none  only this line, by id or name
-- column: week  first day on which the prices held, or the day of the paper
-- column: retailer  the chain or store
-- column: line  the line, by the name this file prefers
-- column: piece  the piece or set
-- column: cardholder_price  dollars with the store's card
-- column: price_without_card  dollars without the card
-- column: price  dollars where everyone pays the same
-- column: file  the scan that proves it
-- column: offer_id  the offer, for adminer show
SELECT
    seen_from AS week,
    retailer,
    line,
    coalesce(piece_or_set, item) AS piece,
    cardholder_price,
    price_without_card,
    price,
    file,
    offer_id
FROM priced_offers
WHERE line IS NOT NULL
    AND seen_from IS NOT NULL
    AND ($retailer IS NULL OR retailer_id = $retailer OR lower(retailer) = lower($retailer))
    AND ($line IS NULL OR line_id = $line OR lower(line) = lower($line))
ORDER BY week, retailer, line, piece, offer_id
