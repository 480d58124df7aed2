-- Visits by month, from the export.
SELECT coalesce(month, '') AS "of", count(*) AS visits
FROM 'export.ndjson'
WHERE verdict IS NOT NULL
GROUP BY ALL
ORDER BY "of";
