-- question: Which pieces of a line were named but never seen with a price?
-- param: line text none  the line, by id or part of its name; all where not given
-- column: line  line as this file prefers to call it
-- column: piece  piece named in a list, a schedule of weeks or an offer
-- column: named_in  how many adverts name it
-- column: first_named  one of the scans that name it
WITH named AS (
    SELECT o.line_id, o.line, s.piece, o.advert_id FROM set_pieces s JOIN offers o USING (offer_id)
    WHERE o.status <> 'rejected'
    UNION ALL
    SELECT o.line_id, o.line, o.piece_or_set, o.advert_id FROM offers o
    WHERE o.status <> 'rejected' AND o.piece_or_set NOT LIKE 'set:%'
    UNION ALL
    SELECT DISTINCT o.line_id, o.line, w.piece, w.advert_id FROM schedules w JOIN offers o USING (advert_id)
    WHERE o.line IS NOT NULL
), priced AS (
    SELECT DISTINCT o.line, o.piece_or_set AS piece FROM offers o JOIN prices p USING (offer_id)
    WHERE o.status <> 'rejected'
)
SELECT n.line, n.piece, count(DISTINCT n.advert_id) AS named_in, min(c.file) AS first_named
FROM named n JOIN adverts a USING (advert_id) JOIN clippings c USING (clipping_id)
ANTI JOIN priced p ON p.line = n.line AND p.piece = n.piece
WHERE n.line IS NOT NULL AND n.piece IS NOT NULL
  AND ($line IS NULL OR n.line_id = $line OR contains(lower(n.line), lower($line)))
GROUP BY ALL ORDER BY n.line, named_in DESC, n.piece
