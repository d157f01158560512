-- question: Why is an advert dated as it is?
-- param: file text none  only scans with this in their name
-- param: least number 0.05  only evidence that moved the answer by at least so many bits
-- column: file  scan
-- column: advert_id  advert
-- column: estimate  an EDTF set that holds the truth nine times in ten
-- column: moved_bits  how far this evidence moved the answer
-- column: kind  kind of evidence
-- column: what  what was found
-- column: source  where its dates come from
-- column: box  where it is printed, x,y,w,h in pixels of the scan
-- column: struck  struck out by a person, so not used
SELECT
    c.file, v.advert_id, e.edtf_90 AS estimate, v.moved_bits, v.kind, v.text AS what, v.source,
    v.x || ',' || v.y || ',' || v.w || ',' || v.h AS box, v.struck
FROM evidence v JOIN date_estimates e USING (advert_id) JOIN adverts a USING (advert_id) JOIN clippings c USING (clipping_id)
WHERE ($file IS NULL OR contains(lower(c.file), lower($file))) AND v.moved_bits >= $least
ORDER BY c.file, v.advert_id, v.moved_bits DESC, v.kind, v.text
