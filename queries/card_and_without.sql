-- question: What did each piece and set of a line cost with the store's card and without, at its lowest?
-- param: line text none  only this line, by id or name
-- param: retailer text none  only this chain, by id or name
-- column: retailer  the chain
-- column: line  the line, by the name this file prefers
-- column: piece  the piece or set
-- column: pieces  number of pieces, where stated or listed
-- column: cardholder_price  lowest price in dollars with the card
-- column: price_without_card  lowest price in dollars without the card
-- column: saving_percent  what the card saved, in percent of the price without it
-- column: adverts  adverts in which both prices were read
SELECT
    retailer,
    line,
    coalesce(piece_or_set, item) AS piece,
    max(pieces) AS pieces,
    min(cardholder_price) AS cardholder_price,
    min(price_without_card) AS price_without_card,
    round(100 * (1 - min(cardholder_price) / min(price_without_card)), 1) AS saving_percent,
    count(DISTINCT advert_id) AS adverts
FROM priced_offers
WHERE cardholder_price IS NOT NULL
    AND price_without_card IS NOT NULL
    AND ($line IS NULL OR line_id = $line OR lower(line) = lower($line))
    AND ($retailer IS NULL OR retailer_id = $retailer OR lower(retailer) = lower($retailer))
GROUP BY ALL
ORDER BY retailer, line, price_without_card DESC, piece
