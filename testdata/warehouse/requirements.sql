-- Visits by the requirement that decides, and how the sales ended, from the export.
SELECT coalesce(critical, '') AS "of",
       count(*) AS visits,
       count(*) FILTER (verdict = 'firm') AS firm,
       count(*) FILTER (outcome = 'order') AS ordered,
       count(*) FILTER (outcome = 'no') AS lost,
       count(*) FILTER (outcome NOT IN ('order', 'no')) AS waiting
FROM 'export.ndjson'
WHERE verdict IS NOT NULL
GROUP BY ALL
ORDER BY visits DESC, "of";
