-- question: What is known from one clipping, fact by fact, with the place on the scan?
-- param: clipping text ""  the clipping's id, or its file name
-- column: kind  price, item, line, retailer, condition or date
-- column: says  the fact in words
-- column: text  the words as printed
-- column: confidence  how sure the reading is, 0 to 1
-- column: x  left edge in pixels of the scan
-- column: y  upper edge in pixels of the scan
-- column: w  width in pixels
-- column: h  height in pixels
-- column: advert_id  the advert the fact belongs to
-- column: offer_id  the offer the fact belongs to, if any
WITH wanted AS (
    SELECT clipping_id FROM clippings WHERE clipping_id = $clipping OR file = $clipping
),
facts AS (
    SELECT 1 AS rank, 'retailer' AS kind, retailer AS says, retailer AS text, confidence, x, y, w, h, advert_id,
        NULL AS offer_id, clipping_id
    FROM adverts
    WHERE retailer IS NOT NULL
    UNION ALL BY NAME
    SELECT 2 AS rank, 'date' AS kind, coalesce(edtf, text) AS says, text, d.confidence, d.x, d.y, d.w, d.h, advert_id,
        NULL AS offer_id, clipping_id
    FROM dates_read d JOIN adverts a USING (advert_id)
    UNION ALL BY NAME
    SELECT 3 AS rank, 'item' AS kind,
        item || coalesce(', ' || line, '') || coalesce(', ' || pieces || ' pieces', '') AS says,
        item AS text, o.confidence, o.x, o.y, o.w, o.h, advert_id, offer_id, clipping_id
    FROM offers o JOIN adverts a USING (advert_id)
    WHERE o.status <> 'rejected'
    UNION ALL BY NAME
    SELECT 4 AS rank, 'price' AS kind,
        o.item || ': ' || CASE
            WHEN p.currency = 'USD' AND p.amount < 1 THEN rtrim(rtrim(CAST(100 * p.exact_amount AS VARCHAR), '0'), '.') || '¢'
            WHEN p.currency = 'USD' THEN '$' || p.amount
            ELSE p.amount || ' ' || p.currency
        END || CASE p.condition
            WHEN 'everyone' THEN ''
            WHEN 'without_card' THEN ', without the card'
            WHEN 'cardholder' THEN ', with the card'
            WHEN 'with_purchase' THEN ', with a purchase'
            WHEN 'former' THEN ', the former price'
            WHEN 'comparison' THEN ', the price compared with'
            ELSE ', with ' || p.condition
        END AS says,
        p.text, p.confidence, p.x, p.y, p.w, p.h, advert_id, offer_id, clipping_id
    FROM prices p JOIN offers o USING (offer_id) JOIN adverts a USING (advert_id)
    WHERE o.status <> 'rejected'
    UNION ALL BY NAME
    SELECT 5 AS rank, 'condition' AS kind, replace(c.kind, '_', ' ') AS says, c.text, c.confidence, c.x, c.y, c.w, c.h,
        advert_id, c.offer_id, clipping_id
    FROM conditions c JOIN adverts a USING (advert_id)
)
SELECT kind, says, text, confidence, x, y, w, h, advert_id, offer_id
FROM facts JOIN wanted USING (clipping_id)
ORDER BY advert_id, rank, y, x, says
