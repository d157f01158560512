-- question: How much did the store's card save, by chain and set?
-- param: retailer text none  only this chain or store, by id or part of its name
-- column: retailer  chain or store
-- column: line  line as this file prefers to call it
-- column: piece_or_set  piece or set
-- column: offers  how many offers print both prices
-- column: cardholder_price  median price with the card
-- column: price_without_card  median price without
-- column: saving  median saving in the currency of the offers
-- column: saving_percent  median saving in percent of the price without the card
-- column: currency  currency of the prices
WITH paired AS (
    SELECT *, coalesce(price_without_card, price) AS without_card FROM priced_offers
    WHERE cardholder_price IS NOT NULL AND coalesce(price_without_card, price) > 0
      AND ($retailer IS NULL OR retailer_id = $retailer OR contains(lower(retailer), lower($retailer)))
)
SELECT
    retailer, line, coalesce(piece_or_set, lower(item)) AS piece_or_set, count(*) AS offers,
    quantile_disc(cardholder_price, 0.5) AS cardholder_price, quantile_disc(without_card, 0.5) AS price_without_card,
    quantile_disc(without_card - cardholder_price, 0.5) AS saving,
    quantile_disc(round(100 * (without_card - cardholder_price) / without_card, 1)::DECIMAL(6, 1), 0.5) AS saving_percent,
    currency
FROM paired GROUP BY ALL ORDER BY retailer, line, piece_or_set, currency
