-- question: Which adverts look like one advert from two papers or copies?
-- param: retailer text none  only this chain or store, by id or part of its name
-- column: retailer  chain or store
-- column: shared_prices  how many prices for the same things both have
-- column: likeness  share of all their prices that both have, between 0 and 1
-- column: why  why they are taken for one
-- column: publication  paper of the first
-- column: other_publication  paper of the second
-- column: cited  the first: scan and box
-- column: other_cited  the second: scan and box
-- column: advert_id  id of the first for adminer show
-- column: other_id  id of the second for adminer show
SELECT
    a.retailer, s.shared_prices, s.likeness, s.why, c.publication, d.publication AS other_publication,
    c.file || ' @ ' || a.x || ',' || a.y || ',' || a.w || ',' || a.h AS cited,
    d.file || ' @ ' || b.x || ',' || b.y || ',' || b.w || ',' || b.h AS other_cited, s.advert_id, s.other_id
FROM likely_copies s
JOIN adverts a ON a.advert_id = s.advert_id JOIN clippings c ON c.clipping_id = a.clipping_id
JOIN adverts b ON b.advert_id = s.other_id JOIN clippings d ON d.clipping_id = b.clipping_id
WHERE $retailer IS NULL OR a.retailer_id = $retailer OR contains(lower(a.retailer), lower($retailer))
ORDER BY a.retailer, s.likeness DESC, s.advert_id, s.other_id
