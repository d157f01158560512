-- question: How long did each promotion run, and how sure is that?
-- param: line text none  only this line, by id or part of its name
-- column: line  line as this file prefers to call it
-- column: retailer  chain or store; empty for all together
-- column: city  town; empty for all together
-- column: sightings  adverts that show it
-- column: first_seen  first day on which any of its dated adverts may have appeared
-- column: last_seen  last day on which any of them may have appeared
-- column: began  when it began: EDTF, one day of a span; empty where nothing bounds it
-- column: ended  when it ended: EDTF, one day of a span; empty where nothing bounds it
-- column: method  printed schedule, final week printed, searched weeks or lattice of weeks
-- column: confidence  chance that each bound holds
-- column: note  what the bounds rest on
SELECT line, retailer, city, sightings, first_seen, last_seen, start_edtf AS began, end_edtf AS ended, method, confidence, note
FROM runs WHERE $line IS NULL OR line_id = $line OR contains(lower(line), lower($line))
ORDER BY line, retailer NULLS FIRST, city NULLS FIRST
