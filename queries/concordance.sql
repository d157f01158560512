-- question: Under which names did one design go: where, when, and who used each?
-- param: line text none  the line, by id or part of any of its names; all lines where not given
-- column: line  line as this file prefers to call it
-- column: name  a name it went by
-- column: used_by  who used it: maker, decal_supplier, retailer, collectors, advert, mark, or a line with the same decal
-- column: user  the maker, supplier, shop or line that used it
-- column: city  where the adverts are from
-- column: first_used  first year or day it is known from
-- column: last_used  last year or day it is known from
-- column: seen  in how many adverts or on how many objects
-- column: source  where that is written: the authority file's source, or a scan with its box
WITH wanted AS (
    SELECT DISTINCT l.line_id, l.line FROM lines l LEFT JOIN line_names n USING (line_id)
    WHERE $line IS NULL OR l.line_id = $line OR contains(lower(l.line), lower($line)) OR contains(lower(n.name), lower($line))
),
written AS (
    SELECT
        w.line, n.name, coalesce(n.used_by, 'this file') AS used_by, coalesce(m.maker, r.retailer, n.used_by_id) AS user,
        NULL AS city, n.from_year::VARCHAR AS first_used, n.to_year::VARCHAR AS last_used, NULL::BIGINT AS seen, n.source
    FROM wanted w JOIN line_names n USING (line_id)
    LEFT JOIN makers m ON m.maker_id = n.used_by_id LEFT JOIN retailers r ON r.retailer_id = n.used_by_id
),
printed AS (
    SELECT
        w.line, any_value(o.line_text) AS name, 'advert' AS used_by, a.retailer AS user, coalesce(a.city, c.city) AS city,
        min(d.seen_from)::VARCHAR AS first_used,
        max(d.seen_to)::VARCHAR AS last_used, count(DISTINCT a.advert_id) AS seen,
        min(c.file || ' @ ' || o.x || ',' || o.y || ',' || o.w || ',' || o.h) AS source
    FROM wanted w JOIN offers o USING (line_id) JOIN adverts a USING (advert_id) JOIN clippings c USING (clipping_id)
    JOIN advert_days d USING (advert_id)
    WHERE o.status <> 'rejected'
    GROUP BY w.line, lower(o.line_text), a.retailer, coalesce(a.city, c.city)
),
related AS (
    SELECT
        w.line, n.name, x.relation AS used_by, other.line AS user, NULL AS city, n.from_year::VARCHAR AS first_used,
        n.to_year::VARCHAR AS last_used, NULL::BIGINT AS seen, coalesce(x.source, n.source) AS source
    FROM wanted w JOIN line_relations x USING (line_id) JOIN lines other ON other.line_id = x.other_id
    JOIN line_names n ON n.line_id = other.line_id
),
in_the_hand AS (
    SELECT
        w.line, o.mark AS name, 'mark' AS used_by, coalesce(m.maker, o.maker) AS user, o.where_seen AS city,
        min(o.earliest_year)::VARCHAR AS first_used, NULL AS last_used, count(*) AS seen, min(o.object_id) AS source
    FROM wanted w JOIN objects o USING (line_id) LEFT JOIN makers m ON m.maker_id = o.maker
    WHERE o.mark IS NOT NULL
    GROUP BY ALL
)
SELECT * FROM written UNION ALL SELECT * FROM printed UNION ALL SELECT * FROM related UNION ALL SELECT * FROM in_the_hand
ORDER BY line, first_used NULLS LAST, used_by, name, user, city, source
