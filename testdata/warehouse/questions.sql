-- Questions without an answer, rep by rep, from the export: name people only where
-- that is what is asked for.
SELECT coalesce(rep, '') AS "of", question, count(*) AS visits
FROM (SELECT rep, unnest(unanswered) AS question FROM 'export.ndjson' WHERE verdict IS NOT NULL)
GROUP BY ALL
ORDER BY "of", visits DESC, question;
