-- question: Which adverts of a chain or store are in the file?
-- param: retailer text none  the chain or store, by id or part of its name; all where not given
-- column: retailer  chain or store
-- column: city  where
-- column: published  date of the paper or magazine, in EDTF
-- column: valid_from  first day of the offer
-- column: valid_to  last day of the offer
-- column: dated_by  where the date comes from
-- column: publication  paper or magazine
-- column: offers  how many offers were read
-- column: lines  lines named in it
-- column: cited  scan and box
-- column: advert_id  id for adminer show
SELECT
    a.retailer, coalesce(a.city, c.city) AS city, c.published, a.valid_from, a.valid_to, a.dated_by, c.publication,
    count(o.offer_id) AS offers, string_agg(DISTINCT o.line, ', ' ORDER BY o.line) AS lines,
    c.file || ' @ ' || a.x || ',' || a.y || ',' || a.w || ',' || a.h AS cited, a.advert_id
FROM adverts a JOIN clippings c USING (clipping_id)
LEFT JOIN offers o ON o.advert_id = a.advert_id AND o.status <> 'rejected'
WHERE $retailer IS NULL OR a.retailer_id = $retailer OR contains(lower(a.retailer), lower($retailer))
GROUP BY ALL
ORDER BY a.retailer NULLS LAST, coalesce(any_value(a.valid_from), any_value(c.published_from)) NULLS LAST, city, cited
