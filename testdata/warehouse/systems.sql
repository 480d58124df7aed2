-- Visits by system ordered or recommended, from the export.
SELECT coalesce(system, '') AS "of", count(*) AS visits
FROM 'export.ndjson'
WHERE verdict IS NOT NULL
GROUP BY ALL
ORDER BY visits DESC, "of";
