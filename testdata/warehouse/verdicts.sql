-- Visits by verdict, from the export. A file that cannot be read has no verdict.
SELECT verdict AS "of", count(*) AS visits
FROM 'export.ndjson'
WHERE verdict IS NOT NULL
GROUP BY ALL
ORDER BY visits DESC, "of";
