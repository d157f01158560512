-- question: What does a service cost built piece by piece by the card over the weeks, against the boxed set?
-- param: people integer 8  how many places
-- param: retailer text none  only this chain, by id or part of its name
-- param: line text none  only this line, by id or part of its name
-- column: retailer  chain or store
-- column: line  line as this file prefers to call it
-- column: setting  the pieces of one place that were sold singly, with the median card price of each
-- column: per_place  what one place costs by the card
-- column: per_place_without_card  the same without the card, from the pieces that print both prices
-- column: service  what the service costs by the card
-- column: service_without_card  the same without the card
-- column: weeks  in how many different weeks pieces of the setting were offered
-- column: boxed_set  the cheapest boxed set of the line for as many or more
-- column: boxed_price  what the boxed set cost
-- column: boxed_per_piece  its price by the piece
-- column: by_the_card_per_piece  the service's price by the piece
WITH single AS (
    SELECT
        retailer, line, piece_or_set, pieces, cardholder_price, coalesce(price_without_card, price) AS without_card,
        date_trunc('week', seen_from) AS week
    FROM priced_offers
    WHERE cardholder_price IS NOT NULL AND line IS NOT NULL
      AND piece_or_set IN ('dinner_plate', 'luncheon_plate', 'salad_plate', 'dessert_plate', 'bread_and_butter', 'cup', 'saucer',
                           'cup_and_saucer', 'fruit_dish', 'cereal_dish', 'soup_plate', 'coupe_soup')
      AND ($retailer IS NULL OR retailer_id = $retailer OR contains(lower(retailer), lower($retailer)))
      AND ($line IS NULL OR line_id = $line OR contains(lower(line), lower($line)))
),
piece_prices AS (
    SELECT
        retailer, line, piece_or_set, any_value(pieces) AS pieces, quantile_disc(cardholder_price, 0.5) AS card,
        quantile_disc(without_card, 0.5) AS without_card
    FROM single GROUP BY retailer, line, piece_or_set
),
-- a cup and saucer sold together counts only where they were not sold singly
setting_pieces AS (
    SELECT p.* FROM piece_prices p
    WHERE p.piece_or_set <> 'cup_and_saucer' OR NOT EXISTS (
        SELECT 1 FROM piece_prices q WHERE q.retailer IS NOT DISTINCT FROM p.retailer AND q.line = p.line AND q.piece_or_set = 'cup'
    )
),
settings AS (
    SELECT
        retailer, line, string_agg(piece_or_set || ' ' || card, ', ' ORDER BY piece_or_set) AS setting, sum(card) AS per_place,
        sum(without_card) AS per_place_without_card, sum(coalesce(pieces, 1)) AS setting_size
    FROM setting_pieces GROUP BY retailer, line HAVING count(*) >= 3
),
weeks AS (SELECT retailer, line, count(DISTINCT week) AS weeks FROM single GROUP BY retailer, line),
boxed AS (
    SELECT p.line, p.retailer, p.item, p.pieces, least(p.price, p.cardholder_price, p.conditional_price) AS boxed_price
    FROM priced_offers p JOIN offers o USING (offer_id)
    WHERE p.line IS NOT NULL AND p.pieces >= 3 * $people AND least(p.price, p.cardholder_price, p.conditional_price) IS NOT NULL
    QUALIFY row_number() OVER (PARTITION BY p.line ORDER BY boxed_price, p.pieces, p.retailer, p.offer_id) = 1
)
SELECT
    s.retailer, s.line, s.setting, s.per_place, s.per_place_without_card, s.per_place * $people AS service,
    s.per_place_without_card * $people AS service_without_card, w.weeks,
    coalesce(b.retailer || ': ', '') || b.item AS boxed_set, b.boxed_price,
    round(b.boxed_price / b.pieces, 3)::DECIMAL(12, 3) AS boxed_per_piece,
    round(s.per_place / s.setting_size, 3)::DECIMAL(12, 3) AS by_the_card_per_piece
FROM settings s JOIN weeks w ON w.line = s.line AND w.retailer IS NOT DISTINCT FROM s.retailer LEFT JOIN boxed b ON b.line = s.line
ORDER BY s.retailer, s.line
