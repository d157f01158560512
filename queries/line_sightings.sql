-- question: In which week and town was a line advertised?
-- param: line text none  the line, by id or part of its name; all where not given
-- param: city text none  only this town
-- column: line  line as this file prefers to call it
-- column: week_start  Monday of the week; empty where the date is wider than a week
-- column: seen_from  first day it may have been
-- column: seen_to  last day it may have been
-- column: city  town
-- column: retailer  chain or store
-- column: adverts  how many adverts; one advert in two papers counts twice
-- column: dated_by  where the date comes from
-- column: cited  the scans
SELECT
    s.line, s.week_start, s.seen_from, s.seen_to, s.city, s.retailer, count(DISTINCT s.advert_id) AS adverts,
    string_agg(DISTINCT s.dated_by, ', ' ORDER BY s.dated_by) AS dated_by,
    string_agg(DISTINCT c.file, ', ' ORDER BY c.file) AS cited
FROM sightings s JOIN clippings c USING (clipping_id)
WHERE ($line IS NULL OR s.line_id = $line OR contains(lower(s.line), lower($line)))
  AND ($city IS NULL OR lower(s.city) = lower($city))
GROUP BY ALL ORDER BY s.line, s.seen_from NULLS LAST, s.seen_to, s.city, s.retailer
