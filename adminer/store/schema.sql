-- The public face of the database. Column names are a promise to queries, exports and notebooks.
-- Boxes are pixels of the original scan, origin top left. The database is derived: it can be rebuilt
-- at any time from scans, notes, names and journal.

CREATE TABLE clippings (
    clipping_id VARCHAR PRIMARY KEY, file VARCHAR, leaf INTEGER, page VARCHAR, sha256 VARCHAR,
    width INTEGER, height INTEGER, kind VARCHAR, publication VARCHAR, city VARCHAR, state VARCHAR,
    published VARCHAR, published_from DATE, published_to DATE, found_in VARCHAR, rights VARCHAR, remark VARCHAR,
    continues VARCHAR
);
CREATE TABLE notes (
    clipping_id VARCHAR, note_no INTEGER, file VARCHAR, publication VARCHAR, published VARCHAR, city VARCHAR,
    state VARCHAR, page VARCHAR, found_in VARCHAR, rights VARCHAR, remark VARCHAR
);
CREATE TABLE unread (file VARCHAR, leaf INTEGER, reason VARCHAR, remedy VARCHAR);
CREATE TABLE adverts (
    advert_id VARCHAR PRIMARY KEY, clipping_id VARCHAR, x INTEGER, y INTEGER, w INTEGER, h INTEGER,
    retailer_id VARCHAR, retailer VARCHAR, city VARCHAR, valid_from DATE, valid_to DATE, dated_by VARCHAR,
    confidence DOUBLE
);
CREATE TABLE words (
    clipping_id VARCHAR, advert_id VARCHAR, word_no INTEGER, text VARCHAR, x INTEGER, y INTEGER, w INTEGER, h INTEGER,
    type_px DOUBLE, confidence DOUBLE, reader VARCHAR, line_no INTEGER, block_no INTEGER
);
CREATE TABLE offers (
    offer_id VARCHAR PRIMARY KEY, advert_id VARCHAR, line_id VARCHAR, line VARCHAR, maker VARCHAR, item VARCHAR,
    piece_or_set VARCHAR, pieces INTEGER, composition VARCHAR, quantity DECIMAL(12, 3), unit VARCHAR,
    x INTEGER, y INTEGER, w INTEGER, h INTEGER, confidence DOUBLE, status VARCHAR,
    maker_id VARCHAR, line_text VARCHAR, line_score DOUBLE, line_why VARCHAR, line_warning VARCHAR, why VARCHAR,
    pieces_stated INTEGER, pieces_listed INTEGER, pieces_implied INTEGER, service_for INTEGER, composition_check VARCHAR
);
CREATE TABLE prices (
    price_id VARCHAR PRIMARY KEY, offer_id VARCHAR, amount DECIMAL(12, 2), currency VARCHAR,
    per_quantity DECIMAL(12, 3), per_unit VARCHAR, condition VARCHAR, condition_text VARCHAR,
    x INTEGER, y INTEGER, w INTEGER, h INTEGER, confidence DOUBLE, form VARCHAR, role VARCHAR, text VARCHAR,
    exact_amount DECIMAL(18, 6) -- keeps the half cent of 12½¢
);
CREATE TABLE conditions (
    advert_id VARCHAR, offer_id VARCHAR, kind VARCHAR, text VARCHAR, value VARCHAR,
    x INTEGER, y INTEGER, w INTEGER, h INTEGER, confidence DOUBLE
);
CREATE TABLE set_pieces (offer_id VARCHAR, piece VARCHAR, count INTEGER, text VARCHAR);
CREATE TABLE dates_read (
    advert_id VARCHAR, kind VARCHAR, text VARCHAR, edtf VARCHAR, earliest DATE, latest DATE,
    x INTEGER, y INTEGER, w INTEGER, h INTEGER, confidence DOUBLE
);
CREATE TABLE schedules (advert_id VARCHAR, week INTEGER, piece VARCHAR);
CREATE TABLE proposed_names (
    advert_id VARCHAR, text VARCHAR, kind VARCHAR, x INTEGER, y INTEGER, w INTEGER, h INTEGER, score DOUBLE, why VARCHAR
);
CREATE TABLE lines (
    line_id VARCHAR, line VARCHAR, maker_id VARCHAR, first_year INTEGER, last_year INTEGER, shape VARCHAR, decal VARCHAR
);
CREATE TABLE line_names (line_id VARCHAR, name VARCHAR, used_by VARCHAR, used_by_id VARCHAR, from_year INTEGER, to_year INTEGER, source VARCHAR);
CREATE TABLE line_relations (line_id VARCHAR, relation VARCHAR, other_id VARCHAR, source VARCHAR);
CREATE TABLE makers (maker_id VARCHAR, maker VARCHAR, kind VARCHAR);
CREATE TABLE retailers (retailer_id VARCHAR, retailer VARCHAR, kind VARCHAR);
CREATE TABLE objects (
    object_id VARCHAR, what VARCHAR, mark VARCHAR, date_code VARCHAR, earliest_year INTEGER, maker VARCHAR, shape VARCHAR,
    line_id VARCHAR, trim VARCHAR, where_seen VARCHAR, picture VARCHAR, remark VARCHAR
);
CREATE TABLE sightings (
    sighting_id VARCHAR, line_id VARCHAR, line VARCHAR, retailer_id VARCHAR, retailer VARCHAR, city VARCHAR,
    advert_id VARCHAR, clipping_id VARCHAR, published VARCHAR, seen_from DATE, seen_to DATE, week_start DATE, dated_by VARCHAR
);
-- adverts of two clippings that look like one printed advert: another paper, another copy
CREATE TABLE likely_copies (advert_id VARCHAR, other_id VARCHAR, shared_prices INTEGER, likeness DOUBLE, why VARCHAR);
-- what an advert prints of its promotion's schedule: "week 7 of 15", final week, first week, extended, a list of weeks
CREATE TABLE schedule_facts (advert_id VARCHAR, what VARCHAR, text VARCHAR, week INTEGER, of_weeks INTEGER);
CREATE TABLE runs (
    run_id VARCHAR, line_id VARCHAR, line VARCHAR, retailer_id VARCHAR, retailer VARCHAR, city VARCHAR, sightings INTEGER,
    first_seen DATE, last_seen DATE, start_earliest DATE, end_latest DATE, start_edtf VARCHAR, end_edtf VARCHAR,
    method VARCHAR, confidence DOUBLE, note VARCHAR
);
CREATE TABLE date_estimates (
    advert_id VARCHAR, edtf_50 VARCHAR, edtf_90 VARCHAR, median DATE, earliest_90 DATE, latest_90 DATE,
    probability_peak DOUBLE, posterior VARCHAR, note VARCHAR
);
CREATE TABLE evidence (
    advert_id VARCHAR, kind VARCHAR, text VARCHAR, source VARCHAR, moved_bits DOUBLE, earliest DATE, latest DATE,
    struck BOOLEAN, x INTEGER, y INTEGER, w INTEGER, h INTEGER
);
-- Consumer price index, all items, U.S. city average, 1982-84 = 100 (U.S. Bureau of Labor Statistics); no appraisal.
CREATE TABLE consumer_prices (year INTEGER, month INTEGER, all_items DECIMAL(8, 3));
CREATE TABLE corrections (
    act_no INTEGER, acted_at TIMESTAMP, who VARCHAR, act VARCHAR, clipping_id VARCHAR, x INTEGER, y INTEGER, w INTEGER, h INTEGER,
    field VARCHAR, old VARCHAR, new VARCHAR, offer_id VARCHAR, found BOOLEAN
);
-- two clippings that show one advert, as a person says: the one without days takes those of the other, and both are one sighting
CREATE TABLE said_same (clipping_id VARCHAR, other_id VARCHAR, act_no INTEGER);

-- From when to when an advert may have appeared: its own days come as a pair and are never mixed with the note's.
-- A first day alone is a day it was in force, and it may have stayed so as long as the note's date reaches; a last day
-- alone ("good until") is no sighting on that day: it only cuts the note's date.
CREATE VIEW advert_days AS
SELECT
    a.advert_id,
    CASE
        WHEN a.valid_from IS NOT NULL THEN a.valid_from
        WHEN a.valid_to IS NULL OR c.published_from <= a.valid_to THEN c.published_from
    END AS seen_from,
    CASE
        WHEN a.valid_to IS NOT NULL AND a.valid_from IS NULL THEN least(a.valid_to, c.published_to)
        WHEN a.valid_to IS NOT NULL THEN a.valid_to
        WHEN a.valid_from IS NOT NULL THEN greatest(a.valid_from, c.published_to)
        ELSE c.published_to
    END AS seen_to
FROM adverts a JOIN clippings c USING (clipping_id);

-- One flat row an offer. price is what anyone pays; cardholder_price what the card holder pays; conditional_price what
-- is paid with a coupon or a purchase; cash_with_stamps the cash beside filled books, which is no price by itself.
CREATE VIEW priced_offers AS
SELECT
    c.file, c.leaf, c.publication, coalesce(a.city, c.city) AS city, c.published, c.published_from, c.published_to,
    a.valid_from, a.valid_to, d.seen_from, d.seen_to, a.retailer_id, a.retailer, o.line_id, o.line, o.maker, o.item, o.piece_or_set, o.pieces,
    min(p.amount) FILTER (p.condition = 'everyone' AND p.role IN ('price', 'from', 'range_low')) AS price,
    min(p.amount) FILTER (p.condition = 'cardholder') AS cardholder_price,
    min(p.amount) FILTER (p.condition = 'without_card') AS price_without_card,
    min(p.amount) FILTER (p.condition IN ('coupon', 'with_purchase')) AS conditional_price,
    min(p.amount) FILTER (p.condition = 'stamps') AS cash_with_stamps,
    min(p.amount) FILTER (p.condition IN ('former', 'comparison')) AS former_price,
    string_agg(DISTINCT p.condition_text, '; ' ORDER BY p.condition_text) AS conditions,
    any_value(p.currency) AS currency,
    min(p.per_quantity) AS per_quantity, any_value(p.per_unit) AS per_unit,
    o.x || ',' || o.y || ',' || o.w || ',' || o.h AS box, o.confidence, o.status, o.offer_id, o.advert_id, c.clipping_id
FROM offers o
JOIN adverts a USING (advert_id)
JOIN clippings c USING (clipping_id)
JOIN advert_days d USING (advert_id)
LEFT JOIN prices p USING (offer_id)
WHERE o.status <> 'rejected'
GROUP BY ALL;
