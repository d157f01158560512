-- question: Which facts is the reading least sure of?
-- param: below number 0.8  only facts with a confidence below this, between 0 and 1
-- column: fact  offer, price, line, condition or date
-- column: value  what was read
-- column: confidence  between 0 and 1
-- column: file  scan
-- column: box  where on the scan: x, y, width, height in pixels
-- column: shows  id for adminer show
WITH facts AS (
    SELECT 'offer' AS fact, item AS value, confidence, advert_id, offer_id AS shows, x, y, w, h
    FROM offers WHERE status = 'read'
    UNION ALL
    SELECT 'price', p.text || ' read as ' || p.amount || ' ' || p.currency, p.confidence, o.advert_id, o.offer_id, p.x, p.y, p.w, p.h
    FROM prices p JOIN offers o USING (offer_id) WHERE o.status = 'read'
    UNION ALL
    SELECT 'line', line_text || ' read as ' || line, line_score, advert_id, offer_id, x, y, w, h
    FROM offers WHERE status = 'read' AND line IS NOT NULL
    UNION ALL
    SELECT 'condition', kind || ': ' || text, confidence, advert_id, coalesce(offer_id, advert_id), x, y, w, h FROM conditions
    UNION ALL
    SELECT 'date', text || coalesce(' read as ' || edtf, ''), confidence, advert_id, advert_id, x, y, w, h FROM dates_read
)
SELECT f.fact, f.value, f.confidence, c.file, f.x || ',' || f.y || ',' || f.w || ',' || f.h AS box, f.shows
FROM facts f JOIN adverts a USING (advert_id) JOIN clippings c USING (clipping_id)
WHERE f.confidence < $below
ORDER BY f.confidence, c.file, f.y, f.x, f.fact
