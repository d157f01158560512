-- question: What is known of one line: every advert of it, in order of date?
-- param: line text none  the line, by id or part of its name; all lines where not given
-- column: line  line as this file prefers to call it
-- column: printed_as  its name as this advert prints it
-- column: seen_from  first day the advert may have appeared
-- column: seen_to  last day the advert may have appeared
-- column: dated_by  where the date comes from: printed, note or estimate
-- column: retailer  chain or store that placed the advert
-- column: city  where
-- column: item  what was offered, as printed
-- column: pieces  how many pieces it has
-- column: price  what anyone paid
-- column: cardholder_price  what a holder of the store's card paid
-- column: price_without_card  what it cost without the card
-- column: publication  paper or magazine
-- column: cited  scan and box
SELECT
    p.line, o.line_text AS printed_as,
    p.seen_from, p.seen_to,
    coalesce(a.dated_by, CASE WHEN p.published IS NOT NULL THEN 'note' END) AS dated_by,
    p.retailer, p.city, p.item, p.pieces, p.price, p.cardholder_price, p.price_without_card, p.publication,
    p.file || ' @ ' || p.box AS cited
FROM priced_offers p JOIN offers o USING (offer_id) JOIN adverts a ON a.advert_id = p.advert_id
WHERE p.line IS NOT NULL AND ($line IS NULL OR p.line_id = $line OR contains(lower(p.line), lower($line)))
ORDER BY p.line, seen_from NULLS LAST, p.retailer, p.city, cited
