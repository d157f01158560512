-- question: What did one piece cost in a set or place setting, with the card and without?
-- param: retailer text none  only this chain or store, by id or part of its name
-- param: line text none  only this line, by id or part of its name
-- column: retailer  chain or store
-- column: line  line as this file prefers to call it
-- column: set  the set or place setting, as printed
-- column: pieces  how many pieces it has
-- column: serves  how many it serves, where that is printed
-- column: price  lowest price of the set that the advert prints for anyone or with the card
-- column: price_without_card  what it cost without the card
-- column: per_piece  price divided by pieces
-- column: per_piece_without_card  the same without the card
-- column: per_place  price divided by the places it serves; a place setting serves one
-- column: seen_from  first day the advert may have appeared
-- column: check  what is wrong with the piece count, where stated and listed pieces disagree
-- column: cited  scan and box
SELECT
    p.retailer, p.line, p.item AS "set", p.pieces,
    coalesce(o.service_for, CASE WHEN p.piece_or_set = 'place_setting' THEN 1 END) AS serves,
    least(p.price, p.cardholder_price, p.conditional_price) AS price, coalesce(p.price_without_card, p.former_price) AS price_without_card,
    round(least(p.price, p.cardholder_price, p.conditional_price) / p.pieces, 3)::DECIMAL(12, 3) AS per_piece,
    round(coalesce(p.price_without_card, p.former_price) / p.pieces, 3)::DECIMAL(12, 3) AS per_piece_without_card,
    round(least(p.price, p.cardholder_price, p.conditional_price)
        / coalesce(o.service_for, CASE WHEN p.piece_or_set = 'place_setting' THEN 1 END), 3)::DECIMAL(12, 3) AS per_place,
    p.seen_from, o.composition_check AS "check", p.file || ' @ ' || p.box AS cited
FROM priced_offers p JOIN offers o USING (offer_id)
WHERE p.pieces >= 4 AND (p.piece_or_set = 'place_setting' OR p.piece_or_set = 'set' OR starts_with(p.piece_or_set, 'set:'))
  AND least(p.price, p.cardholder_price, p.conditional_price) IS NOT NULL
  AND ($retailer IS NULL OR p.retailer_id = $retailer OR contains(lower(p.retailer), lower($retailer)))
  AND ($line IS NULL OR p.line_id = $line OR contains(lower(p.line), lower($line)))
ORDER BY p.retailer, p.line, p.pieces, seen_from NULLS LAST, price, cited
