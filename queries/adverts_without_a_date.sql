-- question: Which adverts have no date?
-- column: file  scan
-- column: retailer  chain or store
-- column: city  where
-- column: offers  how many offers were read
-- column: lines  lines named in it
-- column: dates_printed  dates printed in it, without a year
-- column: estimate  when it may have appeared: an EDTF set that holds the truth nine times in ten
-- column: advert_id  id for adminer show
SELECT
    c.file, a.retailer, coalesce(a.city, c.city) AS city, count(DISTINCT o.offer_id) AS offers,
    string_agg(DISTINCT o.line, ', ' ORDER BY o.line) AS lines,
    string_agg(DISTINCT d.text, '; ' ORDER BY d.text) AS dates_printed, any_value(e.edtf_90) AS estimate, a.advert_id
FROM adverts a JOIN clippings c USING (clipping_id)
LEFT JOIN offers o ON o.advert_id = a.advert_id AND o.status <> 'rejected'
LEFT JOIN dates_read d ON d.advert_id = a.advert_id
LEFT JOIN date_estimates e ON e.advert_id = a.advert_id
WHERE a.valid_from IS NULL AND a.valid_to IS NULL AND c.published_from IS NULL AND c.published_to IS NULL
GROUP BY ALL ORDER BY c.file, a.advert_id
