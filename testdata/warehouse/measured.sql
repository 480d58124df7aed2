-- Timed cuts against their predictions, system by system, from the files themselves.
-- The error is of the speed, in per cent of the one predicted: -20 is 20 % slower.
WITH visits AS (
    SELECT filename,
           from_json(visit, '{"showings": [{"system": "VARCHAR", "cuts": [{"took_s": "DOUBLE", "predicted_s": "DOUBLE"}]}]}').showings AS showings
    FROM (SELECT filename, TRY_CAST(content AS JSON) AS visit FROM read_text('visits/**/*.json'))
    WHERE (visit->>'$.format') = 'cutbrief-visit' AND CAST(visit->>'$.version' AS INTEGER) <= 2
), showings AS (
    SELECT filename, unnest(showings) AS showing FROM visits
), cuts AS (
    SELECT filename, showing.system AS "of", unnest(showing.cuts) AS cut FROM showings
)
SELECT "of",
       count(*) AS timed_cuts,
       count(DISTINCT filename) AS visits,
       round(100 * median(cut.predicted_s / cut.took_s - 1), 1) AS median_error_percent
FROM cuts
WHERE cut.took_s > 0 AND cut.predicted_s > 0
GROUP BY ALL
ORDER BY timed_cuts DESC, "of";
